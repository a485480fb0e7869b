#include "ageing/reasons.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "ageing/wording.h"

namespace gw {

namespace {

constexpr Days daysToCrystallise { 3 }; // assumption, no source: it takes days to weeks

int tolerance(const LifeFigures& figures)
{
    constexpr int unlimited = std::numeric_limits<int>::max();
    return figures.freezeTolerance.value_or(figures.frost == Frost::Harms ? 0 : unlimited);
}

/// "on 3 May 2026", "on 3 May 2026 and 5 May 2026", "first on 3 May 2026 and last on 9 May 2026".
std::string dates(const std::vector<FrostEvent>& events)
{
    const std::string first = onDay(events.front().from);
    const std::string last = onDay(events.back().from);
    if (events.size() == 1 || first == last)
        return "on " + first;
    if (events.size() == 2)
        return "on " + first + " and " + last;
    return "first on " + first + " and last on " + last;
}

std::string timesWords(std::size_t count)
{
    return count == 1 ? "once" : count == 2 ? "twice" : std::to_string(count) + " times";
}

/// What without water grows stiff in the cold does not freeze, strictly.
const char* froze(const LifeFigures& figures)
{
    return figures.waterShare && *figures.waterShare <= 0 ? "It set in the cold " : "It froze ";
}

std::optional<Reason> frozenReason(const AgeCase& item, const Frosts& frosts)
{
    if (frosts.unsettled == 0)
        return std::nullopt;
    const LifeFigures& figures = item.figures;
    const std::size_t count = frosts.events.size();
    const int stands = tolerance(figures);
    const bool stood = !frosts.frozenNow && static_cast<int>(count) <= stands;
    Reason reason { "frozen", stood ? Verdict::Good : Verdict::TestFirst, {}, frosts.events.back().from };
    if (item.wording == Wording::None)
        return reason;
    reason.text = froze(figures) + timesWords(count) + ", " + dates(frosts.events);
    if (figures.freezeTolerance && *figures.freezeTolerance > 0)
        reason.text += "; it stands " + std::to_string(*figures.freezeTolerance);
    reason.text += '.';
    if (frosts.frozenNow) {
        reason.text
            += " It has not thawed yet: let it thaw slowly and right through before you open it, then "
               "test it.";
    } else if (stood) {
        if (figures.frost == Frost::Recoverable)
            reason.text += " It comes back by slow warming.";
    } else if (figures.frost == Frost::Harms) {
        reason.text
            += " Frost can spoil it for good: test it first, and leave it if it is grainy or stringy.";
    } else {
        reason.text += " Warm it through slowly, then test it.";
    }
    return reason;
}

std::optional<Reason> riskReason(const AgeCase& item, const Frosts& frosts)
{
    if (!frosts.riskSince)
        return std::nullopt;
    const bool harms = item.figures.frost == Frost::Harms;
    Reason reason { "frost_not_known", harms ? Verdict::NotKnown : Verdict::TestFirst, {}, frosts.riskSince };
    if (item.wording == Wording::None)
        return reason;
    const Moment since = *frosts.riskSince;
    const Exposure stands = item.stood(std::min(since, item.asOf), item.asOf).sum;
    if (!frosts.placeKnown)
        reason.text = "Since " + onDay(since) + " it stood somewhere whose temperature is not known, and so "
            + "whether it froze.";
    else if (stands.coldest && *stands.coldest < item.figures.freezesAt)
        reason.text = "Since " + onDay(since) + " it may have been as cold as "
            + formatTemperature(*stands.coldest)
            + " with nobody watching, and whether it froze is not known.";
    else
        reason.text = "On " + onDay(since)
            + " and after it stood where it may freeze with nobody watching, and "
            + "whether it froze is not known.";
    if (harms) {
        reason.text += " Frost can spoil it for good.";
    } else {
        reason.text
            += " It comes back from frost and from setting in the cold: warm it through, then test it.";
    }
    return reason;
}

std::optional<Reason> crystalReason(const AgeCase& item)
{
    const LifeFigures& figures = item.figures;
    const auto weather = weatherOf(item);
    if (!weather)
        return std::nullopt;
    const Celsius look = lookBelow(figures);
    const Below cold = stoodBelow(item, look);
    const auto& coldest = weather->exposure.coldest;
    if (!cold.riskSince && (!coldest || *coldest >= figures.crystallisesBetween->high))
        return std::nullopt;
    const bool matters = cold.watched > daysToCrystallise || cold.riskSince;
    Reason reason { "may_have_crystallised", matters ? Verdict::TestFirst : Verdict::Good, {},
        cold.riskSince.value_or(weather->since) };
    if (item.wording == Wording::None)
        return reason;
    reason.text = "Since " + onDay(weather->since);
    if (cold.watched > daysToCrystallise)
        reason.text += " it stood colder than " + formatTemperature(look) + " for " + spanWords(cold.watched);
    else if (!weather->exposure.known)
        reason.text += " it stood somewhere whose temperature is not known";
    else
        reason.text += " it may have been as cold as " + formatTemperature(*coldest);
    reason.text += ", and cold makes resin crystallise without any frost.";
    if (reason.verdict == Verdict::TestFirst)
        reason.text += " Look first:";
    reason.text += reason.verdict == Verdict::Good ? " Where" : " where";
    reason.text += " it is cloudy or grainy, warm it to 50 to 60 °C, as far as its label allows, until it is "
                   "clear again; that does it no harm.";
    return reason;
}

} // namespace

Celsius lookBelow(const LifeFigures& figures)
{
    return figures.keepBetween ? figures.keepBetween->low : figures.crystallisesBetween->high;
}

std::vector<Reason> frostReasons(const AgeCase& item, const Frosts& frosts)
{
    std::vector<Reason> reasons;
    const auto add = [&](std::optional<Reason> reason) {
        if (reason)
            reasons.push_back(std::move(*reason));
    };
    if (item.figures.frost != Frost::Never && item.figures.crystallisesBetween) {
        add(crystalReason(item));
    } else {
        add(frozenReason(item, frosts));
        add(riskReason(item, frosts));
    }
    return reasons;
}

} // namespace gw
