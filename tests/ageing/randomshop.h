#pragma once

#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <optional>
#include <random>
#include <vector>

#include "ageing/standingverdicts.h"
#include "ageing/stock.h"
#include "ageing/traces.h"

namespace gw::test {

using namespace std::chrono_literals;

inline const std::array placeIds { PlaceId { "shop" }, PlaceId { "store" }, PlaceId { "shed" },
    PlaceId { "loft" }, PlaceId { "lean-to" }, PlaceId { "cellar" }, PlaceId { "no such place" },
    PlaceId {} };
inline const Moment start = at("2024-01-01T00:00:00Z");

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

} // namespace gw::test
