#include <QFile>
#include <QTest>

#include "shop/climate.h"
#include "shop/readingsimport.h"
#include "shop/setup.h"
#include "shop/tonight.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

namespace {

/// The tests' day 0 is 1 March 2026; a logger's file of readings every so many minutes from its noon on.
QByteArray loggerFile(int count, int minutes, const std::function<double(int)>& degrees, double fromDay = 0)
{
    QByteArray file = "Time (UTC),Temperature (°C),Humidity (%)\n";
    for (int i = 0; i < count; ++i) {
        const Moment at = Workbench::day(fromDay) + std::chrono::minutes { i * minutes };
        QByteArray moment = QByteArray::fromStdString(formatMoment(at));
        file += moment.chopped(1).replace('T', ' ') + ',' + QByteArray::number(degrees(i), 'f', 2) + ",45\n";
    }
    return file;
}

double daily(int i) { return 12 + 8 * std::sin(i * 3.14159265358979 / 72); }

std::string written(const Workbench& bench, const QByteArray& bytes, const char* name = "logger.csv")
{
    const std::string path = bench.place.file(QString::fromUtf8(name));
    QFile file(QString::fromStdString(path));
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size())
        qFatal("cannot write %s", path.c_str());
    return path;
}

Result<ReadingsImport> import(Workbench& bench, const QByteArray& bytes, const char* place = "Lean-to",
    const ReadingsProgress& progress = {})
{
    return importReadings(*bench.shop, place, written(bench, bytes), {}, Workbench::day(300), progress);
}

std::int64_t readingsIn(const Shop& shop, const char* place)
{
    const auto shown = climateShown(shop, place, Workbench::day(300));
    if (!shown)
        qFatal("%s", shown.error().sentence.c_str());
    return shown->readings;
}

} // namespace

