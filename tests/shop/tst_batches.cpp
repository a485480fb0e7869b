#include <QTest>

#include "shop/batch.h"
#include "shop/lotpieces.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

/// Minutes after noon of the second day, the moment the tests' pot is mixed.
Moment at(int minutes) { return Workbench::day(1) + std::chrono::minutes { minutes }; }
ActTime on(int minutes) { return { at(minutes), at(minutes) }; }

MixAsked fiftyGrams()
{
    MixAsked asked;
    asked.recipe = "hot_hide";
    asked.need = grams(50);
    return asked;
}

MixAsked thirtyGramsOfEpoxy()
{
    MixAsked asked;
    asked.recipe = "epoxy_neat";
    asked.need = grams(30);
    asked.ratio.hardenerPer100 = 41.3;
    asked.room = Celsius { 25 };
    asked.potLifeMinutes = 25;
    return asked;
}

BatchNoteAsked noted(BatchNoteKind kind, std::optional<double> degrees = {})
{
    BatchNoteAsked asked;
    asked.kind = kind;
    if (degrees)
        asked.temperature = Celsius { *degrees };
    return asked;
}

bool anyWord(const BatchState& state, std::string_view part)
{
    return std::ranges::any_of(
        state.words, [&](const std::string& word) { return word.find(part) != std::string::npos; });
}

} // namespace

/// Mixing, the notes of a pot and of a cup, and undoing, on both engines.
class BatchesTest : public QObject {
    Q_OBJECT

