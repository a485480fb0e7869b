#include "ageing/reasons.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ageing/wording.h"

namespace gw {

namespace {

std::string keeps(const AgeCase& item, const Clock& clock, const char* how)
{
    std::string text = std::string(how) + " it keeps " + lifeWords(clock.life.span);
    if (agesByTemperature(item.figures.rate))
        text += " at " + formatTemperature(item.figures.rate.reference);
    return text;
}

/// From "; unopened it keeps ..." on: the life, the share used, and what to do.
std::string lifeSentence(
    const AgeCase& item, const Clock& clock, const char* how, const std::string& counting)
{
    std::string text = "; " + keeps(item, clock, how) + ", and ";
    text += clock.known() ? shareWords(clock.use().used) + " of that is used" + counting : "that may be over";
    text += '.';
    if (clock.known() && clock.unwatched >= Days { 1 } && agesByTemperature(item.figures.rate))
        text += " No readings cover " + spanWords(clock.unwatched) + " of it.";
    return text;
}

const char* advice(Verdict verdict)
{
    switch (verdict) {
    case Verdict::TestFirst:
        return " It may be past: test it first.";
    case Verdict::DoNotUse:
        return " At worst it is past even the longer life.";
    case Verdict::Good:
    case Verdict::NotKnown:
        break;
    }
    return "";
}

std::string labelDate(const History& history)
{
    return std::string(history.printedIsUseBy ? "use by " : "best before ") + spokenDate(*history.printed);
}

std::string printedWords(const AgeCase& item, const LabelClock& label, Verdict verdict)
{
    const History& history = item.history;
    std::string text = "The label says " + labelDate(history);
    if (!item.labelSpeaks()) {
        const Days gone = daysBetween(endOf(*history.printed), item.asOf);
        text
            += gone < Days { 1 } ? ", which has just gone by" : ", which went by " + spanWords(gone) + " ago";
    } else if (label.left < Days { 0 }) {
        text += ", but as warm as it may have stood here since " + onDay(item.hereSince())
            + ", that may be used up already";
    }
    text += '.';
    if (verdict == Verdict::TestFirst)
        text += " Test it first.";
    if (!history.made && history.foundUndated)
        text += " Nothing but that date tells how old it is.";
    return text;
}

Reason printedReason(const AgeCase& item, const LabelClock& label)
{
    const History& history = item.history;
    const Verdict verdict = labelVerdict(item, label.left);
    return { "printed_date", verdict, item.said([&] { return printedWords(item, label, verdict); }),
        endOf(*history.printed) };
}

std::string sealedBeginning(const AgeCase& item)
{
    const History& history = item.history;
    if (history.made) {
        const Moment made = startOf(*history.made);
        return made < item.asOf
            ? "Made " + spanWords(daysBetween(made, item.asOf)) + " ago, on " + onDay(made)
            : "Made on " + onDay(made);
    }
    return "Here for " + spanWords(daysBetween(item.hereSince(), item.asOf))
        + (history.foundUndated ? " and of unknown age before" : " and made at some time before");
}

void addSealed(const AgeCase& item, const Clock& clock, std::vector<Reason>& reasons)
{
    const History& history = item.history;
    if (!clock.lifeKnown()) {
        if (!history.printed)
            reasons.push_back({ "life_not_known", Verdict::NotKnown,
                item.said(
                    [] { return "How long it keeps unopened is not known, and no date is printed on it."; }),
                std::nullopt });
        return;
    }

    const bool beaten = item.labelSpeaks();
    const Verdict verdict = beaten ? Verdict::Good : clock.byAge();
    if (clock.known() || verdict != Verdict::Good) {
        const auto words = [&] {
            const std::string counting = clock.assumedBefore.count() > 0
                ? ", counting up to " + spanWords(clock.assumedBefore) + " before it came"
                : "";
            std::string text = sealedBeginning(item) + lifeSentence(item, clock, "unopened", counting);
            if (beaten && clock.byAge() != Verdict::Good)
                text += " The label's date beats that.";
            return text + advice(verdict);
        };
        reasons.push_back({ "sealed_life", verdict, item.said(words),
            history.made ? startOf(*history.made) : item.hereSince() });
    }
    if (!clock.sinceKnown && !history.printed) {
        reasons.push_back(
            { "age_not_known", Verdict::NotKnown, item.said([&] {
                 return history.foundUndated ? "Found on " + onDay(history.arrived)
                         + " with no date on it: how old it was then is not known."
                                             : "It came on " + onDay(history.arrived)
                         + " with no made date, and how long such stock stands in the trade is not known.";
             }),
                history.arrived });
    }
}

void addOpened(const AgeCase& item, const Clock& clock, std::vector<Reason>& reasons)
{
    const Moment opened = *item.opened();
    const std::string beginning = item.said(
        [&] { return "Opened " + spanWords(daysBetween(opened, item.asOf)) + " ago, on " + onDay(opened); });
    if (!clock.lifeKnown()) {
        reasons.push_back({ "life_not_known", Verdict::NotKnown,
            item.said([&] { return beginning + "; how long it keeps once opened is not known."; }), opened });
        return;
    }
    const Verdict verdict = clock.byAge();
    if (clock.known() || verdict != Verdict::Good) {
        const auto words = [&] {
            const std::string text = clock.sinceKnown
                ? beginning
                : "Open for at least " + spanWords(daysBetween(opened, item.asOf));
            return text + lifeSentence(item, clock, "opened", {}) + advice(verdict);
        };
        reasons.push_back({ "opened_life", verdict, item.said(words), opened });
    }
    if (!clock.sinceKnown) {
        reasons.push_back({ "age_not_known", Verdict::NotKnown, item.said([&] {
                               return "It was already open when it came on " + onDay(item.history.arrived)
                                   + ", and since when is not known.";
                           }),
            item.history.arrived });
    }
}

std::string sinceThen(const Weather& weather, const char* howFar, Celsius extreme)
{
    return "Since " + onDay(weather.since)
        + (weather.exposure.unwatched > Days { 0 } || !weather.exposure.known ? " it may have been"
                                                                              : " it has been")
        + " as " + howFar + " as " + formatTemperature(extreme);
}

std::optional<Reason> heatReason(const AgeCase& item, const Weather& weather)
{
    const auto& keep = item.figures.keepBetween;
    const auto& hottest = weather.exposure.hottest;
    if (!keep || !hottest || *hottest <= keep->high)
        return std::nullopt;
    Reason reason { "too_hot",
        hottest->value > keep->high.value + heatLeftToClock ? Verdict::TestFirst : Verdict::Good, {},
        weather.since };
    if (item.wording == Wording::None)
        return reason;
    const Heat seen = seenAbove(item, weather.since, item.asOf, keep->high);
    if (seen.first) {
        // Watched: since when and how long is known. What nobody watched may have been hotter still.
        reason.when = seen.first;
        reason.text = "Since " + onDay(*seen.first) + " it has been above " + formatTemperature(keep->high)
            + " for " + hoursWords(seen.above) + " in all, up to " + formatTemperature(*seen.hottest);
        if (*hottest > *seen.hottest)
            reason.text += ", and while nobody watched perhaps up to " + formatTemperature(*hottest);
    } else {
        reason.text = sinceThen(weather, "warm", *hottest);
    }
    reason.text += "; keep it " + rangeWords(*keep) + '.';
    if (reason.verdict == Verdict::TestFirst)
        reason.text += " Test it first.";
    return reason;
}

} // namespace

Verdict labelVerdict(const AgeCase& item, Days left)
{
    if (!item.labelSpeaks())
        return item.history.printedIsUseBy ? Verdict::DoNotUse : Verdict::TestFirst;
    return left < Days { 0 } ? Verdict::TestFirst : Verdict::Good;
}

std::string testWords(const BenchTest& test)
{
    const bool passed = test.passed && !test.grainyAfterFrost;
    std::string text = (passed ? "Passed the bench test on " : "Failed the bench test on ") + onDay(test.at);
    if (test.grainyAfterFrost)
        text += ", grainy after frost";
    if (test.woodFailurePercent)
        text += " with " + std::to_string(std::lround(*test.woodFailurePercent)) + " % wood failure";
    return text;
}

std::vector<Reason> standingReasons(const AgeCase& item)
{
    const History& history = item.history;
    std::vector<Reason> reasons;
    if (history.retired && *history.retired <= item.asOf)
        reasons.push_back({ "retired", Verdict::DoNotUse,
            item.said([&] { return "Retired on " + onDay(*history.retired) + '.'; }), history.retired });
    if (history.hold && history.hold->since <= item.asOf) {
        const auto words = [&] {
            std::string text = "Its lot has been on hold since " + onDay(history.hold->since);
            text += history.hold->why.empty() ? "." : ": " + history.hold->why;
            return text.back() == '.' ? text : text + '.';
        };
        reasons.push_back({ "lot_on_hold", Verdict::DoNotUse, item.said(words), history.hold->since });
    }
    const auto failed = std::find_if(history.tests.begin(), history.tests.end(), [&](const BenchTest& test) {
        return test.at <= item.asOf && (!test.passed || test.grainyAfterFrost);
    });
    if (failed != history.tests.end()) {
        const auto words = [&] {
            const std::string text = testWords(*failed) + '.';
            const BenchTest* passed = item.lastPassed();
            return passed && passed->at >= failed->at
                ? text + " The pass on " + onDay(passed->at) + " does not undo that."
                : text;
        };
        reasons.push_back({ "bench_test_failed", Verdict::DoNotUse, item.said(words), failed->at });
    }
    return reasons;
}

std::vector<Reason> ageReasons(const AgeCase& item, const Clock& sealed, const Clock& opened)
{
    std::vector<Reason> reasons;
    const auto label = labelClock(item);
    if (label)
        reasons.push_back(printedReason(item, *label));
    if (opened.running)
        addOpened(item, opened, reasons);
    if (sealed.running)
        addSealed(item, sealed, reasons);

    std::optional<Moment> unknown = label ? label->placeUnknownSince : std::nullopt;
    for (const Clock* clock : { &sealed, &opened }) {
        const auto& since = clock->placeUnknownSince;
        if (since && (!unknown || *since < *unknown))
            unknown = since;
    }
    if (unknown) {
        reasons.push_back(
            { "place_not_known", Verdict::NotKnown, item.said([&] {
                 return "From " + onDay(*unknown)
                     + " on it stood somewhere whose temperature is not known, so how far it has aged is not "
                       "known.";
             }),
                unknown });
    }
    if (reasons.empty()) {
        const bool wears = item.figures.opened.kind == Life::Kind::DoesNotAge;
        reasons.push_back({ "does_not_age", Verdict::Good, item.said([&] {
                               return wears ? "Time alone does not use it up: judge it by eye."
                                            : "Unopened, time alone does not use it up.";
                           }),
            std::nullopt });
    }
    return reasons;
}

std::vector<Reason> weatherReasons(const AgeCase& item, const Frosts& frosts)
{
    std::vector<Reason> reasons = frostReasons(item, frosts);
    if (!item.figures.keepBetween)
        return reasons;
    if (const auto weather = weatherOf(item)) {
        if (auto heat = heatReason(item, *weather))
            reasons.push_back(std::move(*heat));
    }
    return reasons;
}

} // namespace gw
