#include <QTest>

#include "shop/climate.h"
#include "shop/lifestory.h"
#include "shop/setup.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// What the picture of a container's life is drawn from.
class LifeStoryTest : public QObject {
    Q_OBJECT

private:
    using Kind = LifeMark::Kind;

    static LifeStory story(const Workbench& bench, const std::string& container, double days)
    {
        auto story = lifeStory(*bench.shop, container, Workbench::day(days));
        if (!story)
            qFatal("%s", story.error().sentence.c_str());
        return std::move(*story);
    }
    static std::vector<Kind> kinds(const LifeStory& story)
    {
        std::vector<Kind> kinds;
        for (const LifeMark& mark : story.marks)
            kinds.push_back(mark.kind);
        return kinds;
    }
    static const LifeMark* mark(const LifeStory& story, Kind kind)
    {
        for (const LifeMark& mark : story.marks) {
            if (mark.kind == kind)
                return &mark;
        }
        return nullptr;
    }
    /// The last point that is not in the future.
    static LifePoint now(const LifeTrack& track, Moment asOf)
    {
        LifePoint last = track.points.front();
        for (const LifePoint& point : track.points) {
            if (point.at <= asOf)
                last = point;
        }
        return last;
    }
    static void read(Workbench& bench, const char* place, double from, double to, double temperature)
    {
        const auto where = findPlace(*bench.shop, place);
        GW_OK(where);
        std::vector<Reading> readings;
        for (double day = from; day <= to; day += 1.0 / 24)
            readings.push_back({ Workbench::day(day), Celsius { temperature }, {} });
        GW_OK(bench.shop->store().addReadings(where->id, readings));
    }

private Q_SLOTS:
    void steadyPlace_usesLifeAsTheDaysGoBy()
    {
        Workbench bench(false);
        // At the reference temperature of 20 C a day is a day, by the definition of the rate.
        GW_OK(savePlaceNamed(*bench.shop, "Bench", Range<Celsius> { Celsius { 20 }, Celsius { 20 } }));
        const auto pva = bench.arrive(
            "White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) { d.made = dateIn2026(2, 1); });
        GW_OK(openContainer(*bench.shop, pva, bench.on(10)));
        const auto told = story(bench, pva, 70);
        QCOMPARE(told.tracks.size(), std::size_t { 2 });
        const LifeTrack& opened = told.tracks.front();
        QVERIFY(opened.sinceOpening && opened.missing.empty());
        QCOMPARE(opened.points.front().at, Workbench::day(10));
        QCOMPARE(opened.points.front().used.high, 0.0);
        const double atEnd = now(opened, told.asOf).used.high;
        QVERIFY(atEnd > 0);
        for (const LifePoint& point : opened.points) {
            if (point.at <= told.asOf)
                QVERIFY(
                    std::abs(point.used.high - atEnd * daysBetween(Workbench::day(10), point.at).count() / 60)
                    < 1e-9);
        }
        QCOMPARE(told.from, startOf(dateIn2026(2, 1)));
    }

    void lastPoint_isWhatThePageSays_data() { addEngines(); }
    void lastPoint_isWhatThePageSays()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        GW_OK(openContainer(*bench.shop, pva, bench.on(5)));
        GW_OK(moveTo(*bench.shop, pva, "Lean-to", bench.on(40)));
        const auto told = story(bench, pva, 90);
        const auto judged = bench.page(pva, 90).item.judgement;
        QCOMPARE(now(told.tracks[0], told.asOf).used.low, judged.opened.used.low);
        QCOMPARE(now(told.tracks[0], told.asOf).used.high, judged.opened.used.high);
        QCOMPARE(now(told.tracks[1], told.asOf).used.high, judged.sealed.used.high);
        for (const LifeTrack& track : told.tracks) {
            for (std::size_t i = 1; i < track.points.size(); ++i) {
                QVERIFY(track.points[i - 1].at < track.points[i].at);
                QVERIFY(track.points[i - 1].used.high <= track.points[i].used.high);
                QVERIFY(track.points[i].used.low <= track.points[i].used.high);
            }
        }
    }

