#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "ageing/verdict.h"
#include "ageing/watched.h"

// Made-up stock for the tests of ageing. Figures are invented, round, and near those of a white PVA.
namespace gw::test {

inline Moment at(std::string_view text) { return *parseMoment(text); }
inline Date on(std::string_view text) { return *parseDate(text); }
inline Moment after(Moment from, double days) { return later(from, Days { days }); }

inline const PlaceId steady { "steady" }; ///< always 20 C, the reference temperature
inline const PlaceId bench { "bench" }; ///< 15 to 25 C
inline const PlaceId shed { "shed" }; ///< -5 to 34 C
inline const PlaceId loft { "loft" }; ///< 10 to 40 C
inline const PlaceId nowhere { "nowhere" }; ///< a place nothing is known of

/// A climate without readings, where each place's range is assumed all year.
inline WatchedClimate assumedClimate(const std::map<PlaceId, Range<Celsius>>& ranges)
{
    std::map<PlaceId, WatchedPlace> places;
    for (const auto& [place, range] : ranges)
        places.emplace(place, WatchedPlace { {}, { range, {} }, {} });
    return WatchedClimate(std::move(places));
}

inline WatchedClimate shopClimate()
{
    return assumedClimate({ { steady, { { 20 }, { 20 } } }, { bench, { { 15 }, { 25 } } },
        { shed, { { -5 }, { 34 } } }, { loft, { { 10 }, { 40 } } } });
}

/// Sealed 400 to 800 days, opened 200 to 400 days at 20 C, q10 = 2; frost does nothing, any warmth is
/// allowed.
inline LifeFigures plainFigures()
{
    LifeFigures figures;
    figures.sealed = { Life::Kind::Ages, { Days { 400 }, Days { 800 } } };
    figures.opened = { Life::Kind::Ages, { Days { 200 }, Days { 400 } } };
    figures.rate.q10 = 2;
    figures.timeInTrade = { Days { 0 }, Days { 100 } };
    return figures;
}

/// Made on 1 January 2025, here the same day, in the steady place, unopened.
inline History fresh()
{
    History history;
    history.made = on("2025-01-01");
    history.arrived = at("2025-01-01");
    history.stays = { { steady, history.arrived } };
    return history;
}

inline const Reason* reason(const Judgement& judgement, std::string_view code)
{
    const auto found = std::find_if(
        judgement.reasons.begin(), judgement.reasons.end(), [&](const Reason& r) { return r.code == code; });
    return found == judgement.reasons.end() ? nullptr : &*found;
}

inline bool says(const Judgement& judgement, std::string_view code, Verdict verdict)
{
    const Reason* found = reason(judgement, code);
    return found && found->verdict == verdict;
}

/// The words of a verdict, so that a failed comparison can be read.
inline std::string words(Verdict verdict) { return std::string(word(verdict)); }

} // namespace gw::test