/// A place's temperature, from the logger's file to the answer, on both engines.
class ClimateTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void import_keepsEveryReadingOnce_data() { addEngines(); }
    void import_keepsEveryReadingOnce()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto first = import(bench, loggerFile(500, 10, daily), "  lean-TO ");
        GW_OK(first);
        QCOMPARE(first->place.name, "Lean-to");
        QCOMPARE(first->rows, 500);
        QCOMPARE(first->added, 500);
        QCOMPARE(first->setAside, 0);
        QCOMPARE(first->from, std::optional(Workbench::day(0)));
        QVERIFY2(first->layout.find("\"Temperature (°C)\"") != std::string::npos, first->layout.c_str());

        // The same file again, and the next download of the logger, which repeats the end of it.
        const auto again = import(bench, loggerFile(500, 10, daily));
        GW_OK(again);
        QCOMPARE(again->added, 0);
        QCOMPARE(again->alreadyThere, 500);
        const auto next = import(bench, loggerFile(520, 10, daily));
        GW_OK(next);
        QCOMPARE(next->added, 20);
        QCOMPARE(next->alreadyThere, 500);
        const auto other = import(bench, loggerFile(3, 10, [](int) { return 1.5; }));
        GW_OK(other);
        QCOMPARE(other->added, 0);
        QCOMPARE(other->different, 3);
        QVERIFY(other->said.find("3 were left out") != std::string::npos);
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 520);
        QCOMPARE(readingsIn(*bench.shop, "Bench"), 0);
    }

    void import_thatCannotBe_leavesNothing_data() { addEngines(); }
    void import_thatCannotBe_leavesNothing()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        // The first half is fine; then the logger wrote nothing but words.
        QByteArray broken = loggerFile(3000, 10, daily);
        for (int i = 0; i < 4000; ++i)
            broken += "2026-05-01 00:00:00,sensor lost,\n";
        GW_FAILS(import(bench, broken), ErrorCode::BadInput);
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 0);

        const auto nowhere = import(bench, loggerFile(10, 10, daily), "Attic");
        GW_FAILS(nowhere, ErrorCode::NotFound);
        QVERIFY(nowhere.error().sentence.find("Bench, Lean-to") != std::string::npos);
        GW_FAILS(importReadings(*bench.shop, "Bench", bench.place.file(QStringLiteral("none.csv")), {},
                     Workbench::day(300)),
            ErrorCode::FileUnreadable);

        // Day or month first? The file does not tell, so it is asked.
        const auto doubtful = import(
            bench, "Date,Temperature °C\n03/04/2026 10:00,12.5\n04/05/2026 10:00,13\n05/06/2026 10:00,14\n");
        GW_FAILS(doubtful, ErrorCode::BadInput);
        QVERIFY2(doubtful.error().sentence.find("--date-order") != std::string::npos,
            doubtful.error().sentence.c_str());
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 0);
    }

    void import_thatIsStopped_leavesNothing_data() { addEngines(); }
    void import_thatIsStopped_leavesNothing()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const QByteArray file = loggerFile(60'000, 10, daily, -400);
        int asked = 0;
        const auto stopped = import(bench, file, "Lean-to", [&](std::int64_t done, std::int64_t total) {
            ++asked;
            return done * 2 < total;
        });
        GW_OK(stopped);
        QVERIFY(stopped->cancelled);
        QVERIFY(asked > 1);
        QCOMPARE(stopped->added, 0);
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 0);
        const auto whole = import(bench, file);
        GW_OK(whole);
        QCOMPARE(whole->added, 60'000);
    }

    void lowAndHighOfADay_areTyped_data() { addEngines(); }
    void lowAndHighOfADay_areTyped()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        GW_OK(bench.shop->store().setSetting("shop_zone", "UTC"));
        const auto type = [&](int day, double low, double high) {
            return typeLowHigh(*bench.shop, "Lean-to", dateOf(Workbench::day(day)), Celsius { low },
                Celsius { high }, Workbench::day(20));
        };
        const auto first = type(3, -4.5, 6);
        GW_OK(first);
        QCOMPARE(first->readings.added, 2);
        const auto again = type(3, -4.5, 6);
        GW_OK(again);
        QCOMPARE(again->readings.alreadyThere, 2);
        GW_FAILS(type(3, -4.5, 7), ErrorCode::Conflict);
        GW_FAILS(type(4, 7, 6), ErrorCode::BadInput);
        GW_FAILS(type(4, 7, 600), ErrorCode::BadInput);
        GW_FAILS(type(21, 2, 6), ErrorCode::BadInput);
        GW_FAILS(typeLowHigh(*bench.shop, "Attic", dateOf(Workbench::day(3)), Celsius { 1 }, Celsius { 2 },
                     Workbench::day(20)),
            ErrorCode::NotFound);
        const auto shown = climateShown(*bench.shop, "Lean-to", Workbench::day(20));
        GW_OK(shown);
        QCOMPARE(shown->readings, 2);
        QCOMPARE(shown->low, std::optional(Celsius { -4.5 }));
        QCOMPARE(shown->high, std::optional(Celsius { 6 }));
        QCOMPARE(formatMoment(*shown->first), "2026-03-04T05:00:00Z");
        QCOMPARE(formatMoment(*shown->last), "2026-03-04T15:00:00Z");

        // Today's high is still to come: what was seen so far is read off now.
        const auto early = typeLowHigh(*bench.shop, "Bench", dateOf(Workbench::day(20)), Celsius { 15 },
            Celsius { 18 }, Workbench::day(20));
        GW_OK(early);
        const auto bench20 = climateShown(*bench.shop, "Bench", Workbench::day(20));
        GW_OK(bench20);
        QCOMPARE(bench20->last, std::optional(Workbench::day(20)));
    }

    void climateShown_saysWhatWasWatched_data() { addEngines(); }
    void climateShown_saysWhatWasWatched()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive(
            "White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& draft) { draft.place = "Lean-to"; });
        bench.arrive("Wax", "paste_wax", "400 g");
        // Two days, a day's gap, a day with a frost in it: 3 h below 0 between two even slopes.
        GW_OK(import(bench, loggerFile(289, 10, [](int) { return 10.0; })));
        GW_OK(import(bench,
            loggerFile(
                145, 10, [](int i) { return i < 60 ? 10 - i * 0.2
                                         : i < 78  ? -2.0
                                                   : -2 + (i - 78) * 0.2; },
                3)));
        const auto shown = climateShown(*bench.shop, "Lean-to", Workbench::day(6));
        GW_OK(shown);
        QCOMPARE(shown->readings, 289 + 145);
        QCOMPARE(shown->from, Workbench::day(0));
        QCOMPARE(shown->to, Workbench::day(6));
        QCOMPARE(shown->last, std::optional(Workbench::day(4)));
        QVERIFY(qAbs(shown->unwatched.count() - 1) < 1e-6);
        QCOMPARE(shown->frost.freezes, 1);
        QCOMPARE(shown->frost.thaws, 1);
        // Below -1: 50 min down, 3 h at -2, 50 min up.
        QVERIFY2(qAbs(shown->frost.below.count() * 24 - (3.0 + 100.0 / 60)) < 0.18,
            qPrintable(QString::number(shown->frost.below.count() * 24)));
        QCOMPARE(shown->low, std::optional(Celsius { -2 }));
        QVERIFY(shown->kinetic && *shown->kinetic > *shown->mean);
        QCOMPARE(shown->stands.size(), 1U);
        QCOMPARE(shown->stands.front().materialName, "White PVA");
        QVERIFY(shown->stands.front().keepBetween);

        QVERIFY(shown->trace.size() <= 400 && shown->trace.size() > 100);
        QCOMPARE(shown->trace.front().from, shown->from);
        const auto lowest = std::ranges::min_element(
            shown->trace, {}, [](const TraceStep& step) { return step.watched ? step.air->low.value : 99; });
        QCOMPARE(lowest->air->low, Celsius { -2 });
        // In the gap and after the last reading the assumed range stands in.
        for (const TraceStep& step : shown->trace) {
            const double day = daysBetween(Workbench::day(0), step.from).count();
            if ((day > 2.1 && day < 2.9) || day > 4.1)
                QVERIFY(!step.watched && step.air && step.air->low <= Celsius { -2 });
            else if (day < 1.9)
                QVERIFY(step.watched && step.air->low == Celsius { 10 });
        }

        const auto never = climateShown(*bench.shop, "Bench", Workbench::day(6));
        GW_OK(never);
        QVERIFY(never->readings == 0 && !never->first && !never->low && !never->kinetic && !never->newest);
        QVERIFY(!never->trace.front().watched && never->trace.front().air->high == Celsius { 22 });
        GW_FAILS(climateShown(*bench.shop, "Attic", Workbench::day(6)), ErrorCode::NotFound);
    }

    void readingsOfAnotherTablet_areSeen_data() { addEngines(); }
    void readingsOfAnotherTablet_areSeen()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        GW_OK(import(bench, loggerFile(200, 10, daily)));
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 200);
        OpenOptions options;
        options.now = Workbench::day(0);
        auto other = Shop::open(bench.place.location(), options);
        GW_OK(other);
        const auto byOther = [&](const QByteArray& file) {
            return importReadings(**other, "Lean-to", written(bench, file), {}, Workbench::day(300));
        };
        const auto same = [&] {
            const auto here = climateShown(*bench.shop, "Lean-to", Workbench::day(300));
            OpenOptions fresh;
            fresh.now = Workbench::day(0);
            const auto anew = Shop::open(bench.place.location(), fresh);
            if (!here || !anew)
                return false;
            const auto there = climateShown(**anew, "Lean-to", Workbench::day(300));
            return there && here->readings == there->readings && here->first == there->first
                && here->low == there->low && here->unwatched == there->unwatched
                && std::abs(here->kinetic->value - there->kinetic->value) < 1e-9;
        };
        // At the end, in the same month and in later ones; in between; before.
        GW_OK(byOther(loggerFile(260, 10, daily)));
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 260);
        QVERIFY(same());
        GW_OK(byOther(loggerFile(800, 60, daily, 40)));
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 1060);
        QVERIFY(same());
        GW_OK(byOther(loggerFile(7, 10, [](int) { return -11; }, 10)));
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 1067);
        QVERIFY(same());
        GW_OK(byOther(loggerFile(7, 10, [](int) { return 21; }, -100)));
        QCOMPARE(readingsIn(*bench.shop, "Lean-to"), 1074);
        QVERIFY(same());
    }

    void whatWasReadLater_saysNothingOfAMomentBefore_data() { addEngines(); }
    void whatWasReadLater_saysNothingOfAMomentBefore()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string glue = bench.arrive(
            "White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& draft) { draft.place = "Bench"; });
        GW_OK(import(bench, loggerFile(2 * 144, 10, [](int) { return 20.0; }), "Bench"));
        const Judgement before = bench.page(glue, 5).item.judgement;
        // Days without readings end in a frost that nobody could know of on day 5.
        GW_OK(import(bench, loggerFile(2 * 144, 10, [](int) { return -20.0; }, 10), "Bench"));
        const Judgement after = bench.page(glue, 5).item.judgement;
        QCOMPARE(after.verdict, before.verdict);
        QCOMPARE(after.reasons.size(), before.reasons.size());
        for (std::size_t i = 0; i < after.reasons.size(); ++i)
            QCOMPARE(after.reasons[i].text, before.reasons[i].text);
        QVERIFY(after.goodUntil == before.goodUntil);
        QVERIFY(bench.verdict(glue, 12) != before.verdict);
    }

    void tonight_namesWhatMustComeIn_data() { addEngines(); }
    void tonight_namesWhatMustComeIn()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto leanTo = [](ArrivalDraft& draft) { draft.place = "Lean-to"; };
        const std::string pva = bench.arrive("White PVA", "pva_white", "500 g", 0, leanTo);
        const std::string small = bench.arrive("White PVA", "pva_white", "100 g", 0, leanTo);
        bench.arrive("Hide glue", "hide_granules_192", "1 kg", 0, leanTo);
        const std::string inside = bench.arrive("White PVA", "pva_white", "500 g");
        const auto cold = tonight(*bench.shop, "lean-to", Celsius { -8 }, Workbench::day(1));
        GW_OK(cold);
        QCOMPARE(cold->places.size(), 1U);
        const auto& containers = cold->places.front().containers;
        QCOMPARE(containers.size(), 2U);
        // The smaller one is cold through first.
        QCOMPARE(containers[0].label, small);
        QCOMPARE(containers[1].label, pva);
        QVERIFY(containers[0].risk.harm == ColdHarm::Spoils);
        QVERIFY(*containers[0].risk.hoursToEvent <= *containers[1].risk.hoursToEvent);
        QVERIFY2(containers[1].text.find("bring it in") != std::string::npos, containers[1].text.c_str());

        const auto everywhere = tonight(*bench.shop, "", Celsius { -8 }, Workbench::day(1));
        GW_OK(everywhere);
        QCOMPARE(everywhere->places.size(), 2U);
        const auto mild = tonight(*bench.shop, "", Celsius { 12 }, Workbench::day(1));
        GW_OK(mild);
        QVERIFY(mild->places.empty());
        GW_FAILS(tonight(*bench.shop, "Attic", Celsius { -8 }, Workbench::day(1)), ErrorCode::NotFound);
        GW_FAILS(tonight(*bench.shop, "Lean-to", Celsius { -300 }, Workbench::day(1)), ErrorCode::BadInput);
    }

    void tonight_countsTheFrostsBefore_data() { addEngines(); }
    void tonight_countsTheFrostsBefore()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string pva = bench.arrive(
            "White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& draft) { draft.place = "Lean-to"; });
        auto materials = bench.shop->store().materials();
        GW_OK(materials);
        Figure tolerance;
        tolerance.figure = "freeze_tolerance";
        tolerance.value = 1;
        tolerance.source = "label";
        materials->front().labelFigures.push_back(tolerance);
        GW_OK(bench.shop->store().saveMaterial(materials->front()));
        const auto harm = [&](double day) {
            const auto cold = tonight(*bench.shop, "Lean-to", Celsius { -8 }, Workbench::day(day));
            return cold && !cold->places.empty() ? cold->places.front().containers.front().risk.harm
                                                 : ColdHarm::None;
        };
        // A mild day, then one of hard frost and one of thaw: the label vouches for one frost only.
        GW_OK(import(bench, loggerFile(577, 10, [](int i) { return i < 144 || i > 288 ? 12.0 : -12.0; })));
        QVERIFY(harm(0.9) == ColdHarm::ComesBack);
        QVERIFY(harm(3.9) == ColdHarm::Spoils);
        // A month on nobody knows how often it froze since.
        GW_OK(import(bench, loggerFile(10, 10, [](int) { return 12.0; }, 40)));
        QVERIFY(harm(40) == ColdHarm::Spoils);
    }

    void expectedLow_isSaidTodayForADay_data() { addEngines(); }
    void expectedLow_isSaidTodayForADay()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string pva = bench.arrive(
            "White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& draft) { draft.place = "Lean-to"; });
        const auto toBringIn = [&](double day) {
            const auto now = today(*bench.shop, Workbench::day(day));
            if (!now)
                qFatal("%s", now.error().sentence.c_str());
            return std::ranges::count_if(now->items, [&](const TodayItem& item) {
                return item.kind == TodayItem::Kind::BringIn && item.label == pva;
            });
        };
        QCOMPARE(toBringIn(2), 0);
        GW_OK(expectLow(*bench.shop, "Lean-to", Celsius { -6.5 }, Workbench::day(2)));
        const auto places = bench.shop->store().places();
        GW_OK(places);
        const auto low = expectedLow(*bench.shop, places->back().id, Workbench::day(2.5));
        GW_OK(low);
        QCOMPARE(*low, std::optional(Celsius { -6.5 }));
        QCOMPARE(toBringIn(2.5), 1);
        QCOMPARE(toBringIn(3.5), 0);
        QCOMPARE(toBringIn(1), 0);
        GW_OK(expectLow(*bench.shop, "Lean-to", {}, Workbench::day(2.1)));
        QCOMPARE(toBringIn(2.5), 0);
        GW_FAILS(expectLow(*bench.shop, "Lean-to", Celsius { 99 }, Workbench::day(2)), ErrorCode::BadInput);

        // Nobody said anything, but last night it froze there.
        GW_OK(import(bench, loggerFile(73, 10, [](int i) { return 2 - i * 0.05; }, 4)));
        QCOMPARE(toBringIn(4.6), 1);
    }

    void placesThatFollowEachOther_cannotGoInCircles_data() { addEngines(); }
    void placesThatFollowEachOther_cannotGoInCircles()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        PlaceChange follows;
        follows.follows = "Lean-to";
        follows.warmer = 3;
        follows.damped = 0.5;
        const auto porch = savePlaceNamed(*bench.shop, "Porch", follows);
        GW_OK(porch);
        QVERIFY(porch->follows && porch->follows->warmer == 3);
        const auto places = bench.shop->store().places();
        GW_OK(places);
        const PlaceId leanTo = places->at(1).id;
        GW_FAILS(
            savePlaceClimate(*bench.shop, "Lean-to", {}, Follow { porch->id, 0, 0 }), ErrorCode::BadInput);
        GW_FAILS(savePlaceClimate(*bench.shop, "Lean-to", {}, Follow { leanTo, 0, 0 }), ErrorCode::BadInput);
        GW_FAILS(
            savePlaceClimate(*bench.shop, "Bench", {}, Follow { { "gone" }, 0, 0 }), ErrorCode::NotFound);
        GW_FAILS(savePlaceClimate(*bench.shop, "Bench", {}, Follow { leanTo, 90, 0 }), ErrorCode::BadInput);
        GW_FAILS(savePlaceClimate(*bench.shop, "Bench", {}, Follow { leanTo, 0, 2 }), ErrorCode::BadInput);
        AssumedRanges upsideDown;
        upsideDown.quarters[3] = Range<Celsius> { Celsius { 9 }, Celsius { 3 } };
        GW_FAILS(savePlaceClimate(*bench.shop, "Bench", upsideDown, {}), ErrorCode::BadInput);
        const auto kept = climateShown(*bench.shop, "Bench", Workbench::day(1));
        GW_OK(kept);
        QVERIFY(kept->place.assumed.year && !kept->place.follows);

        // Readings of the one tell of the other.
        GW_OK(import(bench, loggerFile(289, 10, [](int) { return 4.0; })));
        const auto shown = climateShown(*bench.shop, "Porch", Workbench::day(2), Workbench::day(0.5));
        GW_OK(shown);
        QCOMPARE(shown->followsName, "Lean-to");
        QVERIFY(shown->trace.at(100).air && !shown->trace.at(100).watched);
        QVERIFY(std::abs(shown->trace.at(100).air->low.value - 5) < 0.01);
        QVERIFY(std::abs(shown->trace.at(100).air->high.value - 9) < 0.01);
    }
};

QTEST_GUILESS_MAIN(ClimateTest)
#include "tst_climate.moc"
