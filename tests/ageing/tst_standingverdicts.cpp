#include <algorithm>
#include <array>
#include <random>

#include <QtTest>

#include "ageing/standingverdicts.h"
#include "ageing/stock.h"
#include "ageing/traces.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

const std::array placeIds { PlaceId { "shop" }, PlaceId { "store" }, PlaceId { "shed" }, PlaceId { "loft" },
    PlaceId { "lean-to" }, PlaceId { "cellar" }, PlaceId { "no such place" }, PlaceId {} };
const Moment start = at("2024-01-01T00:00:00Z");

/// A shop whose acts and readings come at random; what is asked of it is asked of a fresh judge besides.
class RandomShop {
public:
    explicit RandomShop(unsigned seed)
        : m_chance(seed)
        , m_weather { std::mt19937(seed + 1) }
    {
        now = later(start, Days { real(20, 150) });
        std::map<PlaceId, WatchedPlace> places;
        for (std::size_t i = 0; i < 6; ++i) {
            WatchedPlace& place = places[placeIds[i]];
            if (i < 4 && !oneIn(5)) {
                place.readings = Trace(m_weather.readings(
                    later(start, Days { real(0, 15) }), oneIn(4) ? real(5, 20) : real(20, 160)));
                cut(place.readings);
            }
            if (!oneIn(3)) {
                const double low = real(-6, 15);
                place.assumed.year = Range<Celsius> { { low }, { low + real(2, 25) } };
            }
            if (oneIn(4))
                place.assumed.quarters[static_cast<std::size_t>(whole(0, 3))]
                    = Range<Celsius> { { real(-8, 3) }, { real(4, 30) } };
        }
        places[placeIds[4]].follows = Follow { placeIds[0], real(-3, 3), real(0, 1) };
        if (oneIn(2))
            places[placeIds[1]].follows = Follow { placeIds[0], real(-3, 3), 0.2 };
        const std::vector<Rate> rates { { { 20 }, 2.0, {}, false }, { { 20 }, 3.0, {}, true },
            { { 18 }, 1.0, 80.0, false } };
        climate.emplace(std::move(places), rates);
        for (int i = 0; i < 4; ++i)
            m_figures.push_back(std::make_shared<LifeFigures>(figures(rates)));
        for (int i = 0; i < 60; ++i)
            containers.push_back({ history(), anyFigures() });
    }

    double real(double low, double high)
    {
        return std::uniform_real_distribution<double>(low, high)(m_chance);
    }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(m_chance); }
    bool oneIn(int n) { return whole(1, n) == 1; }

    struct Stock {
        History history;
        std::shared_ptr<const LifeFigures> figures;
    };
    std::optional<WatchedClimate> climate;
    std::vector<Stock> containers;
    Moment now;

    void somethingHappens(StandingVerdicts& kept)
    {
        switch (whole(0, 7)) {
        case 0:
        case 1:
            now = later(now, Days { oneIn(3) ? real(0, 40) : real(0, 0.5) });
            break;
        case 2:
        case 3:
        case 4:
            readings();
            break;
        case 5:
        case 6: {
            const auto which = static_cast<std::size_t>(whole(0, static_cast<int>(containers.size()) - 1));
            act(containers[which]);
            kept.put(which, containers[which].history, containers[which].figures);
            break;
        }
        default:
            if (oneIn(6))
                now = later(now, Days { -real(0, 20) });
            else
                containers.push_back({ history(), anyFigures() });
            if (containers.size() > kept.size())
                kept.put(kept.size(), containers.back().history, containers.back().figures);
            break;
        }
    }

