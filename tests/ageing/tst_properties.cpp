#include <QTest>

#include <array>
#include <cmath>
#include <random>

#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

namespace {

constexpr int cases = 4000;

/// Made-up stock with everything that can happen to it. Seeded: every run sees the same.
struct Chance {
    std::mt19937 engine;

    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine); }
    double real(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine); }
    bool oneIn(int n) { return whole(1, n) == 1; }

    Life life()
    {
        if (oneIn(12))
            return { oneIn(2) ? Life::Kind::NotKnown : Life::Kind::DoesNotAge, {} };
        const double low = real(40, 500);
        return { Life::Kind::Ages, { Days { low }, Days { low * real(1, 3) } } };
    }

    LifeFigures figures()
    {
        LifeFigures f;
        f.sealed = life();
        f.opened = life();
        f.rate.q10 = whole(1, 3);
        if (oneIn(5))
            f.rate.activationEnergy = real(30, 100);
        f.rate.coldCredit = oneIn(4);
        f.frost = static_cast<Frost>(oneIn(2) ? 0 : whole(0, 2));
        if (oneIn(2))
            f.keepBetween = Range<Celsius> { { 5 }, { real(22, 40) } };
        if (!oneIn(6))
            f.timeInTrade = { Days { 0 }, Days { 100 } };
        return f;
    }

    PlaceId place()
    {
        const std::array places { steady, steady, bench, bench, loft, shed, nowhere };
        return places[static_cast<std::size_t>(oneIn(3) ? whole(0, 6) : whole(0, 3))];
    }

    History history(Moment start)
    {
        History h;
        h.arrived = start;
        if (!oneIn(4))
            h.made = dateOf(after(start, -whole(0, 99)));
        if (oneIn(3))
            h.printed = dateOf(after(start, whole(-200, 700)));
        h.printedIsUseBy = oneIn(3);
        h.foundUndated = oneIn(8);
        if (oneIn(2))
            h.opened = after(start, real(0, 400));
        double day = 0;
        for (int stays = whole(1, 4); stays > 0; --stays, day += real(0, 150))
            h.stays.push_back({ place(), after(start, day) });
        day = real(0, 300);
        for (int tests = oneIn(2) ? 0 : whole(1, 4); tests > 0; --tests, day += real(0, 150))
            h.tests.push_back({ after(start, day), !oneIn(8), {}, oneIn(20) });
        if (oneIn(12))
            h.hold = Hold { after(start, real(0, 500)), "why" };
        if (oneIn(20))
            h.retired = after(start, real(0, 700));
        return h;
    }
};

/// Every place so much warmer at the top and colder at the bottom.
WatchedClimate spread(double down, double up)
{
    std::map<PlaceId, Range<Celsius>> assumed;
    const WatchedClimate known = shopClimate();
    for (const PlaceId& place : { steady, bench, shed, loft }) {
        const auto range = known.usual(place, {});
        assumed.emplace(place, Range<Celsius> { { range->low.value - down }, { range->high.value + up } });
    }
    return assumedClimate(assumed);
}

bool passedBetween(const History& history, Moment from, Moment to)
{
    return std::any_of(history.tests.begin(), history.tests.end(),
        [&](const BenchTest& t) { return t.passed && !t.grainyAfterFrost && t.at > from && t.at <= to; });
}

} // namespace

class TestProperties : public QObject {
    Q_OBJECT

    const WatchedClimate m_climate = shopClimate();
    const Moment m_start = at("2025-01-01T10:00:00Z");

private Q_SLOTS:
    void withoutWords_itIsTheSameAnswer()
    {
        Chance chance { std::mt19937(2) };
        for (int i = 0; i < cases; ++i) {
            const History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment asOf = after(m_start, chance.real(0, 800));
            const Judgement full = judge(history, figures, m_climate, asOf);
            const Judgement bare = judge(history, figures, m_climate, asOf, Wording::None);
            QCOMPARE(bare.verdict, full.verdict);
            QCOMPARE(bare.goodUntil, full.goodUntil);
            QCOMPARE(bare.sealed.used.high, full.sealed.used.high);
            QCOMPARE(bare.opened.used.high, full.opened.used.high);
            QCOMPARE(bare.frostEvents, full.frostEvents);
            QCOMPARE(bare.reasons.size(), full.reasons.size());
            for (std::size_t r = 0; r < full.reasons.size(); ++r) {
                QCOMPARE(bare.reasons[r].code, full.reasons[r].code);
                QCOMPARE(bare.reasons[r].verdict, full.reasons[r].verdict);
                QVERIFY(bare.reasons[r].text.empty());
            }
        }
    }

