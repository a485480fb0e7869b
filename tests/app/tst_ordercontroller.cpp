// The order list as the screen drives it, with the sheets it is changed by, on a real store with the
// demonstration shop.
#include <QAbstractItemModelTester>
#include <QFile>
#include <QSignalSpy>
#include <QTest>

#include "app/ordercontroller.h"
#include "app/orderpackscontroller.h"
#include "app/orderratescontroller.h"
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
        [this] { QTRY_VERIFY_WITH_TIMEOUT(!controller.busy(), 20000); }();
    }

    AppBench bench;
    Controller controller;
};

double rateOf(AppBench& bench, const char* jobType)
{
    return bench.ask([jobType](Shop& shop) { return findJobType(shop, jobType); }).perMonth;
}

} // namespace

class OrderControllerTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void list_isForTheMonthToCome_andStandsBySupplier()
    {
        Screen<OrderController> screen;
        OrderController& order = screen.controller;
        QVERIFY(order.loaded());
        QCOMPARE(order.month(), u"April 2026"_s); // the bench stands in March
        QVERIFY(order.lines()->count() > 0);
        QStringList suppliers;
        for (const ShownRow& row : order.lines()->rows()) {
            const QString supplier = row.values.first().toString();
            if (suppliers.isEmpty() || suppliers.last() != supplier)
                suppliers.append(supplier);
        }
        QCOMPARE(QSet<QString>(suppliers.begin(), suppliers.end()).size(), suppliers.size());
        for (const ShownRow& row : order.lines()->rows()) {
            const double usable = row.values.at(orderLineRoles.indexOf("usableLevel")).toDouble();
            const double need = row.values.at(orderLineRoles.indexOf("needMark")).toDouble();
            QVERIFY(usable >= 0 && usable <= 1 && need >= 0 && need <= 1);
            QVERIFY(!row.values.at(orderLineRoles.indexOf("why")).toString().isEmpty());
        }
    }

    void list_saysWhatThePlanSays()
    {
        Screen<OrderController> screen;
        const OrderPlan plan = screen.bench.ask([now = screen.bench.now](Shop& shop) {
            return orderForMonth(shop,
                { Date { std::chrono::year { 2026 }, std::chrono::month { 4 }, std::chrono::day { 1 } }, 95 },
                now);
        });
        QCOMPARE(static_cast<std::size_t>(screen.controller.lines()->count()), plan.lines.size());
        for (const OrderLine& line : plan.lines) {
            const QString key = QString::fromStdString(line.material.text);
            QCOMPARE(
                screen.controller.lines()->value(key, "name").toString(), QString::fromStdString(line.name));
            QCOMPARE(
                screen.controller.lines()->value(key, "why").toString(), QString::fromStdString(line.why));
            QCOMPARE(screen.controller.lines()->value(key, "packs").toString().isEmpty(), line.packs.empty());
        }
        QCOMPARE(plan.totals.size(), std::size_t { 1 });
        QCOMPARE(screen.controller.total(), moneyText(plan.totals.front()));
        QCOMPARE(screen.controller.notes().size(), static_cast<qsizetype>(plan.notes.size()));
    }

    void months_endAtThisOneAndAYearAhead()
    {
        Screen<OrderController> screen;
        OrderController& order = screen.controller;
        order.stepMonth(-1);
        QCOMPARE(order.month(), u"March 2026"_s);
        QVERIFY(!order.canGoBack());
        order.stepMonth(-1);
        QCOMPARE(order.month(), u"March 2026"_s);
        for (int i = 0; i < 20; ++i)
            order.stepMonth(1);
        QCOMPARE(order.month(), u"March 2027"_s);
        QVERIFY(!order.canGoOn());
        screen.settle();
        QVERIFY2(order.errorText().isEmpty(), qPrintable(order.errorText()));
    }

    void moreService_neverNeedsLess()
    {
        Screen<OrderController> screen;
        OrderController& order = screen.controller;
        QCOMPARE(order.serviceLevels(), (QStringList { u"80 %"_s, u"90 %"_s, u"95 %"_s, u"99 %"_s }));
        order.setService(0);
        screen.settle();
        const int few = order.lines()->count();
        order.setService(3);
        screen.settle();
        QVERIFY(order.lines()->count() >= few);
        order.setService(17);
        QCOMPARE(order.service(), 3);
    }

    void csv_isTheListThatIsShown()
    {
        Screen<OrderController> screen;
        QSignalSpy saved(&screen.controller, &OrderController::saved);
        QSignalSpy said(&screen.bench.services, &AppServices::said);
        const QString path = screen.bench.folder.filePath(u"order.csv"_s);
        screen.controller.saveCsv(QUrl::fromLocalFile(path));
        QTRY_COMPARE(saved.size(), 1);
        QCOMPARE(said.size(), 1);
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QString text = QString::fromUtf8(file.readAll());
        QVERIFY(text.startsWith(u"supplier,material,pack,count"_s));
        for (const ShownRow& row : screen.controller.lines()->rows())
            QVERIFY(text.contains(row.values.at(orderLineRoles.indexOf("name")).toString()));
    }

    void csv_whereNothingMayBeWritten_saysSo()
    {
        Screen<OrderController> screen;
        QSignalSpy saved(&screen.controller, &OrderController::saved);
        screen.controller.saveCsv(QUrl::fromLocalFile(screen.bench.folder.filePath(u"none/order.csv"_s)));
        QTRY_VERIFY(!screen.controller.errorText().isEmpty());
        QCOMPARE(saved.size(), 0);
        QVERIFY(screen.controller.lines()->count() > 0); // the list is still there
    }

    void emptyShop_hasAnEmptyList()
    {
        Screen<OrderController> screen(AppBench::Stock::Places);
        QVERIFY(screen.controller.loaded());
        QCOMPARE(screen.controller.lines()->count(), 0);
        QVERIFY(screen.controller.total().isEmpty());
        QVERIFY(!screen.controller.workExpected()); // so that "nothing" is not taken for "enough"
    }

    void models_keepTheRulesOfModels()
    {
        Screen<OrderController> screen;
        const QAbstractItemModelTester lines(
            screen.controller.lines(), QAbstractItemModelTester::FailureReportingMode::QtTest);
        screen.controller.setService(0);
        screen.settle();
        screen.controller.setService(3);
        screen.settle();
        screen.controller.stepMonth(1);
        screen.settle();
    }

    void rates_areShownAtOnce_andKeptWhenTheStepsRest()
    {
        Screen<OrderRatesController> screen;
        OrderRatesController& rates = screen.controller;
        const auto shown = [&] { return rates.rates()->value(u"chair_full"_s, "rate").toString(); };
        QCOMPARE(shown(), u"2"_s); // db/demo/rates.csv
        rates.step(u"chair_full"_s, 1);
        rates.step(u"chair_full"_s, 1);
        rates.step(u"chair_full"_s, 1);
        QCOMPARE(shown(), u"3.5"_s);
        QCOMPARE(rateOf(screen.bench, "chair_full"), 2.0);
        QTRY_COMPARE(rateOf(screen.bench, "chair_full"), 3.5);
        screen.settle();
        QCOMPARE(shown(), u"3.5"_s);
    }

    void rates_goToTheNextHalf_andNeverBelowNothing()
    {
        Screen<OrderRatesController> screen;
        OrderRatesController& rates = screen.controller;
        const auto shown = [&] { return rates.rates()->value(u"tabletop_reglue"_s, "rate").toString(); };
        QCOMPARE(shown(), u"0.3"_s);
        rates.step(u"tabletop_reglue"_s, 1);
        QCOMPARE(shown(), u"0.5"_s);
        rates.step(u"tabletop_reglue"_s, -1);
        rates.step(u"tabletop_reglue"_s, -1);
        QCOMPARE(shown(), u"0"_s);
        rates.keep(); // the sheet is closed
        QTRY_COMPARE(rateOf(screen.bench, "tabletop_reglue"), 0.0);
    }

    void rates_typed_takeACommaAndRefuseWhatCannotBe()
    {
        Screen<OrderRatesController> screen;
        OrderRatesController& rates = screen.controller;
        rates.type(u"wax_piece"_s, u"0,25"_s);
        rates.keep();
        QTRY_COMPARE(rateOf(screen.bench, "wax_piece"), 0.25);
        rates.type(u"wax_piece"_s, u"often"_s);
        QVERIFY(!rates.errorText().isEmpty());
        rates.type(u"wax_piece"_s, u"20000"_s);
        rates.keep();
        QTRY_VERIFY(!rates.errorText().isEmpty());
        screen.settle();
        QTRY_COMPARE(rates.rates()->value(u"wax_piece"_s, "rate").toString(), u"0.25"_s);
        QCOMPARE(rateOf(screen.bench, "wax_piece"), 0.25);
    }

    void packs_aNewOneIsLearned()
    {
        Screen<OrderPacksController> screen;
        OrderPacksController& packs = screen.controller;
        const int before = packs.packs()->count();
        QSignalSpy saved(&packs, &OrderPacksController::saved);
        QCOMPARE(packs.currency(), u"EUR"_s); // db/demo/shop.csv
        packs.draftNew();
        QVERIFY(packs.isNew() && !packs.canSave());
        packs.setMaterial(static_cast<int>(packs.materials().indexOf(u"Fish glue"_s)));
        packs.setAmount(u"1 kg"_s);
        packs.setPrice(u"79,50"_s);
        packs.setSupplier(u"Tallow Yard Glues"_s);
        packs.setLeadDays(u"9"_s);
        QVERIFY(packs.canSave());
        packs.save();
        QTRY_COMPARE(saved.size(), 1);
        QTRY_COMPARE(packs.packs()->count(), before + 1);
        const auto all = screen.bench.ask([](Shop& shop) { return shop.store().packs(); });
        QVERIFY(std::any_of(all.begin(), all.end(), [](const PackRecord& pack) {
            return pack.amount == grams(1000) && pack.price == Money { 7950, "EUR" }
            && pack.supplier == "Tallow Yard Glues" && pack.leadDays == 9.0;
        }));
    }

    void packs_aChangedOneStaysTheSamePack()
    {
        Screen<OrderPacksController> screen;
        OrderPacksController& packs = screen.controller;
        const QString key = packs.packs()->rows().front().key;
        const int before = packs.packs()->count();
        packs.draftOf(key);
        QVERIFY(!packs.isNew());
        QVERIFY(!packs.amount().isEmpty() && !packs.price().isEmpty() && !packs.gtin().isEmpty());
        packs.setPrice(u""_s);
        packs.setLeadDays(u""_s);
        packs.setSupplier(u"Copper Bench Supplies"_s);
        QSignalSpy saved(&packs, &OrderPacksController::saved);
        packs.save();
        QTRY_COMPARE(saved.size(), 1);
        screen.settle();
        QCOMPARE(packs.packs()->count(), before);
        const auto all = screen.bench.ask([](Shop& shop) { return shop.store().packs(); });
        const auto pack = std::find_if(all.begin(), all.end(),
            [&](const PackRecord& known) { return known.id.text == key.toStdString(); });
        QVERIFY(pack != all.end());
        QVERIFY(!pack->price && !pack->leadDays); // not told is not known
        QCOMPARE(pack->supplier, std::string("Copper Bench Supplies"));
    }

    void packs_inUsUnits_anAmountNobodyTouchedStaysExact()
    {
        Screen<OrderPacksController> screen;
        screen.bench.settings.setUnits(u"us"_s);
        OrderPacksController& packs = screen.controller;
        QTRY_VERIFY(packs.packs()->rows().front().values.at(1).toString().contains(u"oz"_s)
            || packs.packs()->rows().front().values.at(1).toString().contains(u"lb"_s));
        screen.settle();
        const auto amounts = [&] {
            std::map<std::string, std::int64_t> all;
            for (const PackRecord& pack : screen.bench.ask([](Shop& shop) { return shop.store().packs(); }))
                all[pack.id.text] = pack.amount.milli;
            return all;
        };
        const auto before = amounts();
        for (const ShownRow& row : std::vector<ShownRow>(packs.packs()->rows())) {
            packs.draftOf(row.key);
            QSignalSpy saved(&packs, &OrderPacksController::saved);
            packs.save();
            QTRY_COMPARE(saved.size(), 1);
            QVERIFY2(packs.errorText().isEmpty(), qPrintable(packs.errorText()));
        }
        QVERIFY(amounts() == before);
    }

    void packs_whatCannotBe_isRefusedAndKeepsTheDraft()
    {
        Screen<OrderPacksController> screen;
        OrderPacksController& packs = screen.controller;
        QSignalSpy saved(&packs, &OrderPacksController::saved);
        packs.draftNew();
        packs.setMaterial(0);
        packs.setAmount(u"a lot"_s);
        packs.save();
        QTRY_VERIFY(!packs.errorText().isEmpty());
        packs.setAmount(u"1 kg"_s);
        packs.setGtin(u"9520123456789"_s); // the check digit by GS1 General Specifications 7.9 would be 8
        packs.save();
        QTRY_VERIFY(!packs.errorText().isEmpty());
        packs.setGtin({});
        packs.setLeadDays(u"soon"_s);
        packs.save();
        QVERIFY(!packs.errorText().isEmpty());
        QCOMPARE(packs.amount(), u"1 kg"_s);
        QCOMPARE(saved.size(), 0);
    }
};

QTEST_MAIN(OrderControllerTest)
#include "tst_ordercontroller.moc"