private:
    /// Nothing of what is to come.
    void cut(Trace& trace) const
    {
        Trace known;
        for (std::size_t i = 0; i < trace.size() && trace.at(i) <= now; ++i)
            known.append(trace.reading(i));
        trace = std::move(known);
    }

    std::shared_ptr<const LifeFigures> anyFigures()
    {
        return m_figures[static_cast<std::size_t>(whole(0, static_cast<int>(m_figures.size()) - 1))];
    }

    LifeFigures figures(const std::vector<Rate>& rates)
    {
        LifeFigures f;
        const auto life = [this] {
            const double low = real(20, 200);
            return oneIn(8) ? Life {}
                            : Life { Life::Kind::Ages, { Days { low }, Days { low * real(1, 2) } } };
        };
        f.sealed = life();
        f.opened = life();
        f.rate = oneIn(6) ? Rate {} : rates[static_cast<std::size_t>(whole(0, 2))];
        f.frost = static_cast<Frost>(whole(0, 2));
        if (f.frost != Frost::Never && oneIn(3))
            f.crystallisesBetween = Range<Celsius> { { 0 }, { real(3, 12) } };
        f.freezesAt = Celsius { oneIn(2) ? 0 : real(-3, 2) };
        if (oneIn(2))
            f.freezeTolerance = whole(0, 4);
        if (!oneIn(3))
            f.keepBetween = Range<Celsius> { { real(2, 8) }, { real(10, 30) } };
        f.waterShare = 0.5;
        if (!oneIn(4))
            f.timeInTrade = { Days { 0 }, Days { 60 } };
        return f;
    }

    PlaceId anyPlace() { return placeIds[static_cast<std::size_t>(oneIn(4) ? whole(0, 7) : whole(0, 4))]; }

    History history()
    {
        History h;
        h.arrived = later(start, Days { real(0, daysBetween(start, now).count()) });
        if (!oneIn(4))
            h.made = dateOf(later(h.arrived, Days { -real(0, 60) }));
        if (oneIn(3))
            h.printed = dateOf(later(now, Days { real(-60, 90) }));
        h.printedIsUseBy = oneIn(3);
        h.foundUndated = oneIn(8);
        h.foundOpen = oneIn(12);
        h.stays.push_back({ anyPlace(), h.arrived });
        h.fillings.push_back({ h.arrived, 1, amountOf(whole(50, 1000), Dimension::Volume), {} });
        for (int acts = whole(0, 4); acts > 0; --acts)
            act(h, later(h.arrived, Days { real(0, daysBetween(h.arrived, now).count()) }));
        return h;
    }

    void act(Stock& stock)
    {
        if (oneIn(10)) // an act undone, a figure of the label put right
            stock = { history(), anyFigures() };
        else
            act(stock.history, oneIn(4) ? later(now, Days { -real(0, 3) }) : now);
    }

    void act(History& h, Moment at)
    {
        const auto byTime = [](const auto& a, const auto& b) { return a.from < b.from; };
        switch (whole(0, 6)) {
        case 0:
            h.opened = h.opened ? std::min(*h.opened, at) : at;
            break;
        case 1:
        case 2:
            h.stays.push_back({ anyPlace(), std::max(at, h.arrived) });
            std::stable_sort(h.stays.begin(), h.stays.end(), byTime);
            break;
        case 3:
            h.tests.push_back({ at, !oneIn(5), {}, oneIn(12) });
            std::stable_sort(h.tests.begin(), h.tests.end(),
                [](const BenchTest& a, const BenchTest& b) { return a.at < b.at; });
            break;
        case 4:
            h.fillings.push_back({ at, real(0.1, 1), h.fillings.front().capacity, {} });
            std::stable_sort(h.fillings.begin(), h.fillings.end(), byTime);
            break;
        case 5:
            if (oneIn(4))
                h.hold = Hold { at, "why" };
            else
                h.hold.reset();
            break;
        default:
            if (oneIn(8))
                h.retired = at;
            break;
        }
    }

    /// A reading or some days of them, at the end of what there is.
    void readings()
    {
        const PlaceId place = placeIds[static_cast<std::size_t>(whole(0, 3))];
        const WatchedTrace& own = *climate->readings(place);
        Moment from = own.empty() || oneIn(5) ? now : own.trace().at(own.trace().size() - 1) + 10min;
        if (from > now)
            now = from;
        const double mean = real(-4, 30);
        int count = oneIn(3) ? whole(2, 400) : 1;
        for (; count > 0 && from <= now; --count, from += 10min) {
            const double last = own.empty() ? mean : own.trace().temperature(own.trace().size() - 1).value;
            climate->append(place, { from, { oneIn(6) ? mean : last + real(-0.5, 0.5) }, {} });
        }
    }

    std::mt19937 m_chance;
    Weathermaker m_weather;
    std::vector<std::shared_ptr<const LifeFigures>> m_figures;
};

} // namespace