    void chance_meetsEveryVerdictOften()
    {
        Chance chance { std::mt19937(1) };
        std::array<int, 4> seen {};
        for (int i = 0; i < cases; ++i) {
            const History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Judgement j = judge(history, figures, m_climate, after(m_start, chance.real(0, 800)));
            ++seen[static_cast<std::size_t>(j.verdict)];
            QVERIFY(!j.reasons.empty());
            Verdict worstReason = Verdict::Good;
            for (const Reason& r : j.reasons) {
                worstReason = worst(worstReason, r.verdict);
                QVERIFY2(r.text.size() > 10 && r.text.back() == '.', r.text.c_str());
            }
            QCOMPARE(j.verdict, worstReason);
            QCOMPARE(j.reasons.front().verdict, j.verdict);
            QVERIFY(!j.goodUntil || j.verdict == Verdict::Good);
        }
        for (const int count : seen)
            QVERIFY(count > cases / 25);
    }

    void knowingLess_neverGivesABetterVerdict_data()
    {
        QTest::addColumn<int>("seed");
        QTest::addColumn<bool>("madeDate");
        QTest::addColumn<bool>("allPlaces");
        QTest::addColumn<bool>("onePlace");
        QTest::addColumn<bool>("undated");
        QTest::addColumn<bool>("openSince");
        QTest::addColumn<bool>("wider");
        QTest::newRow("made date") << 2 << true << false << false << false << false << false;
        QTest::newRow("all places") << 3 << false << true << false << false << false << false;
        QTest::newRow("one place") << 4 << false << false << true << false << false << false;
        QTest::newRow("found undated") << 5 << false << false << false << true << false << false;
        QTest::newRow("open since when") << 6 << false << false << false << false << true << false;
        QTest::newRow("wider range") << 7 << false << false << false << false << false << true;
        QTest::newRow("made date, undated") << 8 << true << false << false << true << false << false;
        QTest::newRow("one place, wider, undated") << 9 << false << false << true << true << false << true;
        QTest::newRow("everything") << 10 << true << true << false << true << true << true;
    }
    void knowingLess_neverGivesABetterVerdict()
    {
        QFETCH(int, seed);
        QFETCH(bool, madeDate);
        QFETCH(bool, allPlaces);
        QFETCH(bool, onePlace);
        QFETCH(bool, undated);
        QFETCH(bool, openSince);
        QFETCH(bool, wider);
        Chance chance { std::mt19937(static_cast<unsigned>(seed)) };
        int worse = 0;
        for (int i = 0; i < cases; ++i) {
            const History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment asOf = after(m_start, chance.real(0, 800));
            History less = history;
            if (madeDate)
                less.made.reset();
            if (allPlaces)
                less.stays.clear();
            if (onePlace)
                less.stays[static_cast<std::size_t>(chance.whole(0, static_cast<int>(less.stays.size()) - 1))]
                    .place
                    = nowhere;
            if (undated)
                less.foundUndated = true;
            if (openSince)
                less.foundOpen = true;
            const WatchedClimate climate
                = wider ? spread(chance.real(0, 15), chance.real(0, 15)) : spread(0, 0);
            const Verdict known = judge(history, figures, m_climate, asOf).verdict;
            const Judgement lessKnown = judge(less, figures, climate, asOf);
            // A class without a usual time in the trade bounds no age on arrival: not known is all that can
            // be said.
            const bool unbounded = madeDate && figures.timeInTrade.high == Days { 0 };
            QVERIFY2(lessKnown.verdict >= (unbounded ? std::min(known, Verdict::TestFirst) : known),
                qPrintable(QStringLiteral("case %1: %2 became %3: %4")
                        .arg(i)
                        .arg(QString::fromStdString(words(known)),
                            QString::fromStdString(words(lessKnown.verdict)),
                            QString::fromStdString(lessKnown.reasons.front().text))));
            worse += lessKnown.verdict > known;
        }
        QVERIFY(worse > cases / 200); // it does matter
    }

    void time_neverImprovesAVerdictWithoutANewTest()
    {
        Chance chance { std::mt19937(20) };
        int worse = 0;
        for (int i = 0; i < cases; ++i) {
            const History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment early = after(m_start, chance.real(0, 700));
            const Moment late = after(early, chance.oneIn(2) ? chance.real(0, 3) : chance.real(0, 300));
            if (passedBetween(history, early, late))
                continue;
            const Verdict before = judge(history, figures, m_climate, early).verdict;
            const Verdict now = judge(history, figures, m_climate, late).verdict;
            QVERIFY2(now >= before, judge(history, figures, m_climate, early).reasons.front().text.c_str());
            worse += now > before;
        }
        QVERIFY(worse > cases / 20);
    }

