// The settings of the shop as the screen drives them, on a real store with the demonstration shop.
#include <QAbstractItemModelTester>
#include <QDir>
#include <QSignalSpy>
#include <QTest>

#include "app/shopsettingsbackupcontroller.h"
#include "app/shopsettingscontroller.h"
#include "app/shopsettingsplacescontroller.h"
#include "app/shopsettingssourcescontroller.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

namespace {

template <class Controller> struct Screen {
    explicit Screen(AppBench::Stock stock = AppBench::Stock::Demo)
        : bench(stock)
    {
        controller.setServices(&bench.services);
        settle();
    }

    void settle()
    {
        [this] { QTRY_VERIFY(!controller.busy()); }();
    }
    std::vector<PlaceRecord> places()
    {
        return bench.ask([](Shop& shop) { return shop.store().places(); });
    }
    PlaceRecord placeNamed(const std::string& name)
    {
        for (const PlaceRecord& place : places()) {
            if (place.name == name)
                return place;
        }
        return {};
    }

    AppBench bench;
    Controller controller;
};

} // namespace

class ShopSettingsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void themeAndUnits_areTheDevices()
    {
        Screen<ShopSettingsController> screen;
        QCOMPARE(screen.controller.theme(), 0);
        QSignalSpy looks(&screen.controller, &ShopSettingsController::looksChanged);
        screen.controller.setTheme(2);
        QCOMPARE(screen.bench.settings.theme(), u"dark"_s);
        QVERIFY(screen.bench.settings.dark());
        QCOMPARE(screen.controller.theme(), 2);
        screen.controller.setUnitSystem(1);
        QCOMPARE(screen.bench.settings.unitSystem(), UnitSystem::Us);
        QCOMPARE(screen.controller.unitSystem(), 1);
        QVERIFY(looks.size() >= 2);
    }

    void store_saysWhereItIs_andThatItHolds()
    {
        Screen<ShopSettingsController> screen;
        QVERIFY(screen.controller.storeWhere().endsWith(u"shop.gluewright"_s));
        QVERIFY(screen.controller.storeEngine().contains(u"SQLite"_s));
        QVERIFY(!screen.controller.storeSize().isEmpty());
        QVERIFY(screen.controller.verifyVerdict().isEmpty());
        QVERIFY2(
            screen.controller.engines().contains(u"zxing-cpp "_s), qPrintable(screen.controller.engines()));
        screen.controller.verify();
        QVERIFY(screen.controller.verifying());
        QTRY_VERIFY(!screen.controller.verifying());
        QCOMPARE(screen.controller.verifyVerdict(), u"good"_s);
        QVERIFY(screen.controller.problems().isEmpty());
        const auto containers = screen.bench.ask([](Shop& shop) { return shop.store().containers(); });
        QVERIFY(screen.controller.verifyText().contains(QString::number(containers.size())));
    }

    void store_thatHasFaults_saysWhich()
    {
        Screen<ShopSettingsController> screen;
        // A container nothing was ever entered for: no act leaves one behind.
        const auto made = screen.bench.ask([now = screen.bench.now](Shop& shop) -> Result<bool> {
            ContainerRecord stray;
            stray.id = ContainerId { "11111111-2222-4333-8444-555555555555" };
            stray.label = "GWSTRAY22";
            stray.material = shop.store().materials()->front().id;
            stray.capacity = grams(100);
            stray.created = now;
            return shop.store().addContainer(stray).map([] { return true; });
        });
        QVERIFY(made);
        screen.controller.verify();
        QTRY_VERIFY(!screen.controller.verifying());
        QCOMPARE(screen.controller.verifyVerdict(), u"do_not_use"_s);
        QVERIFY(!screen.controller.problems().isEmpty());
        QVERIFY(screen.controller.problems().join(u' ').contains(u"GWSTRAY22"_s));
    }

    void place_isAdded()
    {
        Screen<ShopSettingsPlacesController> screen(AppBench::Stock::Places);
        ShopSettingsPlacesController& places = screen.controller;
        const QAbstractItemModelTester tester(
            places.places(), QAbstractItemModelTester::FailureReportingMode::QtTest);
        QCOMPARE(places.places()->count(), 2);
        QSignalSpy saved(&places, &ShopSettingsPlacesController::saved);
        places.draftNew();
        QVERIFY(places.isNew() && !places.canSave());
        places.setName(u"  Glue   cupboard "_s);
        places.setLow(10);
        places.setHigh(8); // below the low: the low comes along
        QCOMPARE(places.low(), 8);
        places.save();
        QTRY_COMPARE(saved.size(), 1);
        QTRY_COMPARE(places.places()->count(), 3);
        const PlaceRecord place = screen.placeNamed("Glue cupboard");
        QCOMPARE(place.assumed.year->low.value, 8.0);
        QCOMPARE(place.assumed.year->high.value, 8.0);
    }

    void place_canBeRenamed_andKeepsItsStock()
    {
        Screen<ShopSettingsPlacesController> screen;
        ShopSettingsPlacesController& places = screen.controller;
        const PlaceRecord before = screen.placeNamed("Bench shelf");
        const int count = places.places()->count();
        places.draftOf(QString::fromStdString(before.id.text));
        QCOMPARE(places.name(), u"Bench shelf"_s);
        places.setName(u"Long bench"_s);
        QSignalSpy saved(&places, &ShopSettingsPlacesController::saved);
        places.save();
        QTRY_COMPARE(saved.size(), 1);
        screen.settle();
        QCOMPARE(places.places()->count(), count);
        QCOMPARE(screen.placeNamed("Long bench").id.text, before.id.text);
        QCOMPARE(screen.placeNamed("Long bench").note, before.note);
    }

    void place_withATakenName_isRefused()
    {
        Screen<ShopSettingsPlacesController> screen(AppBench::Stock::Places);
        screen.controller.draftNew();
        screen.controller.setName(u"Bench"_s);
        screen.controller.save();
        QTRY_VERIFY(!screen.controller.errorText().isEmpty());
        QCOMPARE(screen.places().size(), std::size_t { 2 });
    }

    void place_mayHaveNoRangeAtAll()
    {
        Screen<ShopSettingsPlacesController> screen(AppBench::Stock::Places);
        ShopSettingsPlacesController& places = screen.controller;
        places.draftOf(QString::fromStdString(screen.placeNamed("Bench").id.text));
        places.setAssumed(false);
        QSignalSpy saved(&places, &ShopSettingsPlacesController::saved);
        places.save();
        QTRY_COMPARE(saved.size(), 1);
        QVERIFY(!screen.placeNamed("Bench").assumed.year);
    }

    void place_inFahrenheit_keepsWhatNobodyTouched()
    {
        Screen<ShopSettingsPlacesController> screen(AppBench::Stock::Places);
        screen.bench.settings.setUnits(u"us"_s);
        ShopSettingsPlacesController& places = screen.controller;
        places.draftOf(QString::fromStdString(screen.placeNamed("Bench").id.text));
        QCOMPARE(places.low(), 64); // 18 C is 64.4 F
        QCOMPARE(places.unit(), u"°F"_s);
        places.setHigh(77); // 25 C exactly
        QSignalSpy saved(&places, &ShopSettingsPlacesController::saved);
        places.save();
        QTRY_COMPARE(saved.size(), 1);
        QCOMPARE(screen.placeNamed("Bench").assumed.year->low.value, 18.0);
        QCOMPARE(screen.placeNamed("Bench").assumed.year->high.value, 25.0);
    }

    void backup_goesToTheChosenFolder_andIsWhole()
    {
        Screen<ShopSettingsBackupController> screen;
        ShopSettingsBackupController& backups = screen.controller;
        QVERIFY(!backups.chosen());
        const QString folder = screen.bench.folder.filePath(u"stick/backups"_s);
        backups.chooseFolder(QUrl::fromLocalFile(folder));
        QTRY_COMPARE(backups.folder(), folder);
        QVERIFY(backups.chosen());
        screen.settle();
        QVERIFY(QDir(folder).exists());
        QVERIFY(QDir(folder).entryList({ u"*trial*"_s }, QDir::Files).isEmpty());
        QVERIFY(backups.last().isEmpty());
        backups.backUpNow();
        QTRY_VERIFY(!backups.last().isEmpty());
        const QStringList files = QDir(folder).entryList(QDir::Files);
        QCOMPARE(files.size(), 1);
        // A daily backup counts only its own files, so the one by hand must not look like one.
        QVERIFY(files.first().startsWith(u"by-hand-"_s));
        OpenOptions options;
        options.now = screen.bench.now;
        options.create = false;
        auto copy = Shop::open({ QDir(folder).filePath(files.first()).toStdString() }, options);
        QVERIFY2(copy, copy ? "" : copy.error().sentence.c_str());
        QCOMPARE((*copy)->store().containers()->size(),
            screen.bench.ask([](Shop& shop) { return shop.store().containers(); }).size());
    }

    void backup_folderThatCannotBe_isRefused()
    {
        Screen<ShopSettingsBackupController> screen;
        const QString before = screen.controller.folder();
        // A file stands where the folder would be made.
        screen.controller.chooseFolder(
            QUrl::fromLocalFile(QString::fromStdString(screen.bench.storeFile()) + u"/x"_s));
        QTRY_VERIFY(!screen.controller.errorText().isEmpty());
        QCOMPARE(screen.controller.folder(), before);
        QVERIFY(!screen.controller.chosen());
    }

    void restore_putsBackWhatWas_keepsWhatIs_andCanBeTakenBack()
    {
        Screen<ShopSettingsBackupController> screen;
        ShopSettingsBackupController& backups = screen.controller;
        const QString folder = screen.bench.folder.filePath(u"kept"_s);
        backups.chooseFolder(QUrl::fromLocalFile(folder));
        QTRY_COMPARE(backups.folder(), folder);
        screen.settle();
        backups.backUpNow();
        QTRY_VERIFY(!backups.last().isEmpty());
        const QString file = QDir(folder).entryList(QDir::Files).first();
        const auto before = screen.places().size();
        screen.bench.ask([](Shop& shop) {
            PlaceRecord place;
            place.id = PlaceId { "99999999-2222-4333-8444-555555555555" };
            place.name = "Attic";
            return shop.store().savePlace(place).map([] { return true; });
        });

        QSignalSpy restored(&backups, &ShopSettingsBackupController::restored);
        QSignalSpy opened(&screen.bench.shop, &ShopThread::opened);
        backups.propose(QUrl::fromLocalFile(QDir(folder).filePath(file)));
        QCOMPARE(screen.places().size(), before + 1); // proposing changes nothing
        backups.restore();
        QTRY_COMPARE(restored.size(), 1);
        QTRY_COMPARE(opened.size(), 1);
        QCOMPARE(screen.places().size(), before);
        QVERIFY(QFile::exists(backups.kept()));
        QCOMPARE(backups.folder(), folder);
        QVERIFY(backups.candidate().isEmpty());

        screen.bench.now += std::chrono::minutes(1);
        backups.putBack();
        QTRY_COMPARE(restored.size(), 2);
        QCOMPARE(screen.places().size(), before + 1);
    }

    void restore_ofWhatIsNoBackup_changesNothing()
    {
        Screen<ShopSettingsBackupController> screen;
        const auto before = screen.places().size();
        screen.controller.propose(QUrl::fromLocalFile(screen.bench.folder.filePath(u"settings.ini"_s)));
        screen.controller.restore();
        QTRY_VERIFY(!screen.controller.errorText().isEmpty());
        QVERIFY(screen.controller.kept().isEmpty());
        QCOMPARE(screen.places().size(), before);
    }

    void sources_sayHowFarTheyAreTrusted()
    {
        Screen<ShopSettingsSourcesController> screen;
        const auto records = screen.bench.ask([](Shop& shop) { return shop.store().sources(); });
        QCOMPARE(static_cast<std::size_t>(screen.controller.sources()->count()), records.size());
        QVERIFY(screen.controller.summary().contains(u"confidence"_s));
        // "Common practice, no source" must not be dressed up as one.
        QCOMPARE(
            screen.controller.sources()->value(u"CP"_s, "title").toString(), u"Common practice, no source"_s);
        QVERIFY(!screen.controller.sources()->value(u"CP"_s, "figures").toString().isEmpty());
    }

    void cautions_standByMoment_eachOnce()
    {
        Screen<ShopSettingsSourcesController> screen;
        QSet<QString> seen;
        QStringList moments;
        for (const ShownRow& row : screen.controller.cautions()->rows()) {
            const QString moment = row.values.at(0).toString();
            const QString both = moment + row.values.at(1).toString();
            QVERIFY2(!seen.contains(both), qPrintable(both));
            seen.insert(both);
            QVERIFY2(!row.values.at(2).toString().isEmpty(), qPrintable(both)); // of whom it speaks
            QCOMPARE(row.values.at(3).toBool(), moments.isEmpty() || moments.last() != moment);
            if (moments.isEmpty() || moments.last() != moment)
                moments.append(moment);
        }
        QCOMPARE(moments,
            (QStringList {
                u"Storing"_s, u"Opening"_s, u"Mixing"_s, u"Gluing"_s, u"Sanding"_s, u"Disposing"_s }));
    }
};

QTEST_MAIN(ShopSettingsTest)
#include "tst_shopsettings.moc"