class TestStandingVerdicts : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void whateverHappens_answersAsAFreshJudge()
    {
        std::size_t asked = 0;
        std::size_t judged = 0;
        std::size_t changes = 0;
        std::array<int, 4> seen {};
        for (unsigned seed = 0; seed < 60; ++seed) {
            RandomShop shop(seed);
            StandingVerdicts kept;
            for (std::size_t i = 0; i < shop.containers.size(); ++i)
                kept.put(i, shop.containers[i].history, shop.containers[i].figures);
            std::vector<Verdict> before;
            for (int step = 0; step < 60; ++step) {
                const auto verdicts = kept.asOf(*shop.climate, shop.now);
                QCOMPARE(verdicts.size(), shop.containers.size());
                for (std::size_t i = 0; i < verdicts.size(); ++i) {
                    const auto& [history, figures] = shop.containers[i];
                    const Verdict fresh = judge(history, *figures, *shop.climate, shop.now).verdict;
                    QVERIFY2(verdicts[i] == fresh,
                        qPrintable(QStringLiteral("shop %1, step %2, container %3: %4, but fresh %5")
                                .arg(seed)
                                .arg(step)
                                .arg(i)
                                .arg(QString::fromStdString(words(verdicts[i])),
                                    QString::fromStdString(words(fresh)))));
                    ++seen[static_cast<std::size_t>(fresh)];
                    changes += i < before.size() && before[i] != fresh ? 1 : 0;
                }
                asked += verdicts.size();
                judged += kept.judgedLast();
                before = verdicts;
                shop.somethingHappens(kept);
            }
        }
        // The shops are no quiet ones, and still most verdicts are kept.
        for (const int count : seen)
            QVERIFY(count > static_cast<int>(asked / 50));
        QVERIFY2(changes > 500, qPrintable(QString::number(changes)));
        QVERIFY2(judged < asked / 2, qPrintable(QStringLiteral("%1 of %2").arg(judged).arg(asked)));
    }

    void aUse_judgesOneContainer()
    {
        RandomShop shop(3);
        StandingVerdicts kept;
        for (std::size_t i = 0; i < shop.containers.size(); ++i)
            kept.put(i, shop.containers[i].history, shop.containers[i].figures);
        kept.asOf(*shop.climate, shop.now);
        QCOMPARE(kept.judgedLast(), shop.containers.size());
        kept.put(7, shop.containers[7].history, shop.containers[7].figures);
        kept.asOf(*shop.climate, shop.now);
        QVERIFY(kept.judgedLast() < shop.containers.size() / 2);
    }

    void anotherClimate_isJudgedAnew()
    {
        StandingVerdicts kept;
        LifeFigures figures = plainFigures();
        kept.put(0, fresh(), std::make_shared<LifeFigures>(figures));
        const Moment then = after(fresh().arrived, 350);
        const WatchedClimate cool = assumedClimate({ { steady, { { 15 }, { 20 } } } });
        const WatchedClimate hot = assumedClimate({ { steady, { { 35 }, { 40 } } } });
        QCOMPARE(kept.asOf(cool, then).front(), Verdict::Good);
        QCOMPARE(kept.asOf(hot, then).front(), Verdict::DoNotUse);
        QCOMPARE(kept.asOf(cool, then).front(), Verdict::Good);
    }
};

QTEST_APPLESS_MAIN(TestStandingVerdicts)
#include "tst_standingverdicts.moc"
