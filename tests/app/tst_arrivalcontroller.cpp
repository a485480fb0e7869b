// Arrivals as the screen drives them, on a real store: what is asked, what is booked in, what never is.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include "app/arrivalcontroller.h"
#include "app/labelphoto.h"
#include "scan/picturefile.h"
#include "shop/shelf.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

namespace {

/// The demonstration prefix of GS1, 952, with check digits by GS1 General Specifications 7.9.
const auto unknownNumber = u"9520123456788"_s;
/// White wood glue, 1 kg, in the demonstration shop (db/demo/packs.csv).
const auto whiteGlue = u"(01)09520001421174(10)W-77(17)280531"_s;
const auto yellowGlue = u"9520001443107"_s;

struct Screen {
    explicit Screen(AppBench::Stock stock = AppBench::Stock::Demo)
        : bench(stock)
    {
        controller.setServices(&bench.services);
        [this] { QTRY_VERIFY(controller.loaded()); }();
    }

    /// A code comes in, from whatever reads codes.
    void scan(const QString& code)
    {
        QSignalSpy waiting(&bench.services, &AppServices::proposalWaiting);
        bench.scanner.typed(code);
        [&] { QTRY_COMPARE(waiting.size(), 1); }();
    }
    void bookIn()
    {
        controller.bookIn();
        [this] { QTRY_VERIFY(!controller.busy()); }();
    }
    int stock()
    {
        return static_cast<int>(bench.ask([](Shop& shop) { return shop.store().containers(); }).size());
    }
    ContainerPage page(const QString& label)
    {
        return bench.ask([label = label.toStdString(), now = bench.now](
                             Shop& shop) { return containerPage(shop, label, now); });
    }
    int placeNamed(const QString& name) const { return static_cast<int>(form.places().indexOf(name)); }

    AppBench bench;
    ArrivalController controller;
    ArrivalForm& form = *controller.form();
};

} // namespace

class ArrivalControllerTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void knownProduct_needsOneTap()
    {
        Screen screen;
        const int before = screen.stock();
        screen.scan(whiteGlue);
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        QCOMPARE(screen.form.name(), u"White wood glue"_s);
        QCOMPARE(screen.form.amountWords(), u"1\u00a0kg"_s);
        QVERIFY2(screen.form.facts().contains(u"Use by 31 May 2028"_s),
            qPrintable(screen.form.facts().join(u'|')));
        QVERIFY(screen.form.facts().contains(u"Lot W-77"_s));
        QVERIFY2(screen.form.complete(), qPrintable(screen.form.lacking()));
        QVERIFY(!screen.form.asksAmount() && !screen.form.asksDate() && !screen.form.isNew());
        QSignalSpy said(&screen.bench.services, &AppServices::said);

        screen.bookIn();
        QCOMPARE(screen.controller.state(), ArrivalController::Booked);
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QCOMPARE(screen.stock(), before + 1);
        const auto page = screen.page(screen.controller.labels().first());
        QCOMPARE(page.item.materialName, std::string("White wood glue"));
        QCOMPARE(page.item.left, grams(1000));
        QCOMPARE(page.item.lot, std::string("W-77"));
        QCOMPARE(formatDate(*page.item.printed), std::string("2028-05-31"));
        QVERIFY(page.item.printedIsUseBy);
        QVERIFY(!page.item.placeName.empty());
        QTRY_COMPARE(screen.controller.verdict(), u"good"_s);
        QCOMPARE(said.size(), 1);
        QVERIFY(!said.first().at(1).toString().isEmpty()); // it can be taken back
        QTRY_COMPARE(screen.controller.latest()->index(0).data(ArrivalModel::Label).toString(),
            screen.controller.labels().first());
    }

    void newProduct_asksOnlyWhatIsMissing_andIsKnownNextTime()
    {
        Screen screen(AppBench::Stock::Places);
        screen.scan(u"(01)09520123456788(10)H-2291(17)270630"_s);
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        QVERIFY(screen.form.isNew());
        QVERIFY(screen.form.asksAmount());
        QVERIFY(!screen.form.asksDate());
        QVERIFY(!screen.form.complete());
        QCOMPARE(screen.form.lacking(),
            u"Still to say: what it is called, what kind of stuff it is, how much is in it, where it will stand."_s);

        screen.form.setName(u"  Hide glue   192 "_s);
        screen.controller.chooseClass(u"hide_granules_192"_s);
        QCOMPARE(screen.form.shape(), u"bag"_s);
        screen.form.setProperty("amount", u"1,5"_s);
        screen.form.setProperty("amountUnit", u"kg"_s);
        screen.form.setPlaceAt(screen.placeNamed(u"Bench"_s));
        QVERIFY2(screen.form.complete(), qPrintable(screen.form.lacking()));
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        const auto page = screen.page(screen.controller.labels().first());
        QCOMPARE(page.item.materialName, std::string("Hide glue 192"));
        QCOMPARE(page.item.left, grams(1500));
        QCOMPARE(formatDate(*page.item.printed), std::string("2027-06-30"));

        screen.scan(u"(01)09520123456788(10)H-2292(17)271231"_s);
        QVERIFY(!screen.form.isNew());
        QCOMPARE(screen.form.name(), u"Hide glue 192"_s);
        QVERIFY2(screen.form.complete(), qPrintable(screen.form.lacking()));
        screen.bookIn();
        QTRY_COMPARE(screen.stock(), 2);
    }

    void lotCode_offersDates_takesOnlyTheChosen_andReadsTheNextAsLastTime()
    {
        Screen screen(AppBench::Stock::Places);
        const auto scanLot = [&](const QString& lot) { screen.scan(u"(01)09520123456788(10)"_s + lot); };
        const QDate today = QDate::fromString(screen.form.todayText(), Qt::ISODate);
        const QDate made = today.addDays(-40), next = today.addDays(-30);
        const auto lotOf = [](QDate day) {
            return u"L%1%2B"_s.arg(day.year() % 100, 2, 10, QChar(u'0'))
                .arg(day.dayOfYear(), 3, 10, QChar(u'0'));
        };
        scanLot(lotOf(made));
        QVERIFY(screen.form.lotDates().size() > 1);
        QVERIFY2(screen.form.lotDates().first().startsWith(u"day %1 of "_s.arg(made.dayOfYear())),
            qPrintable(screen.form.lotDates().join(u'|')));
        QCOMPARE(screen.form.lotDateAt(), -1);
        QVERIFY(screen.form.asksDate());
        QVERIFY(!screen.form.lotDateNote().isEmpty());

        screen.form.setName(u"Hide glue 192"_s);
        screen.controller.chooseClass(u"hide_granules_192"_s);
        QTRY_VERIFY(!screen.controller.busy());
        screen.form.setProperty("amount", u"500"_s);
        screen.form.setPlaceAt(screen.placeNamed(u"Bench"_s));
        QVERIFY(!screen.form.complete());
        screen.form.chooseLotDate(0);
        QCOMPARE(screen.form.lotDateAt(), 0);
        QCOMPARE(screen.form.property("dateKind").toInt(), int(ArrivalForm::MadeOn));
        // Changing one's mind takes it back, and so does another lot.
        screen.form.chooseLotDate(static_cast<int>(screen.form.lotDates().size()) - 1);
        QVERIFY(!screen.form.complete());
        QVERIFY(screen.form.facts().filter(u"Made"_s).isEmpty());
        screen.form.chooseLotDate(0);
        screen.form.setLot(u"X"_s);
        QVERIFY(!screen.form.complete());
        screen.form.setLot(lotOf(made));
        screen.form.chooseLotDate(0);
        QVERIFY2(screen.form.complete(), qPrintable(screen.form.lacking()));
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QCOMPARE(formatDate(*screen.page(screen.controller.labels().first()).item.made),
            made.toString(Qt::ISODate).toStdString());

        // The next bottle needs one tap, and says how its date was read.
        scanLot(lotOf(next));
        QVERIFY2(screen.form.complete(), qPrintable(screen.form.lacking()));
        QCOMPARE(screen.form.lotDateAt(), 0);
        QCOMPARE(screen.form.lotDateNote(), u"Read as year and day of the year, as last time."_s);
        screen.bookIn();
        QTRY_COMPARE(screen.stock(), 2);
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QCOMPARE(formatDate(*screen.page(screen.controller.labels().first()).item.made),
            next.toString(Qt::ISODate).toStdString());

        // A made date typed over it is the person's own, and teaches nothing.
        scanLot(lotOf(made));
        screen.form.setProperty("date", u"2026-01-15"_s);
        QCOMPARE(screen.form.lotDateAt(), -1);
        const auto draft = screen.form.submit();
        QVERIFY(draft.has_value() && draft->lotReadAs.empty());
        QCOMPARE(formatDate(*draft->made), std::string("2026-01-15"));
    }

    void useByAndLotCode_areBothKept()
    {
        Screen screen;
        const QDate made = QDate::fromString(screen.form.todayText(), Qt::ISODate).addDays(-100);
        screen.scan(u"(01)09520001421174(17)280531(10)"_s
            + u"%1%2"_s.arg(made.year() % 100, 2, 10, QChar(u'0')).arg(made.dayOfYear(), 3, 10, QChar(u'0')));
        QVERIFY(screen.form.complete());
        QCOMPARE(screen.form.lotDateAt(), -1);
        screen.form.chooseLotDate(0);
        const auto draft = screen.form.submit();
        QVERIFY(draft.has_value());
        QCOMPARE(formatDate(*draft->made), made.toString(Qt::ISODate).toStdString());
        QCOMPARE(formatDate(*draft->printed), std::string("2028-05-31"));
        QVERIFY(!draft->lotReadAs.empty());
        // Leaving the dates out leaves this one out too.
        screen.form.setProperty("dateKind", int(ArrivalForm::NoDate));
        const auto undated = screen.form.submit();
        QVERIFY(undated.has_value() && !undated->made && undated->lotReadAs.empty());
    }

    void case_isNotBookedInBeforeItIsCounted()
    {
        Screen screen;
        // White wood glue's number with indicator 1 and its own check digit (GS1 General Specifications 7.9).
        screen.scan(u"19520001421171"_s);
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        QCOMPARE(screen.form.name(), u"White wood glue"_s);
        QVERIFY(screen.form.isCase());
        screen.form.setProperty("dateKind", int(ArrivalForm::NoDate));
        QCOMPARE(screen.form.lacking(), u"Still to say: how many are in the case."_s);
        const int before = screen.stock();
        screen.form.setProperty("count", 4);
        QVERIFY(screen.form.complete());
        screen.bookIn();
        QTRY_COMPARE(screen.stock(), before + 4);
        screen.scan(u"19520001421171"_s);
        QCOMPARE(screen.form.property("count").toInt(), 4);
    }

    void stockTaking_booksInByHowFull_withUnknownDatesLeftUnknown()
    {
        Screen screen;
        const int before = screen.stock();
        screen.controller.beginStockTaking();
        QVERIFY(screen.controller.stockTaking());
        screen.controller.setShelf(1);
        QCOMPARE(screen.controller.shelfAt(), 1);
        const QString shelf = screen.form.places().at(1);

        screen.scan(u"9520001421174"_s); // the bare number on the bottle: no date, no lot
        QVERIFY2(screen.controller.asksFill(), qPrintable(screen.form.lacking()));
        screen.controller.bookInFilled(0.25);
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QCOMPARE(screen.stock(), before + 1);
        const QString label = screen.controller.labels().first();
        auto page = screen.page(label);
        QCOMPARE(page.item.left, grams(250));
        QCOMPARE(page.item.capacity, grams(1000));
        QCOMPARE(page.item.placeName, shelf.toStdString());
        QVERIFY(!page.item.made && !page.item.printed);
        QVERIFY(page.item.openedAt.has_value());
        QVERIFY(page.item.judgement.verdict != Verdict::Good);

        // A printed date is kept; whether it stood open here before, nobody knows.
        screen.scan(u"(01)09520001421174(17)280531"_s);
        QVERIFY(screen.controller.asksFill());
        screen.controller.bookInFilled(0.5);
        QTRY_COMPARE(screen.controller.taken()->rowCount(), 2);
        QTRY_VERIFY(screen.controller.labels().size() == 1 && screen.controller.labels().first() != label);
        page = screen.page(screen.controller.labels().first());
        QCOMPARE(formatDate(*page.item.printed), std::string("2028-05-31"));
        QCOMPARE(page.item.left, grams(500));
        QVERIFY(page.item.judgement.verdict != Verdict::Good);
        // A full one with its date is like any arrival.
        screen.scan(u"(01)09520001421174(17)280531"_s);
        screen.controller.bookInFilled(1);
        QTRY_COMPARE(screen.controller.taken()->rowCount(), 3);
        QTRY_VERIFY(!screen.controller.busy());
        page = screen.page(screen.controller.labels().first());
        QVERIFY(!page.item.openedAt.has_value());
        QCOMPARE(page.item.judgement.verdict, Verdict::Good);

        // One of ours on that shelf is said, and the walk goes on.
        QSignalSpy said(&screen.bench.services, &AppServices::said);
        screen.bench.scanner.typed(label);
        QTRY_COMPARE(said.size(), 1);
        QVERIFY(said.first().first().toString().contains(label));
        QVERIFY(screen.controller.stockTaking());

        // Taken back from the running list, it counts no more.
        QVERIFY2(screen.controller.takenWords().startsWith(u'3'), qPrintable(screen.controller.takenWords()));
        screen.bench.services.undo(screen.controller.taken()->index(0).data(ArrivalModel::Key).toString());
        QTRY_COMPARE(screen.controller.taken()->rowCount(), 2);
        QTRY_VERIFY(screen.controller.takenWords().startsWith(u'2'));

        screen.controller.endStockTaking();
        QVERIFY(!screen.controller.stockTaking());
        QVERIFY2(screen.controller.summary().startsWith(u'2'), qPrintable(screen.controller.summary()));
        screen.scan(u"9520001421174"_s);
        QVERIFY(!screen.controller.asksFill());
        QVERIFY(screen.form.asksDate());
    }

    void labelPhoto_isKeptSmallWithTheMaterial_andShownWithItsContainers()
    {
        Screen screen;
        QTemporaryDir folder;
        QImage photo(3000, 2000, QImage::Format_RGB32);
        photo.fill(qRgb(200, 40, 40));
        const QString file = folder.filePath(u"label.png"_s);
        QVERIFY(photo.save(file));
        screen.scan(whiteGlue);
        screen.controller.readPhoto(QUrl::fromLocalFile(folder.filePath(u"none.png"_s)));
        QTRY_VERIFY(!screen.controller.busy());
        QVERIFY(!screen.controller.errorText().isEmpty() && !screen.controller.hasPhoto());
        screen.controller.readPhoto(QUrl::fromLocalFile(file));
        QTRY_VERIFY(screen.controller.hasPhoto());
        QTRY_VERIFY(!screen.controller.busy());
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QVERIFY(!screen.controller.hasPhoto()); // the next arrival has its own

        LabelPhotoController shown;
        shown.setContainer(screen.controller.labels().first());
        shown.setServices(&screen.bench.services);
        QTRY_VERIFY(shown.there());
        QCOMPARE(shown.image().width(), 1600);
        QVERIFY(qAbs(shown.image().height() - 1067) <= 1);
        const QColor middle = shown.image().pixelColor(800, 500);
        QVERIFY(qAbs(middle.red() - 200) < 12 && qAbs(middle.green() - 40) < 12);
        QVERIFY(!shown.taken().isEmpty());
    }

    // Noise is what JPEG can do least with: even then the store's limit holds.
    void labelJpeg_staysWithinBounds()
    {
        QVERIFY(smallJpeg({}, LabelPhoto::mostBytes).empty());
        QImage noise(2400, 2400, QImage::Format_RGB32);
        quint32 state = 1;
        for (int y = 0; y < noise.height(); ++y) {
            for (int x = 0; x < noise.width(); ++x)
                noise.setPixel(x, y, (state = state * 1664525U + 1013904223U) | 0xff000000U);
        }
        const std::string jpeg = smallJpeg(noise, LabelPhoto::mostBytes);
        QVERIFY(!jpeg.empty() && jpeg.size() <= LabelPhoto::mostBytes);
    }

    void stockTaking_goesOnAfterAnotherScreen_andLearnsWhatIsNew()
    {
        Screen screen;
        screen.controller.beginStockTaking();
        screen.controller.setShelf(0);
        ArrivalController again;
        again.setServices(&screen.bench.services);
        QTRY_VERIFY(again.loaded());
        QVERIFY(again.stockTaking());
        QCOMPARE(again.shelfAt(), 0);
        screen.scan(u"9520123456788"_s); // a number that is new here: the whole form, its age left unknown
        ArrivalController& asked
            = screen.controller.state() == ArrivalController::Offered ? screen.controller : again;
        QVERIFY(!asked.asksFill());
        QVERIFY(asked.form()->isNew());
        QCOMPARE(asked.form()->property("dateKind").toInt(), int(ArrivalForm::FoundUndated));
        QVERIFY(asked.form()->placeAt() == 0);
    }

    // GS1 General Specifications 3.4: day 00 of a use-by is the last of its month; a person may write so as
    // well.
    void monthAlone_isItsLastDayForUseBy_andItsFirstForMadeOn()
    {
        Screen screen;
        screen.scan(u"(01)09520001421174(17)280200"_s);
        QVERIFY2(screen.form.facts().contains(u"Use by 29 Feb 2028"_s),
            qPrintable(screen.form.facts().join(u'|')));
        screen.form.setProperty("date", u"2027-02"_s);
        QVERIFY(screen.form.facts().contains(u"Use by 28 Feb 2027"_s));
        screen.form.setProperty("dateKind", ArrivalForm::MadeOn);
        QVERIFY(screen.form.facts().contains(u"Made on 1 Feb 2027"_s));
        screen.form.setProperty("date", u"2027-13"_s);
        screen.bookIn();
        QVERIFY(!screen.form.dateError().isEmpty());
        QVERIFY(!screen.controller.errorText().isEmpty());
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
    }

    void faultyCode_booksNothingAndSaysWhy_data()
    {
        QTest::addColumn<QString>("code");
        QTest::addColumn<bool>("faulty");
        // The check digit of 952000142117 is 4.
        QTest::newRow("check digit") << u"9520001421175"_s << true;
        QTest::newRow("no such day") << u"(01)09520001421174(17)281332"_s << true;
        QTest::newRow("nobody's label") << u"GW AAAA AAA"_s << true;
        QTest::newRow("any text") << u"WOOD GLUE 42"_s << false;
    }

    void faultyCode_booksNothingAndSaysWhy()
    {
        QFETCH(QString, code);
        QFETCH(bool, faulty);
        Screen screen;
        const int before = screen.stock();
        screen.scan(code);
        QCOMPARE(screen.controller.state(), ArrivalController::Unusable);
        QCOMPARE(screen.controller.faulty(), faulty);
        QVERIFY2(screen.controller.say().endsWith(u'.'), qPrintable(screen.controller.say()));
        screen.bookIn();
        QCOMPARE(screen.stock(), before);
        screen.controller.putAside();
        QCOMPARE(screen.controller.state(), ArrivalController::Waiting);
    }

    void ourLabel_opensTheContainer()
    {
        Screen screen;
        const auto containers = screen.bench.ask([](Shop& shop) { return shop.store().containers(); });
        const auto label = QString::fromStdString(containers.front().label);
        screen.bench.scanner.typed(label);
        QTRY_COMPARE(screen.bench.navigation.container(), label);
        QCOMPARE(screen.controller.state(), ArrivalController::Waiting);
    }

    void severalOfTheSame_areOneAct_andOneUndoTakesAllBack()
    {
        Screen screen;
        const int before = screen.stock();
        screen.scan(whiteGlue);
        screen.form.setProperty("count", 3);
        QSignalSpy said(&screen.bench.services, &AppServices::said);
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 3);
        QStringList labels = screen.controller.labels();
        QCOMPARE(labels.removeDuplicates(), 0);
        QCOMPARE(screen.stock(), before + 3);
        QTRY_COMPARE(
            screen.controller.latest()->index(2).data(ArrivalModel::Name).toString(), u"White wood glue"_s);
        const QString third = screen.controller.latest()->index(2).data(ArrivalModel::Label).toString();
        QVERIFY(screen.controller.labels().contains(third));

        screen.bench.services.undo(said.first().at(1).toString());
        QTRY_COMPARE(screen.controller.state(), ArrivalController::Waiting);
        for (int row = 0; row < screen.controller.latest()->count(); ++row)
            QVERIFY(screen.controller.latest()->index(row).data(ArrivalModel::Label).toString() != third);
    }

    void sameCodeAgain_isNoSecondArrival()
    {
        Screen screen;
        const int before = screen.stock();
        screen.scan(whiteGlue);
        screen.scan(whiteGlue);
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        QVERIFY2(screen.controller.say().contains(u"count"_s), qPrintable(screen.controller.say()));
        QVERIFY(screen.controller.other().isEmpty());
        screen.bookIn();
        QTRY_COMPARE(screen.controller.state(), ArrivalController::Booked);
        QCOMPARE(screen.stock(), before + 1);
    }

    void secondSymbolOfTheLabel_fillsInLotAndDate()
    {
        Screen screen;
        screen.scan(u"9520001421174"_s);
        QVERIFY(screen.form.asksDate());
        screen.form.setProperty("count", 2);
        screen.scan(whiteGlue);
        QVERIFY(screen.form.facts().contains(u"Lot W-77"_s));
        QVERIFY(screen.form.facts().contains(u"Use by 31 May 2028"_s));
        QVERIFY(screen.form.complete());
        QCOMPARE(screen.form.property("count").toInt(), 2);
    }

    void anotherCode_waitsUntilThisOneIsDone()
    {
        Screen screen;
        screen.scan(whiteGlue);
        screen.scan(yellowGlue);
        QCOMPARE(screen.form.name(), u"White wood glue"_s);
        QCOMPARE(screen.controller.other(), u"Yellow wood glue"_s);
        screen.bookIn();
        QTRY_COMPARE(screen.controller.state(), ArrivalController::Booked);
        QCOMPARE(screen.controller.other(), u"Yellow wood glue"_s);
        screen.controller.takeOther();
        QCOMPARE(screen.form.name(), u"Yellow wood glue"_s);
        QVERIFY(screen.controller.other().isEmpty());
    }

    void newNumberOfAKnownMaterial_isLearnedWithIt()
    {
        Screen screen;
        const auto packs = screen.bench.ask([](Shop& shop) { return shop.store().packs(); }).size();
        screen.scan(u"(01)0"_s + unknownNumber + u"(17)280101"_s);
        const auto material = screen.bench.ask([](Shop& shop) { return shop.catalogue(); }).materials;
        const auto white = std::find_if(material.begin(), material.end(),
            [](const auto& each) { return each.second.name == "White wood glue"; });
        screen.controller.chooseMaterial(QString::fromStdString(white->first.text));
        QTRY_VERIFY(!screen.form.isNew());
        QVERIFY(screen.form.placeAt() >= 0); // where that glue was put last
        QVERIFY(screen.form.packs().isEmpty()); // the number names a size of its own
        screen.form.setProperty("amount", u"2.5 kg"_s);
        screen.bookIn();
        QTRY_COMPARE(screen.controller.state(), ArrivalController::Booked);
        QCOMPARE(screen.bench.ask([](Shop& shop) { return shop.store().packs(); }).size(), packs + 1);
        screen.scan(unknownNumber);
        QCOMPARE(screen.form.name(), u"White wood glue"_s);
        QCOMPARE(screen.form.amountWords(), u"2.5\u00a0kg"_s);
    }

    void byHand_offersTheSizesOfAKnownMaterial()
    {
        Screen screen;
        screen.controller.byHand();
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        screen.controller.materials()->setSought(u"wood white"_s);
        QCOMPARE(screen.controller.materials()->count(), 1);
        screen.controller.chooseMaterial(
            screen.controller.materials()->index(0, 0).data(ChoiceModel::Key).toString());
        QTRY_COMPARE(screen.form.packs(), (QStringList { u"500\u00a0g"_s, u"1\u00a0kg"_s, u"5\u00a0kg"_s }));
        QCOMPARE(screen.form.packAt(), -1);
        screen.form.setPackAt(2);
        QCOMPARE(screen.form.amountWords(), u"5\u00a0kg"_s);
        screen.form.setProperty("amount", u"4"_s); // not that pack after all
        QCOMPARE(screen.form.packAt(), -1);
        screen.form.setPackAt(0);
        QCOMPARE(screen.form.lacking(), u"Still to say: what date the label gives."_s);
        screen.form.setProperty("dateKind", ArrivalForm::NoDate);
        QVERIFY(screen.form.complete());
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        const auto page = screen.page(screen.controller.labels().first());
        QCOMPARE(page.item.left, grams(500));
        QVERIFY(!page.item.printed && !page.item.made);
    }

    void foundWithNoDate_isNotKnownToBeGood()
    {
        Screen screen;
        screen.scan(yellowGlue);
        QVERIFY(!screen.form.complete());
        screen.form.setProperty("dateKind", ArrivalForm::FoundUndated);
        QVERIFY2(screen.form.complete(), qPrintable(screen.form.lacking()));
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QTRY_VERIFY(!screen.controller.verdict().isEmpty());
        QVERIFY(screen.controller.verdict() != u"good"_s);
    }

    void placeNotKnown_isAnAnswer_andANewPlaceIsMade()
    {
        Screen screen(AppBench::Stock::Places);
        const auto fill = [&] {
            screen.controller.byHand();
            screen.controller.chooseNew(u"Fish glue"_s);
            screen.controller.chooseClass(u"fish_glue_liquid"_s);
            screen.form.setProperty("amount", u"100 ml"_s);
            screen.form.setProperty("dateKind", ArrivalForm::BestBefore);
            screen.form.setProperty("date", u"2027-09"_s);
        };
        fill();
        QCOMPARE(screen.form.lacking(), u"Still to say: where it will stand."_s);
        screen.form.setPlaceAt(static_cast<int>(screen.form.places().size()) - 1);
        screen.bookIn();
        QTRY_COMPARE(screen.controller.labels().size(), 1);
        QVERIFY(screen.page(screen.controller.labels().first()).item.placeName.empty());

        fill();
        screen.form.setPlaceAt(static_cast<int>(screen.form.places().size()) - 2);
        QVERIFY(screen.form.otherPlace());
        QVERIFY(!screen.form.complete());
        screen.form.setProperty("place", u"Attic"_s);
        screen.bookIn();
        QTRY_COMPARE(screen.stock(), 2);
        QTRY_VERIFY(screen.form.places().contains(u"Attic"_s));
    }

    void whatTheLabelSaysOfItself_isKeptWithTheMaterial()
    {
        Screen screen(AppBench::Stock::Places);
        screen.controller.byHand();
        screen.controller.chooseNew(u"Cold glue"_s);
        screen.controller.chooseClass(u"liquid_hide_glue"_s);
        screen.form.setProperty("amount", u"250 ml"_s);
        screen.form.setPlaceAt(0);
        screen.form.setProperty("dateKind", ArrivalForm::MadeOn);
        screen.form.setProperty("date", u"2026-01-15"_s);
        screen.form.says()->setProperty("sealedMonths", u"2 years"_s);
        screen.form.says()->setProperty("openedMonths", u"x"_s);
        screen.bookIn();
        QVERIFY(!screen.form.says()->lifeError().isEmpty());
        QCOMPARE(screen.stock(), 0);
        screen.form.says()->setProperty("openedMonths", u"6"_s);
        screen.form.says()->setProperty("keepLow", u"5"_s);
        screen.form.setProperty("articleCode", u"TY-LH"_s);
        screen.bookIn();
        QTRY_COMPARE(screen.stock(), 1);
        const auto materials = screen.bench.ask([](Shop& shop) { return shop.store().materials(); });
        QCOMPARE(materials.size(), std::size_t(1));
        QCOMPARE(materials.front().articleCode, std::string("TY-LH"));
        const auto figure = [&](const char* name) {
            for (const Figure& each : materials.front().labelFigures) {
                if (each.figure == name)
                    return each;
            }
            return Figure {};
        };
        QCOMPARE(figure("sealed_life").value.value_or(0), 24.0);
        QCOMPARE(figure("sealed_life").unit, std::string("month"));
        QCOMPARE(figure("sealed_life").source, std::string("label"));
        QCOMPARE(figure("opened_life").value.value_or(0), 6.0);
        QCOMPARE(figure("storage_temperature").low.value_or(0), 5.0);

        // Typed, the maker's code is known from now on.
        screen.scan(u"ty-lh"_s);
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        QCOMPARE(screen.form.name(), u"Cold glue"_s);
    }

    void dateThatCannotBe_isRefusedBeforeAnythingIsWritten()
    {
        Screen screen;
        const int before = screen.stock();
        screen.scan(whiteGlue);
        screen.form.setProperty("dateKind", ArrivalForm::MadeOn);
        screen.form.setProperty("date", u"2026-06-01"_s); // after today
        screen.bookIn();
        QVERIFY2(screen.controller.errorText().contains(u"1 June 2026"_s),
            qPrintable(screen.controller.errorText()));
        QCOMPARE(screen.controller.state(), ArrivalController::Offered);
        QCOMPARE(screen.stock(), before);
    }

    void passedDate_isSaidBeforeBookingIn()
    {
        Screen screen;
        screen.scan(u"(01)09520001421174(17)260301"_s);
        QVERIFY(!screen.form.caution().isEmpty());
        screen.scan(u"(01)09520001421174(17)260302"_s); // good all that day
        screen.controller.putAside();
        screen.scan(u"(01)09520001421174(17)260302"_s);
        QVERIFY(screen.form.caution().isEmpty());
    }

    void scanBeforeTheScreenWasMade_isTakenUp()
    {
        AppBench bench(AppBench::Stock::Demo);
        QSignalSpy waiting(&bench.services, &AppServices::proposalWaiting);
        bench.scanner.typed(whiteGlue);
        QTRY_COMPARE(waiting.size(), 1);
        ArrivalController controller;
        controller.setServices(&bench.services);
        QTRY_COMPARE(controller.state(), ArrivalController::Offered);
        QCOMPARE(controller.form()->name(), u"White wood glue"_s);
    }

    void lists_keepTheModelsPromises()
    {
        Screen screen;
        const QAbstractItemModelTester latest(
            screen.controller.latest(), QAbstractItemModelTester::FailureReportingMode::QtTest);
        const QAbstractItemModelTester classes(
            screen.controller.classes(), QAbstractItemModelTester::FailureReportingMode::QtTest);
        QCOMPARE(screen.controller.latest()->count(), 24);
        QVERIFY(screen.controller.classes()->count() > 50);
        screen.controller.classes()->setSought(u"shellac"_s);
        const int shellacs = screen.controller.classes()->count();
        QVERIFY(shellacs >= 3 && shellacs < 10);
        QString group;
        QStringList seen;
        screen.controller.classes()->setSought({});
        for (int row = 0; row < screen.controller.classes()->count(); ++row) {
            const QString next = screen.controller.classes()->index(row).data(ChoiceModel::Group).toString();
            if (next == group)
                continue;
            QVERIFY2(!seen.contains(next), qPrintable(next)); // each heading once
            seen.append(next);
            group = next;
        }
        screen.scan(whiteGlue);
        screen.bookIn();
        QTRY_COMPARE(screen.controller.state(), ArrivalController::Booked);
    }
};

QTEST_MAIN(ArrivalControllerTest)
#include "tst_arrivalcontroller.moc"