    static std::string granules(Workbench& bench)
    {
        return bench.arrive("Hide glue", "hide_granules_192", "1 kg");
    }
    static std::string mixed(Workbench& bench, const MixAsked& asked, const MixRecording& recording = {})
    {
        const auto done = mixBatch(*bench.shop, asked, recording, on(0));
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
        return findBatch(*bench.shop, done->batches.front().text)->label;
    }
    static void note(Workbench& bench, const std::string& batch, const BatchNoteAsked& asked, int minutes)
    {
        const auto done = noteBatch(*bench.shop, batch, asked, on(minutes));
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
    }
    static BatchState look(Workbench& bench, const std::string& batch, int minutes)
    {
        auto state = batchAsOf(*bench.shop, batch, at(minutes));
        if (!state)
            qFatal("%s", state.error().sentence.c_str());
        return std::move(*state);
    }

private Q_SLOTS:
    // prepared_batches 1.6: 50 g of 192 g grade at 1.8 : 1 is 17.9 g dry and 32.1 g of water; stock falls by
    // the dry weight only.
    void mixBatch_takesTheDryGlueOnly_data() { addEngines(); }
    void mixBatch_takesTheDryGlueOnly()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto bag = granules(bench);
        MixRecording recording;
        recording.place = "Bench";
        recording.who = "A. Tester";
        const auto done = mixBatch(*bench.shop, fiftyGrams(), recording, on(0));
        GW_OK(done);
        QCOMPARE(done->containers.size(), 1U);
        QCOMPARE(bench.left(bag), 982.1);
        QVERIFY(bench.page(bag).item.openedAt);
        const auto batch = findBatch(*bench.shop, done->batches.front().text);
        GW_OK(batch);
        QCOMPARE(batch->parts.size(), 2U);
        QVERIFY(batch->parts.at(0).entry && !batch->parts.at(1).container);
        QCOMPARE(batch->parts.at(1).amount.value(), 32.1);
        QCOMPARE(batch->value("grade").value_or(0), 192.0);
        QVERIFY(std::abs(batch->value("water_ratio").value_or(0) - 1.8) < 1e-9);
        QCOMPARE(batch->who, std::string("A. Tester"));
        // By its label, typed by hand, after the program was closed.
        bench.reopen();
        QString typed = QString::fromStdString(batch->label).toLower();
        const auto found = findBatch(*bench.shop, typed.insert(4, u' ').toStdString());
        GW_OK(found);
        QVERIFY(found->id == batch->id);
        const auto all = batchesAsOf(*bench.shop, at(1));
        GW_OK(all);
        QCOMPARE(all->size(), 1U);
        QCOMPARE(all->front().placeName, std::string("Bench"));
        QCOMPARE(all->front().left.value(), 50.0);
        QVERIFY(all->front().pot.dueFor("soaked"));
        QVERIFY(batchesAsOf(*bench.shop, at(-1))->empty());
        GW_FAILS(batchAsOf(*bench.shop, batch->label, at(-1)), ErrorCode::NotFound);
        GW_FAILS(findBatch(*bench.shop, "GW no such"), ErrorCode::NotFound);
    }

    // prepared_batches 1.6: 3 h at 60 C, chilled, 2 h at 65 C: 3 + 2 x 2.8^0.5 = 6.3 hours at 60 C, green.
    void heatDose_addsUpOverTwoDays_data() { addEngines(); }
    void heatDose_addsUpOverTwoDays()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        granules(bench);
        const auto pot = mixed(bench, fiftyGrams());
        note(bench, pot, noted(BatchNoteKind::Soaked), 60);
        QVERIFY(!look(bench, pot, 61).pot.dueFor("soaked"));
        note(bench, pot, noted(BatchNoteKind::HeatOn, 60), 90);
        QVERIFY(look(bench, pot, 100).pot.heatSince == at(90));
        note(bench, pot, noted(BatchNoteKind::Chilled), 270);
        note(bench, pot, noted(BatchNoteKind::HeatOn, 65), 1530);
        note(bench, pot, noted(BatchNoteKind::HeatOff), 1650);
        bench.reopen();
        const BatchState state = look(bench, pot, 1651);
        QVERIFY(std::abs(*state.pot.doseHours - 6.347) < 0.001);
        QVERIFY(state.pot.band == DoseBand::Early);
        QCOMPARE(state.pot.reheats, 1);
        QVERIFY(std::abs(state.pot.chilledFor.count() - 1260.0 / 1440) < 1e-9);
        QCOMPARE(state.verdict, Verdict::Good);
        // As of the first evening, none of the second day.
        QVERIFY(std::abs(*look(bench, pot, 300).pot.doseHours - 3) < 1e-9);
    }

    // prepared_batches 1.3: never "the joint will fail"; a model only colours a warning.
    void muchHeat_warns_inCarefulWords_data() { addEngines(); }
    void muchHeat_warns_inCarefulWords()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        granules(bench);
        const auto pot = mixed(bench, fiftyGrams());
        note(bench, pot, noted(BatchNoteKind::HeatOn, 80), 60);
        const BatchState state = look(bench, pot, 60 + 4 * 60);
        QVERIFY(state.pot.band == DoseBand::Over); // 4 h x 2.8^2 = 31.4
        QCOMPARE(state.verdict, Verdict::TestFirst);
        QVERIFY(anyWord(state, "sets slower, the jelly is weaker and the tack likely lower"));
        for (const std::string& word : state.words)
            QVERIFY(word.find("fail") == std::string::npos);
    }

    void aTemperatureReadWithinTheHour_speaksForAll_data() { addEngines(); }
    void aTemperatureReadWithinTheHour_speaksForAll()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        granules(bench);
        const auto pot = mixed(bench, fiftyGrams());
        note(bench, pot, noted(BatchNoteKind::HeatOn), 60);
        QCOMPARE(look(bench, pot, 70).verdict, Verdict::NotKnown); // nobody read it: never a pass
        QVERIFY(anyWord(look(bench, pot, 70), "not known"));
        note(bench, pot, noted(BatchNoteKind::HeatRead, 60), 90);
        QVERIFY(std::abs(*look(bench, pot, 180).pot.doseHours - 2) < 1e-9);
        QCOMPARE(look(bench, pot, 180).verdict, Verdict::Good);
        // As of before it was read, it was not known.
        QCOMPARE(look(bench, pot, 80).verdict, Verdict::NotKnown);
        // Read after two hours only: what it was before stays not known.
        note(bench, pot, noted(BatchNoteKind::HeatOff), 200);
        note(bench, pot, noted(BatchNoteKind::HeatOn), 210);
        note(bench, pot, noted(BatchNoteKind::HeatRead, 60), 330);
        QCOMPARE(look(bench, pot, 331).verdict, Verdict::NotKnown);
    }

    // prepared_batches 2.6: 30 g of a 25-min system at 25 C lasts about 36 min in the cup.
    void aCup_hasItsTime_data() { addEngines(); }
    void aCup_hasItsTime()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto resin = bench.arrive("Resin", "epoxy_resin", "500 g");
        const auto hardener = bench.arrive("Hardener", "epoxy_hardener_slow", "250 g");
        const auto cup = mixed(bench, thirtyGramsOfEpoxy());
        QVERIFY(std::abs(bench.left(resin) - 478.8) < 0.06 && std::abs(bench.left(hardener) - 241.2) < 0.06);
        const BatchState fresh = look(bench, cup, 1);
        QCOMPARE(fresh.family, FamilyId { "epoxy_neat" });
        const PotDue* due = fresh.pot.dueFor("cup");
        QVERIFY(due && due->when.low <= at(36) && due->when.high >= at(36));
        QCOMPARE(fresh.verdict, Verdict::Good);
        QCOMPARE(look(bench, cup, 120).verdict, Verdict::DoNotUse);
        GW_FAILS(noteBatch(*bench.shop, cup, noted(BatchNoteKind::HeatOn, 60), on(5)), ErrorCode::BadInput);
        // Without the label's minutes nothing is known of its time.
        MixAsked unsaid = thirtyGramsOfEpoxy();
        unsaid.potLifeMinutes.reset();
        QCOMPARE(look(bench, mixed(bench, unsaid), 1).verdict, Verdict::NotKnown);
    }

    // db/reference/family_figures, hot hide glue: closed for 1 min, in clamps for an hour, full load after a
    // day.
    void aUse_startsTheJointsClocks_alsoWhenThePotIsGone_data() { addEngines(); }
    void aUse_startsTheJointsClocks_alsoWhenThePotIsGone()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        granules(bench);
        MixAsked asked = fiftyGrams();
        asked.room = Celsius { 24 };
        const auto pot = mixed(bench, asked);
        note(bench, pot, noted(BatchNoteKind::HeatOn, 60), 60);
        BatchNoteAsked used = noted(BatchNoteKind::Used);
        used.amount = grams(20);
        note(bench, pot, used, 120);
        note(bench, pot, noted(BatchNoteKind::UsedUp), 130);
        QVERIFY(batchesAsOf(*bench.shop, at(140))->empty());
        const auto all = batchesAsOf(*bench.shop, at(140), Days { 3 });
        GW_OK(all);
        QCOMPARE(all->size(), 1U);
        const auto& joints = all->front().joints;
        QCOMPARE(joints.size(), 1U);
        QVERIFY(joints.front().spread == at(120));
        const auto due = [&](std::string_view key) {
            const auto found = std::ranges::find(joints.front().due, key, &PotDue::key);
            return found == joints.front().due.end() ? Moment {} : found->when.high;
        };
        QVERIFY(due("unclamp") > at(120) && due("full_load") > due("unclamp"));
        QVERIFY(due("open") > at(120) && due("open") < at(130));
    }

    void undo_takesBothBack_byEitherEntry_data() { addEngines(); }
    void undo_takesBothBack_byEitherEntry()
    {
        QFETCH(bool, postgres);
        for (const bool byNote : { false, true }) {
            Workbench bench(postgres);
            const auto bag = granules(bench);
            const auto done = mixBatch(*bench.shop, fiftyGrams(), {}, on(0));
            GW_OK(done);
            const std::string id = done->batches.front().text;
            const EntryId noteId = look(bench, id, 1).notes.back().id;
            BatchNoteAsked used = noted(BatchNoteKind::Used);
            used.amount = grams(20);
            const auto use = noteBatch(*bench.shop, id, used, on(5));
            GW_OK(use);
            // It has been used: first that.
            GW_FAILS(undo(*bench.shop, byNote ? noteId : done->entry, at(6)), ErrorCode::Refused);
            GW_OK(undo(*bench.shop, use->entry, at(7)));
            QCOMPARE(look(bench, id, 8).left.value(), 50.0);
            QCOMPARE(look(bench, id, 6).left.value(), 30.0); // as was thought then
            GW_OK(undo(*bench.shop, byNote ? noteId : done->entry, at(9)));
            QCOMPARE(bench.left(bag), 1000.0);
            QVERIFY(look(bench, id, 10).gone);
            QVERIFY(batchesAsOf(*bench.shop, at(10))->empty());
            QCOMPARE(batchesAsOf(*bench.shop, at(8))->size(), 1U);
            GW_FAILS(undo(*bench.shop, noteId, at(11)), ErrorCode::Refused);
            GW_FAILS(noteBatch(*bench.shop, id, used, on(12)), ErrorCode::Refused);
            const auto report = bench.shop->store().verify();
            GW_OK(report);
            QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        }
    }

    void aClockSetBack_isRefused_data() { addEngines(); }
    void aClockSetBack_isRefused()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        granules(bench);
        const auto pot = mixed(bench, fiftyGrams());
        note(bench, pot, noted(BatchNoteKind::HeatOn, 60), 60);
        const auto back = noteBatch(*bench.shop, pot, noted(BatchNoteKind::HeatOff), on(59));
        GW_FAILS(back, ErrorCode::Refused);
        QVERIFY(back.error().sentence.find("clock") != std::string::npos);
        GW_FAILS(noteBatch(*bench.shop, pot, noted(BatchNoteKind::HeatOff), { at(70), at(65) }),
            ErrorCode::BadInput);
        QCOMPARE(look(bench, pot, 100).notes.size(), 2U);
    }

    void whatCannotBe_isRefused_andNothingWritten_data() { addEngines(); }
    void whatCannotBe_isRefused_andNothingWritten()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto entries = [&] { return bench.shop->store().latestEntries(1000)->size(); };
        // Nothing on the shelf to take it from.
        GW_FAILS(mixBatch(*bench.shop, fiftyGrams(), {}, on(0)), ErrorCode::Refused);
        const auto bag = granules(bench);
        const auto old = bench.arrive("Old hide glue", "hide_granules_192", "100 g");
        GW_OK(retire(*bench.shop, old, "used up", on(0)));
        const auto before = entries();
        MixRecording fromOld;
        fromOld.from["granules"] = old;
        GW_FAILS(mixBatch(*bench.shop, fiftyGrams(), fromOld, on(1)), ErrorCode::Refused);
        MixAsked asked = fiftyGrams();
        asked.need = grams(0.003);
        GW_FAILS(mixBatch(*bench.shop, asked, {}, on(1)), ErrorCode::BadInput);
        asked.need = grams(20'000);
        GW_FAILS(mixBatch(*bench.shop, asked, {}, on(1)), ErrorCode::Refused);
        MixRecording fromBag;
        fromBag.from["granules"] = bag;
        GW_FAILS(mixBatch(*bench.shop, asked, fromBag, on(1)), ErrorCode::Refused); // more than is in it
        fromBag.from["resin"] = bag;
        GW_FAILS(mixBatch(*bench.shop, fiftyGrams(), fromBag, on(1)), ErrorCode::BadInput);
        MixAsked epoxy = thirtyGramsOfEpoxy();
        epoxy.ratio = {};
        epoxy.ratio.resinVolumes = 0;
        epoxy.ratio.hardenerVolumes = 1;
        GW_FAILS(mixBatch(*bench.shop, epoxy, {}, on(1)), ErrorCode::BadInput);
        QCOMPARE(entries(), before);
        QVERIFY(bench.shop->store().batches(at(100), at(-9999))->empty());

        const auto pot = mixed(bench, fiftyGrams());
        const auto asks = [&](BatchNoteAsked wish) { return noteBatch(*bench.shop, pot, wish, on(2)); };
        GW_FAILS(asks(noted(BatchNoteKind::HeatOff)), ErrorCode::Refused);
        GW_FAILS(asks(noted(BatchNoteKind::HeatOn, 140)), ErrorCode::BadInput);
        GW_FAILS(asks(noted(BatchNoteKind::HeatRead)), ErrorCode::BadInput);
        GW_FAILS(asks(noted(BatchNoteKind::Used)), ErrorCode::BadInput);
        GW_FAILS(asks(noted(BatchNoteKind::Weighed)), ErrorCode::BadInput);
        GW_FAILS(asks(noted(BatchNoteKind::Mixed)), ErrorCode::BadInput);
        GW_FAILS(asks(noted(BatchNoteKind::Remark)), ErrorCode::BadInput);
        BatchNoteAsked used = noted(BatchNoteKind::Used);
        used.amount = grams(51);
        GW_FAILS(asks(used), ErrorCode::Refused);
        used.amount = millilitres(5);
        GW_FAILS(asks(used), ErrorCode::BadInput);
        GW_FAILS(noteBatch(*bench.shop, "no such", noted(BatchNoteKind::UsedUp), on(2)), ErrorCode::NotFound);
        QCOMPARE(look(bench, pot, 10).notes.size(), 1U);
        note(bench, pot, noted(BatchNoteKind::ThrownAway), 3);
        QCOMPARE(look(bench, pot, 4).left.milli, 0);
        GW_FAILS(asks(noted(BatchNoteKind::HeatOn, 60)), ErrorCode::Refused);
    }

    // One bag named for two parts, or twice: what this act took already counts.
    void oneAct_takesNoMoreThanThereIs_data() { addEngines(); }
    void oneAct_takesNoMoreThanThereIs()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "100 g");
        GW_FAILS(useForJob(*bench.shop, { { pva, grams(60) }, { pva, grams(60) } },
                     { {}, {}, "Stool", "Stool", {} }, on(1)),
            ErrorCode::Refused);
        QCOMPARE(bench.left(pva), 100.0);
    }

    void holds_areInherited_data() { addEngines(); }
    void holds_areInherited()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto bag = bench.arrive(
            "Hide glue", "hide_granules_192", "1 kg", 0, [](ArrivalDraft& draft) { draft.lot = "H7"; });
        const auto pot = mixed(bench, fiftyGrams());
        note(bench, pot, noted(BatchNoteKind::HeatOn, 60), 5);
        QCOMPARE(look(bench, pot, 10).verdict, Verdict::Good);
        GW_OK(holdLot(*bench.shop, "H7", "smells", on(20)));
        QCOMPARE(look(bench, pot, 21).verdict, Verdict::DoNotUse);
        QVERIFY(anyWord(look(bench, pot, 21), "on hold") && anyWord(look(bench, pot, 21), "smells"));
        QCOMPARE(look(bench, pot, 19).verdict, Verdict::Good);
        MixRecording fromBag;
        fromBag.from["granules"] = bag;
        GW_FAILS(mixBatch(*bench.shop, fiftyGrams(), fromBag, on(22)), ErrorCode::Refused);
        GW_OK(releaseLot(*bench.shop, "H7", on(30)));
        QCOMPARE(look(bench, pot, 31).verdict, Verdict::Good);
        GW_OK(recordTest(*bench.shop, bag, { false, {}, false, "no tack" }, on(40)));
        QCOMPARE(look(bench, pot, 41).verdict, Verdict::TestFirst);
        // The lot's uses: the pot names no piece.
        const auto pieces = piecesWithLot(*bench.shop, "H7", at(50));
        GW_OK(pieces);
        QCOMPARE(pieces->withoutPiece, 1);
    }

    void spoiled_isForGood_data() { addEngines(); }
    void spoiled_isForGood()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        granules(bench);
        const auto pot = mixed(bench, fiftyGrams());
        note(bench, pot, noted(BatchNoteKind::HeatOn, 60), 30);
        note(bench, pot, noted(BatchNoteKind::Spoiled), 40);
        QCOMPARE(look(bench, pot, 41).verdict, Verdict::DoNotUse);
        QVERIFY(look(bench, pot, 41).words.front().find("discard") != std::string::npos);
        QVERIFY(!look(bench, pot, 41).gone);
    }
};

QTEST_GUILESS_MAIN(BatchesTest)
#include "tst_batches.moc"