    void marks_areWhatHappened_inOrder_withoutWhatWasUndone()
    {
        Workbench bench(false);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        GW_OK(openContainer(*bench.shop, pva, bench.on(5)));
        GW_OK(moveTo(*bench.shop, pva, "Lean-to", bench.on(40)));
        GW_OK(recordTest(*bench.shop, pva, { false, {}, true, "" }, bench.on(60)));
        const auto moved = moveTo(*bench.shop, pva, "Bench", bench.on(70));
        GW_OK(moved);
        GW_OK(undo(*bench.shop, moved->entry, Workbench::day(71)));
        const auto told = story(bench, pva, 90);
        QVERIFY(kinds(told) == std::vector<Kind>({ Kind::Arrived, Kind::Opened, Kind::Moved, Kind::Failed }));
        QCOMPARE(mark(told, Kind::Moved)->text, std::string("Moved to Lean-to"));
        QCOMPARE(told.placeName, std::string("Lean-to"));
    }

    void air_followsTheContainer_andSaysWhoWatched()
    {
        Workbench bench(false);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        read(bench, "Lean-to", 20, 60, 12);
        GW_OK(moveTo(*bench.shop, pva, "Lean-to", bench.on(20)));
        const auto told = story(bench, pva, 60);
        int watched = 0;
        for (std::size_t i = 0; i + 1 < told.air.size(); ++i) {
            const AirStep& step = told.air[i];
            if (step.from < Workbench::day(0)) {
                QVERIFY(!step.air); // before it came nothing is known of its air
                continue;
            }
            if (step.from >= told.asOf)
                break;
            QVERIFY(step.air);
            const bool inLeanTo = step.from >= Workbench::day(20);
            QCOMPARE(step.watched, inLeanTo);
            QCOMPARE(step.air->high.value, inLeanTo ? 12.0 : 22.0);
            watched += step.watched;
        }
        QVERIFY(watched > 50);
        QVERIFY(std::abs(told.watched.count() - 40) < 0.1);
        QVERIFY(std::abs(told.stood.count() - 60) < 0.1);
    }

    void heatAndFrost_areMarked()
    {
        Workbench bench(false);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        read(bench, "Lean-to", 10, 30, 15);
        read(bench, "Lean-to", 30.1, 34, -8);
        read(bench, "Lean-to", 34.1, 50, 15);
        read(bench, "Lean-to", 50.1, 53, 42);
        read(bench, "Lean-to", 53.1, 60, 15);
        GW_OK(moveTo(*bench.shop, pva, "Lean-to", bench.on(10)));
        const auto told = story(bench, pva, 60);
        const LifeMark* froze = mark(told, Kind::Froze);
        QVERIFY(froze && froze->until);
        QVERIFY(froze->at > Workbench::day(30) && *froze->until < Workbench::day(37));
        const LifeMark* hot = mark(told, Kind::TooHot);
        QVERIFY(hot && hot->until);
        QVERIFY(hot->at > Workbench::day(49.5) && *hot->until < Workbench::day(54.5));
        QCOMPARE(hot->text, std::string("Too warm: up to 42 °C"));
    }

    void notKnown_isSaid_notDrawn()
    {
        Workbench bench(false);
        const auto nowhere
            = bench.arrive("White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) { d.place.clear(); });
        const auto told = story(bench, nowhere, 60);
        QVERIFY(!told.tracks.empty());
        QVERIFY(!told.tracks.front().missing.empty());
        for (const AirStep& step : told.air)
            QVERIFY(!step.air && !step.watched);
        QVERIFY(told.place.empty());
    }

    void beforeItCame_isRefused()
    {
        Workbench bench(false);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g", 10);
        QVERIFY(!lifeStory(*bench.shop, pva, Workbench::day(5)));
        QVERIFY(!lifeStory(*bench.shop, "no such label", Workbench::day(20)));
    }
};

QTEST_GUILESS_MAIN(LifeStoryTest)
#include "tst_lifestory.moc"
