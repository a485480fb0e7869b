// A place's page, a logger's file on its way in, tonight's low and the picture of a life, as the screens
// drive them, on a real store.
#include <QAbstractItemModelTester>
#include <QFile>
#include <QSignalSpy>
#include <QTest>

#include "app/chartscale.h"
#include "app/lifepicturecontroller.h"
#include "app/placeclimatecontroller.h"
#include "app/placecontroller.h"
#include "app/readingsimportcontroller.h"
#include "app/tonightcontroller.h"
#include "shop/acts.h"
#include "shop/arrival.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

namespace {

QString idOf(AppBench& bench, const std::string& name)
{
    const auto place = bench.ask([name](Shop& shop) { return findPlace(shop, name); });
    return QString::fromStdString(place.id.text);
}

QUrl writeFile(AppBench& bench, const QString& name, const QByteArray& text)
{
    QFile file(bench.folder.filePath(name));
    if (!file.open(QIODevice::WriteOnly) || file.write(text) != text.size())
        qFatal("The test's file could not be written.");
    return QUrl::fromLocalFile(file.fileName());
}

/// An hourly row for each hour of so many days, the day of the month above 12 so that it tells which it is,
/// unless `vague`.
QByteArray loggerRows(int days, bool vague = false)
{
    QByteArray text = "Time,Temp (C)\n";
    const int first = vague ? 1 : 13;
    for (int day = 0; day < days; ++day) {
        for (int hour = 0; hour < 24; ++hour) {
            text += QStringLiteral("%1/02/2026 %2:00,%3\n")
                        .arg(first + day, 2, 10, QLatin1Char('0'))
                        .arg(hour, 2, 10, QLatin1Char('0'))
                        .arg(hour < 12 ? 4.5 : 11.25)
                        .toLatin1();
        }
    }
    return text;
}

} // namespace

class PlaceScreensTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void place_withoutReadings_showsWhatIsAssumed()
    {
        AppBench bench(AppBench::Stock::Places);
        PlaceController page;
        page.setPlace(idOf(bench, "Lean-to"));
        page.setServices(&bench.services);
        QTRY_VERIFY(page.loaded());
        QCOMPARE(page.name(), u"Lean-to"_s);
        QVERIFY(!page.watched());
        QVERIFY(page.trace()->solid().isEmpty() || page.trace()->pale().size() > 0);
        QVERIFY2(page.assumed().contains(u"\u22128 °C to 34 °C"_s), qPrintable(page.assumed()));
        QVERIFY(page.trace()->low() <= -8 && page.trace()->high() >= 34);
        QCOMPARE(page.figures()->value(u"unwatched"_s, "value").toString(), u"all of it"_s);
        QVERIFY(!page.figures()->find(u"low"_s));
    }

    void lowAndHigh_areTyped_inThePersonsUnit()
    {
        AppBench bench(AppBench::Stock::Places);
        bench.settings.setUnits(u"us"_s);
        PlaceController page;
        page.setPlace(idOf(bench, "Lean-to"));
        page.setServices(&bench.services);
        QTRY_VERIFY(page.loaded());
        QSignalSpy typed(&page, &PlaceController::typed);
        page.typeLowHigh(u"2026-03-01"_s, u"50"_s, u"41"_s);
        QTRY_VERIFY(!page.errorText().isEmpty()); // the low above the high
        page.typeLowHigh(u"2026-03-01"_s, u""_s, u"41"_s);
        QVERIFY(!page.errorText().isEmpty());
        QCOMPARE(typed.size(), 0);
        page.typeLowHigh(u"2026-03-01"_s, u"23"_s, u"50"_s);
        QTRY_COMPARE(typed.size(), 1);
        QTRY_VERIFY(page.watched());
        QCOMPARE(page.figures()->value(u"low"_s, "value").toString(), u"23 °F"_s); // -5 C
        QCOMPARE(page.figures()->value(u"high"_s, "value").toString(), u"50 °F"_s); // 10 C
    }

    void file_isLookedAt_takenIn_andTakenOnlyOnce()
    {
        AppBench bench(AppBench::Stock::Places);
        ReadingsImportController import;
        import.setServices(&bench.services);
        import.setProperty("place", idOf(bench, "Lean-to"));
        QByteArray text = loggerRows(3);
        text += "16/02/2026 01:00,500\n"; // no air is that warm
        text += "16/02/2026 02:00,4.5\n";
        import.look(writeFile(bench, u"logger.csv"_s, text));
        QTRY_COMPARE(import.stage(), ReadingsImportController::Looked);
        QVERIFY(import.found().join(u' ').contains(u"Temp (C)"_s));
        QVERIFY(import.found().join(u' ').contains(u"the day first"_s));
        QTRY_VERIFY(import.canStart());
        QSignalSpy said(&bench.services, &AppServices::said);
        import.start();
        QTRY_COMPARE(import.stage(), ReadingsImportController::Done);
        QCOMPARE(import.reportValues(), (QStringList { u"74"_s, u"73"_s, u"0"_s, u"0"_s, u"1"_s }));
        QCOMPARE(import.setAside()->count(), 1);
        QCOMPARE(import.setAside()->value(u"0"_s, "line").toString(), u"Line 74"_s);
        QTRY_COMPARE(said.size(), 1);

        import.look(writeFile(bench, u"logger.csv"_s, text));
        QTRY_COMPARE(import.stage(), ReadingsImportController::Looked);
        import.start();
        QTRY_COMPARE(import.stage(), ReadingsImportController::Done);
        QCOMPARE(import.reportValues().at(1), u"0"_s);
        QCOMPARE(import.reportValues().at(2), u"73"_s);
    }

    void doubt_hasToBeAnswered_beforeItStarts()
    {
        AppBench bench(AppBench::Stock::Places);
        ReadingsImportController import;
        import.setServices(&bench.services);
        import.setProperty("place", idOf(bench, "Lean-to"));
        import.look(writeFile(bench, u"vague.csv"_s, loggerRows(1, true)));
        QTRY_COMPARE(import.stage(), ReadingsImportController::Looked);
        const ShownRow* order = import.doubts()->find(u"--date-order"_s);
        QVERIFY(order);
        QCOMPARE(order->values.at(2).toInt(), -1);
        QVERIFY(!import.canStart());
        import.start();
        QCOMPARE(import.stage(), ReadingsImportController::Looked);
        const auto choices = order->values.at(1).toStringList();
        QVERIFY(choices.size() >= 2);
        import.answer(0, 0);
        QTRY_VERIFY(import.canStart());
        import.start();
        QTRY_COMPARE(import.stage(), ReadingsImportController::Done);
        QCOMPARE(import.reportValues().at(1), u"24"_s);
    }

    void cancelled_keepsNothing()
    {
        AppBench bench(AppBench::Stock::Places);
        ReadingsImportController import;
        import.setServices(&bench.services);
        import.setProperty("place", idOf(bench, "Lean-to"));
        import.look(writeFile(bench, u"logger.csv"_s, loggerRows(10)));
        QTRY_VERIFY(import.canStart());
        import.start();
        QCOMPARE(import.stage(), ReadingsImportController::Running);
        import.cancel(); // the shop's thread may have begun; it asks again before it ends
        QTRY_VERIFY(import.stage() != ReadingsImportController::Running);
        const auto shown
            = bench.ask([now = bench.now](Shop& shop) { return climateShown(shop, "Lean-to", now); });
        if (import.stage() == ReadingsImportController::Looked)
            QCOMPARE(shown.readings, 0);
        else
            QCOMPARE(shown.readings, 240);
    }

    void whatIsNoLoggersFile_isRefused()
    {
        AppBench bench(AppBench::Stock::Places);
        ReadingsImportController import;
        import.setServices(&bench.services);
        import.look(writeFile(bench, u"poem.txt"_s, "Roses are red\nviolets are blue\n"));
        QTRY_VERIFY(!import.errorText().isEmpty());
        QCOMPARE(import.stage(), ReadingsImportController::Choosing);
        QVERIFY(!import.canStart());
    }

    void assumedAndFollowed_areKept()
    {
        AppBench bench(AppBench::Stock::Places);
        PlaceClimateController draft;
        draft.setServices(&bench.services);
        QSignalSpy ready(&draft, &PlaceClimateController::ready);
        draft.draftOf(idOf(bench, "Lean-to"));
        QTRY_COMPARE(ready.size(), 1);
        QCOMPARE(draft.places(), (QStringList { u"None"_s, u"Bench"_s }));
        QCOMPARE(draft.lows().at(0), -8);
        draft.setKnown(1, true); // December to February begins as the year
        QCOMPARE(draft.lows().at(1), -8);
        draft.setLow(1, -12);
        draft.setHigh(1, 9);
        draft.setFollows(1);
        draft.setWarmer(-3);
        draft.setDamped(40);
        QSignalSpy saved(&draft, &PlaceClimateController::saved);
        draft.save();
        QTRY_COMPARE(saved.size(), 1);
        const auto place = bench.ask([](Shop& shop) { return findPlace(shop, "Lean-to"); });
        QCOMPARE(place.assumed.quarters.at(0)->low.value, -12.0);
        QCOMPARE(place.assumed.quarters.at(0)->high.value, 9.0);
        QVERIFY(!place.assumed.quarters.at(1));
        QCOMPARE(place.follows->place.text, idOf(bench, "Bench").toStdString());
        QCOMPARE(place.follows->warmer, -3.0);
        QCOMPARE(place.follows->damped, 0.4);

        // And the other way round would be a circle.
        draft.draftOf(idOf(bench, "Bench"));
        QTRY_COMPARE(ready.size(), 2);
        draft.setFollows(1);
        draft.save();
        QTRY_VERIFY(!draft.errorText().isEmpty());
        QCOMPARE(saved.size(), 1);
    }

    void tonight_saysWhatMustComeIn_worstFirst()
    {
        AppBench bench(AppBench::Stock::Demo);
        const auto shelf = bench.ask([now = bench.now](Shop& shop) { return gw::shelf(shop, { now }); });
        std::string pva;
        for (const ShelfItem& item : shelf) {
            if (item.classId.text == "pva_white" && item.level() > 0.9)
                pva = item.label;
        }
        QVERIFY(!pva.empty());
        bench.ask([pva, now = bench.now](
                      Shop& shop) { return moveTo(shop, pva, "Unheated lean-to", ActTime { now, now }); });
        TonightController night;
        night.setServices(&bench.services);
        QTRY_VERIFY(night.loaded());
        const QAbstractItemModelTester tester(night.cold());
        QCOMPARE(night.places().at(night.place()), u"Unheated lean-to"_s); // the one that gets coldest
        QVERIFY(!night.expected());
        QCOMPARE(night.cold()->count(), 0);
        QVERIFY(night.said().isEmpty());
        night.expect(-12);
        QTRY_VERIFY(night.expected());
        QTRY_VERIFY(night.cold()->count() > 0);
        QCOMPARE(night.low(), -12);
        const ShownRow& first = night.cold()->rows().front();
        QCOMPARE(first.values.at(1).toString().toStdString(), pva);
        QVERIFY(!first.values.at(4).toString().isEmpty()); // how long it lasts
        QVERIFY(first.values.at(3).toString().contains(u"bring it in"_s));
        QVERIFY(!night.said().isEmpty());
        night.forget();
        QTRY_VERIFY(!night.expected());
        QTRY_COMPARE(night.cold()->count(), 0);
    }

    void today_putsWhatIsSpoiledFirst_inWhateverPlace()
    {
        AppBench bench(AppBench::Stock::Places);
        const ActTime time { bench.now, bench.now };
        bench.ask([time](Shop& shop) -> Result<bool> {
            ArrivalDraft pva;
            pva.newName = "White PVA";
            pva.newClass = ClassId { "pva_white" };
            pva.amount = grams(5000);
            pva.place = "Lean-to";
            ArrivalDraft hide;
            hide.newName = "Liquid hide glue";
            hide.newClass = ClassId { "liquid_hide_glue" };
            hide.amount = grams(50);
            hide.place = "Bench";
            const auto first = bookIn(shop, pva, time);
            const auto second = bookIn(shop, hide, time);
            const auto there = expectLow(shop, "Lean-to", Celsius { -4 }, time.at);
            const auto here = expectLow(shop, "Bench", Celsius { -20 }, time.at);
            return first && second && there && here
                ? Result<bool>(true)
                : Result<bool>(fail(ErrorCode::StoreFailed, "not set up"));
        });
        const auto day = bench.ask([now = bench.now](Shop& shop) { return today(shop, now); });
        std::vector<std::string> first;
        for (const TodayItem& item : day.items) {
            if (item.kind == TodayItem::Kind::BringIn)
                first.push_back(item.title);
        }
        // The small bottle of hide glue is at its freezing point long before, yet comes back by warming.
        QVERIFY((first == std::vector<std::string> { "White PVA", "Liquid hide glue" }));
    }

    void picture_hasALifeForEachClock_andSpeaks()
    {
        AppBench bench(AppBench::Stock::Demo);
        const auto shelf = bench.ask([now = bench.now](Shop& shop) { return gw::shelf(shop, { now }); });
        std::string opened;
        for (const ShelfItem& item : shelf) {
            if (item.judgement.opened.known && item.judgement.sealed.known)
                opened = item.label;
        }
        QVERIFY(!opened.empty());
        LifePictureController picture;
        picture.setContainer(QString::fromStdString(opened));
        picture.setServices(&bench.services);
        QTRY_VERIFY(picture.loaded());
        QCOMPARE(picture.clocks(), (QStringList { u"Since opening"_s, u"Unopened"_s }));
        QCOMPARE(picture.clock(), 0);
        const TimeChart* life = picture.life();
        QVERIFY(life->solid().size() > 30 && life->solid().size() % 3 == 0);
        QVERIFY(life->spoken().contains(u"since opening"_s));
        QCOMPARE(life->limit(), 100.0);
        QVERIFY(life->low() <= 0 && life->high() > 100);
        const double openedFrom = life->solid().at(0);
        picture.setClock(1);
        QVERIFY(life->spoken().contains(u"unopened"_s));
        QVERIFY(life->solid().at(0) < openedFrom);
        QVERIFY(picture.marks()->count() >= 2);
        double last = -1;
        for (const ShownRow& mark : picture.marks()->rows()) {
            QVERIFY(mark.values.at(0).toDouble() >= last);
            last = mark.values.at(0).toDouble();
            QVERIFY(last >= 0 && last <= life->span());
            QVERIFY(!mark.values.at(3).toString().isEmpty() && !mark.values.at(4).toString().isEmpty());
        }
    }

    void times_standAtMidnightsAndFirstDays_data()
    {
        QTest::addColumn<double>("days");
        for (double days : { 0.3, 1.0, 5.0, 20.0, 60.0, 200.0, 500.0, 2000.0, 20000.0 })
            QTest::addRow("%g days", days) << days;
    }
    void times_standAtMidnightsAndFirstDays()
    {
        QFETCH(double, days);
        const Moment from = AppBench::noon();
        const auto ticks = timeTicks(from, later(from, Days(days)));
        QVERIFY(ticks.at.size() <= 8);
        QVERIFY(ticks.at.size() >= 1);
        QCOMPARE(ticks.at.size(), ticks.texts.size());
        for (qsizetype i = 0; i < ticks.at.size(); ++i) {
            QVERIFY(ticks.at.at(i) >= 0 && ticks.at.at(i) <= days);
            const auto local
                = QDateTime::fromMSecsSinceEpoch(toMilliseconds(later(from, Days(ticks.at.at(i)))));
            QCOMPARE(local.time().minute(), 0);
            if (days > 2)
                QCOMPARE(local.time().hour(), 0);
            if (days > 150)
                QCOMPARE(local.date().day(), 1);
        }
    }

    void levels_coverTheRange_inEvenSteps_data()
    {
        QTest::addColumn<double>("low");
        QTest::addColumn<double>("high");
        QTest::addRow("winter") << -8.3 << 3.1;
        QTest::addRow("percent") << 0.0 << 110.0;
        QTest::addRow("steady") << 20.0 << 20.0;
        QTest::addRow("fahrenheit") << 17.6 << 93.2;
    }
    void levels_coverTheRange_inEvenSteps()
    {
        QFETCH(double, low);
        QFETCH(double, high);
        const auto scale = levelScale({ low, high }, 5, u"°C"_s);
        QVERIFY(scale.values.low <= low && scale.values.high >= high);
        QVERIFY(scale.values.high > scale.values.low);
        QVERIFY(scale.ticks.at.size() >= 2 && scale.ticks.at.size() <= 8);
        const double step = scale.ticks.at.at(1) - scale.ticks.at.at(0);
        for (qsizetype i = 1; i < scale.ticks.at.size(); ++i)
            QVERIFY(std::abs(scale.ticks.at.at(i) - scale.ticks.at.at(i - 1) - step) < 1e-9);
    }
};

QTEST_MAIN(PlaceScreensTest)
#include "tst_placescreens.moc"
