#include <QTest>

#include "codes/ownlabel.h"
#include "shop/ownlabels.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Booking in: from the code on a label to the shelf, once the hard way and from then on with one
/// confirmation.
class ArrivalTest : public QObject {
    Q_OBJECT

private:
    // A GTIN of the GS1 demonstration prefix 952, its check digit by GS1 General Specifications 7.9.
    static constexpr auto label = "]d2010952012345678810LOT7\x1d"
                                  "17270531";

    static Result<ArrivalProposal> propose(const Workbench& bench, const char* text, double day = 1)
    {
        return proposeArrival(
            *bench.shop, readCode(text, {}, dateOf(Workbench::day(day))), Workbench::day(day));
    }

private Q_SLOTS:
    void unknownProduct_asksOnlyWhatIsMissing_data() { addEngines(); }
    void unknownProduct_asksOnlyWhatIsMissing()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto proposal = propose(bench, label);
        GW_OK(proposal);
        QCOMPARE(proposal->kind, ArrivalProposal::Kind::NewMaterial);
        QVERIFY(proposal->asks == std::vector<std::string>({ "material", "class", "amount", "place" }));
        QCOMPARE(proposal->draft.lot, std::string("LOT7"));
        QVERIFY(proposal->draft.printed == Date(std::chrono::year { 2027 } / 5 / 31));
        QVERIFY(proposal->draft.printedIsUseBy);
    }

    void theNextBottle_needsOneConfirmation_data() { addEngines(); }
    void theNextBottle_needsOneConfirmation()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        auto first = propose(bench, label);
        GW_OK(first);
        first->draft.newName = "White PVA";
        first->draft.newClass = ClassId { "pva_white" };
        first->draft.amount = grams(500);
        first->draft.place = "Bench";
        GW_OK(bookIn(*bench.shop, first->draft, bench.on(1)));

        const auto second = propose(bench, label, 2);
        GW_OK(second);
        QCOMPARE(second->kind, ArrivalProposal::Kind::KnownProduct);
        QVERIFY(second->asks.empty());
        QCOMPARE(second->materialName, std::string("White PVA"));
        QCOMPARE(second->draft.place, std::string("Bench"));
        GW_OK(bookIn(*bench.shop, second->draft, bench.on(2)));
        // The bare number on a box, and the number as it is printed below the bars, mean the same product.
        for (const char* same : { "9520123456788", "(01)09520123456788" }) {
            const auto again = propose(bench, same, 3);
            GW_OK(again);
            QCOMPARE(again->kind, ArrivalProposal::Kind::KnownProduct);
        }
        const auto standing = shelf(*bench.shop, { Workbench::day(3), {}, {}, {}, false, true });
        GW_OK(standing);
        QCOMPARE(standing->size(), std::size_t { 2 });
        QCOMPARE(bench.shop->store().materials()->size(), std::size_t { 1 });
    }

    void ourOwnLabel_opensTheContainer_data() { addEngines(); }
    void ourOwnLabel_opensTheContainer()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        const auto proposal = propose(bench, pva.c_str());
        GW_OK(proposal);
        QCOMPARE(proposal->kind, ArrivalProposal::Kind::OurContainer);
        QCOMPARE(proposal->containerLabel, pva);
    }

    void faultyOrForeignCodes_bookNothingIn_data() { addEngines(); }
    void faultyOrForeignCodes_bookNothingIn()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        for (const char* text : { "9520123456789", "(01)09520123456788(17)270231", "https://example.com/",
                 "'; DROP TABLE entry; --", "<b>hello</b>" }) {
            const auto proposal = propose(bench, text);
            GW_OK(proposal);
            QCOMPARE(proposal->kind, ArrivalProposal::Kind::NothingToBookIn);
            QVERIFY(!proposal->say.empty());
        }
    }

    void severalOfTheSame_areOneAct_data() { addEngines(); }
    void severalOfTheSame_areOneAct()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        ArrivalDraft draft;
        draft.newName = "Nitrile gloves";
        draft.newClass = ClassId { "gloves_nitrile" };
        draft.amount = pieces(50);
        draft.count = 3;
        const auto done = bookIn(*bench.shop, draft, bench.on(1));
        GW_OK(done);
        QCOMPARE(done->containers.size(), std::size_t { 3 });
        GW_OK(undo(*bench.shop, done->entry, Workbench::day(2)));
        const auto standing = shelf(*bench.shop, { Workbench::day(3), {}, {}, {}, true, true });
        GW_OK(standing);
        QVERIFY(standing->empty());
    }

    void whatCannotBe_isRefusedAndNothingIsLearned_data() { addEngines(); }
    void whatCannotBe_isRefusedAndNothingIsLearned()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto attempt = [&](const std::function<void(ArrivalDraft&)>& change) {
            ArrivalDraft draft;
            draft.newName = "White PVA";
            draft.newClass = ClassId { "pva_white" };
            draft.amount = grams(500);
            draft.place = "New corner";
            change(draft);
            return bookIn(*bench.shop, draft, bench.on(10));
        };
        GW_FAILS(attempt([](ArrivalDraft& d) { d.count = 0; }), ErrorCode::BadInput);
        GW_FAILS(attempt([](ArrivalDraft& d) { d.count = 100000; }), ErrorCode::BadInput);
        GW_FAILS(attempt([](ArrivalDraft& d) { d.amount.reset(); }), ErrorCode::BadInput);
        GW_FAILS(attempt([](ArrivalDraft& d) { d.amount = grams(0); }), ErrorCode::BadInput);
        GW_FAILS(attempt([](ArrivalDraft& d) { d.newName = "  "; }), ErrorCode::BadInput);
        GW_FAILS(attempt([](ArrivalDraft& d) { d.newClass = {}; }), ErrorCode::BadInput);
        GW_FAILS(
            attempt([](ArrivalDraft& d) { d.newClass = ClassId { "unobtainium" }; }), ErrorCode::NotFound);
        GW_FAILS(attempt([](ArrivalDraft& d) { d.made = dateIn2026(3, 20); }), ErrorCode::BadInput);
        GW_FAILS(attempt([](ArrivalDraft& d) {
            d.made = dateIn2026(2, 20);
            d.printed = dateIn2026(2, 1);
        }),
            ErrorCode::BadInput);
        QVERIFY(bench.shop->store().materials()->empty());
        QVERIFY(bench.shop->store().containers()->empty());
        QCOMPARE(bench.shop->store().places()->size(), std::size_t { 2 });
    }

    void oneNumber_standsForOneMaterial_data() { addEngines(); }
    void oneNumber_standsForOneMaterial()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto withNumber = [](ArrivalDraft& draft) { draft.gtin = *parseGtin("9520123456788"); };
        bench.arrive("White PVA", "pva_white", "500 g", 0, withNumber);
        ArrivalDraft other;
        other.newName = "Yellow PVA";
        other.newClass = ClassId { "pva_yellow" };
        other.amount = grams(500);
        withNumber(other);
        GW_FAILS(bookIn(*bench.shop, other, bench.on(1)), ErrorCode::Refused);
        QCOMPARE(bench.shop->store().materials()->size(), std::size_t { 1 });
    }

    void labelCodeThatIsTaken_isDrawnAgain_data() { addEngines(); }
    void labelCodeThatIsTaken_isDrawnAgain()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string arrived = bench.arrive("White PVA", "pva_white", "500 g");
        auto other = bench.shop->store().containerByLabel(arrived);
        GW_OK(other);
        ContainerRecord container = **other;
        container.id = ContainerId { "another" };
        container.label = ownLabelCode(7);
        GW_OK(bench.shop->store().transact([&] { return bench.shop->store().addContainer(container); }));

        std::uint64_t number = 6;
        const auto drawn = freeOwnLabel(bench.shop->store(), [&] { return ++number; });
        GW_OK(drawn);
        QCOMPARE(*drawn, ownLabelCode(8));
        const auto none = freeOwnLabel(bench.shop->store(), [] { return std::uint64_t { 7 }; });
        QVERIFY(!none);
        QCOMPARE(none.error().code, ErrorCode::Conflict);
    }
};

QTEST_GUILESS_MAIN(ArrivalTest)
#include "tst_arrival.moc"