    void goodUntil_isTheLastGoodMoment()
    {
        Chance chance { std::mt19937(30) };
        int ended = 0;
        int endless = 0;
        for (int i = 0; i < cases; ++i) {
            History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment asOf = after(m_start, chance.real(0, 500));
            std::erase_if(history.stays, [&](const Stay& s) { return s.from > asOf; });
            std::erase_if(history.tests, [&](const BenchTest& t) { return t.at > asOf; });
            if (history.opened > asOf)
                history.opened.reset();
            history.hold.reset();
            history.retired.reset();
            const Judgement j = judge(history, figures, m_climate, asOf);
            if (j.verdict != Verdict::Good)
                continue;
            using namespace std::chrono_literals;
            if (j.goodUntil) {
                QVERIFY(*j.goodUntil >= asOf);
                const Judgement last = judge(history, figures, m_climate, std::max(asOf, *j.goodUntil - 1s));
                QVERIFY2(last.verdict == Verdict::Good,
                    (j.reasons.front().text + last.reasons.front().text).c_str());
                QVERIFY(judge(history, figures, m_climate, *j.goodUntil + 1s).verdict != Verdict::Good);
                ++ended;
            } else {
                QCOMPARE(judge(history, figures, m_climate, after(asOf, 30000)).verdict, Verdict::Good);
                ++endless;
            }
        }
        QVERIFY(ended > cases / 20);
        QVERIFY(endless > 10);
    }

    void hotter_neverLastsLonger()
    {
        Chance chance { std::mt19937(40) };
        int shorter = 0;
        for (int i = 0; i < cases; ++i) {
            const History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment asOf = after(m_start, chance.real(0, 500));
            const WatchedClimate hot = spread(0, chance.real(0, 12));
            const Judgement cool = judge(history, figures, m_climate, asOf);
            const Judgement warm = judge(history, figures, hot, asOf);
            QVERIFY(warm.verdict >= cool.verdict);
            QVERIFY(warm.sealed.used.high >= cool.sealed.used.high
                && warm.opened.used.high >= cool.opened.used.high);
            if (warm.goodUntil && cool.goodUntil) {
                QVERIFY(*warm.goodUntil <= *cool.goodUntil);
                shorter += *warm.goodUntil < *cool.goodUntil;
            }
            QVERIFY(!cool.goodUntil || warm.goodUntil || warm.verdict != Verdict::Good);
        }
        QVERIFY(shorter > cases / 40);
    }

    void splittingAStay_changesNothing()
    {
        Chance chance { std::mt19937(50) };
        for (int i = 0; i < cases; ++i) {
            const History history = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment asOf = after(m_start, chance.real(0, 800));
            History split = history;
            const auto part
                = static_cast<std::size_t>(chance.whole(0, static_cast<int>(split.stays.size()) - 1));
            const Moment begin = split.stays[part].from;
            const Moment end
                = part + 1 < split.stays.size() ? split.stays[part + 1].from : std::max(begin, asOf);
            split.stays.insert(split.stays.begin() + static_cast<std::ptrdiff_t>(part) + 1,
                { split.stays[part].place, begin + std::chrono::milliseconds((end - begin).count() / 3) });
            const Judgement one = judge(history, figures, m_climate, asOf);
            const Judgement two = judge(split, figures, m_climate, asOf);
            QCOMPARE(two.verdict, one.verdict);
            QVERIFY(std::abs(two.sealed.used.high - one.sealed.used.high) < 1e-9);
            QVERIFY(std::abs(two.opened.used.low - one.opened.used.low) < 1e-9);
            QCOMPARE(two.goodUntil.has_value(), one.goodUntil.has_value());
            if (one.goodUntil)
                QVERIFY(std::abs(daysBetween(*one.goodUntil, *two.goodUntil).count()) < 1e-6);
        }
    }

    void decanted_isNeverBetterThanItsParent()
    {
        Chance chance { std::mt19937(60) };
        for (int i = 0; i < cases; ++i) {
            const History parent = chance.history(m_start);
            const LifeFigures figures = chance.figures();
            const Moment poured = after(m_start, chance.real(0, 500));
            History child = parent; // dates, tests, stays and holds are carried over
            child.opened = parent.opened && *parent.opened < poured ? *parent.opened : poured;
            if (chance.oneIn(2))
                child.arrived = poured; // even if its own booking-in were taken for its arrival
            const Moment asOf = after(poured, chance.real(0, 300));
            QVERIFY(judge(child, figures, m_climate, asOf).verdict
                >= judge(parent, figures, m_climate, asOf).verdict);
        }
    }
};

QTEST_APPLESS_MAIN(TestProperties)
#include "tst_properties.moc"
