#include "shop/lifestory.h"

#include <algorithm>

#include "ageing/clocks.h"
#include "ageing/reasons.h"
#include "ageing/watched.h"
#include "shop/climateasof.h"
#include "shop/shelfitems.h"
#include "shop/stock.h"

namespace gw {

namespace {

constexpr int steps = 200; ///< as many as a picture a hand wide can show
constexpr Days shortest { 2 }; ///< of a picture
constexpr double roomAhead = 0.6; ///< of the time so far, for what is to come
constexpr double roomPastLimit = 0.04; ///< of the picture, so that its last line stands inside

/// Everything a picture of one container is drawn from.
struct Subject {
    const History& history;
    const LifeFigures& figures;
    const Climate& climate;
    Moment asOf;
};

Moment beginningOf(const Subject& subject)
{
    const AgeCase now(subject.history, subject.figures, subject.climate, subject.asOf);
    Moment from = now.hereSince();
    if (subject.history.made)
        from = std::min(from, startOf(*subject.history.made));
    return from;
}

/// A little past the good-until date where that is not so far off that the past would shrink to nothing.
Moment endOfPicture(Moment from, Moment asOf, const std::optional<Moment>& goodUntil)
{
    const Days past = std::max(daysBetween(from, asOf), shortest);
    const Moment farthest = later(asOf, past * roomAhead);
    if (!goodUntil)
        return later(asOf, past * roomPastLimit);
    const Moment wanted = later(*goodUntil, daysBetween(from, *goodUntil) * roomPastLimit);
    return std::clamp(wanted, asOf, farthest);
}

/// Even steps, and besides them the moments at which something changes at once.
std::vector<Moment> moments(Moment from, Moment to, const std::vector<Moment>& besides)
{
    std::vector<Moment> all;
    const Days whole = daysBetween(from, to);
    for (int i = 0; i <= steps; ++i)
        all.push_back(later(from, whole * (static_cast<double>(i) / steps)));
    all.back() = to;
    for (Moment at : besides) {
        if (from < at && at < to)
            all.push_back(at);
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

std::string missingWords(const Clock& clock)
{
    if (!clock.lifeKnown())
        return "How long it keeps is not known, so there is no share of it to show.";
    if (!clock.sinceKnown)
        return "How old it is is not known, so there is no share of its life to show.";
    return "Where it stood is not known all the time, so its life cannot be followed.";
}

std::optional<LifeTrack> trackOf(const Subject& subject, bool sinceOpening, const std::vector<Moment>& at)
{
    const auto clockAt = [&](Moment moment) {
        const AgeCase item(subject.history, subject.figures, subject.climate, moment);
        return sinceOpening ? openedClock(item) : sealedClock(item);
    };
    const Clock now = clockAt(subject.asOf);
    if (!now.running)
        return std::nullopt;
    LifeTrack track;
    track.sinceOpening = sinceOpening;
    for (Moment moment : at) {
        const ClockUse use = clockAt(moment).use();
        if (use.applies && use.known)
            track.points.push_back({ moment, use.used });
    }
    if (!now.known())
        track.missing = missingWords(now);
    return track;
}

PlaceId placeAt(const History& history, Moment moment)
{
    PlaceId place;
    for (const Stay& stay : history.stays) {
        if (stay.from <= moment)
            place = stay.place;
    }
    return place;
}

std::vector<AirStep> airOf(const Subject& subject, const std::vector<Moment>& at)
{
    std::vector<AirStep> air;
    for (std::size_t i = 0; i + 1 < at.size(); ++i) {
        AirStep step { at[i], placeAt(subject.history, at[i]), {}, false };
        if (!step.place.empty()) {
            const Exposure there = subject.climate.exposure(step.place, at[i], at[i + 1], {});
            if (there.known && there.coldest && there.hottest)
                step.air = { *there.coldest, *there.hottest };
            step.watched = step.air && there.unwatched < daysBetween(at[i], at[i + 1]) / 2;
        }
        air.push_back(step);
    }
    return air;
}

/// How much of the time it stood somewhere was watched, of all that time.
void addWatched(LifeStory& story, const Subject& subject)
{
    const auto& stays = subject.history.stays;
    for (std::size_t i = 0; i < stays.size(); ++i) {
        const Moment from = stays[i].from;
        const Moment to = i + 1 < stays.size() ? std::min(stays[i + 1].from, subject.asOf) : subject.asOf;
        if (to <= from)
            continue;
        const Days span = daysBetween(from, to);
        story.stood += span;
        story.watched += span - subject.climate.exposure(stays[i].place, from, to, {}).unwatched;
    }
}

/// Watched steps above the limit by more than is left to the clock, run together.
void addHotSpells(std::vector<LifeMark>& marks, const LifeStory& story, UnitSystem units)
{
    if (!story.keepBetween)
        return;
    const Celsius limit { story.keepBetween->high.value + heatLeftToClock };
    std::optional<Celsius> hottest;
    Moment since;
    const auto close = [&](Moment until) {
        if (!hottest)
            return;
        marks.push_back({ LifeMark::Kind::TooHot, since, until,
            "Too warm: up to " + formatTemperature(*hottest, units) });
        hottest.reset();
    };
    for (const AirStep& step : story.air) {
        if (step.from >= story.asOf)
            break;
        if (step.watched && step.air->high > limit) {
            if (!hottest)
                since = step.from;
            hottest = hottest ? std::max(*hottest, step.air->high) : step.air->high;
        } else {
            close(step.from);
        }
    }
    close(story.asOf);
}

std::string testText(const BenchTest& test)
{
    if (test.grainyAfterFrost)
        return "Grainy after frost at its bench test";
    return test.passed ? "Passed its bench test" : "Failed its bench test";
}

std::vector<LifeMark> marksOf(const LifeStory& story, const Subject& subject, const ShelfItem& item,
    const Catalogue& catalogue, UnitSystem units)
{
    using Kind = LifeMark::Kind;
    const History& history = subject.history;
    std::vector<LifeMark> marks;
    marks.push_back({ Kind::Arrived, history.arrived, {}, "Arrived" });
    if (history.opened)
        marks.push_back({ Kind::Opened, *history.opened, {}, "Opened" });
    for (std::size_t i = 1; i < history.stays.size(); ++i) {
        if (history.stays[i].place != history.stays[i - 1].place)
            marks.push_back({ Kind::Moved, history.stays[i].from, {},
                "Moved to " + catalogue.placeName(history.stays[i].place) });
    }
    for (const BenchTest& test : history.tests) {
        const bool passed = test.passed && !test.grainyAfterFrost;
        marks.push_back({ passed ? Kind::Passed : Kind::Failed, test.at, {}, testText(test) });
    }
    for (const FrostEvent& frost : item.judgement.frosts)
        marks.push_back({ Kind::Froze, frost.from, frost.thawed,
            frost.thawed ? "Froze" : "Froze, not known to have thawed" });
    addHotSpells(marks, story, units);
    if (history.retired)
        marks.push_back({ Kind::Retired, *history.retired, {}, "Retired" });
    if (history.printed)
        marks.push_back({ Kind::LabelDate, endOf(*history.printed), {},
            history.printedIsUseBy ? "Use by, as printed" : "Best before, as printed" });
    if (item.judgement.goodUntil)
        marks.push_back({ Kind::GoodUntil, *item.judgement.goodUntil, {}, "Good until this day" });
    std::erase_if(marks, [&](const LifeMark& mark) { return mark.at < story.from || mark.at > story.to; });
    std::stable_sort(
        marks.begin(), marks.end(), [](const LifeMark& a, const LifeMark& b) { return a.at < b.at; });
    return marks;
}

} // namespace

Result<LifeStory> lifeStory(const Shop& shop, const std::string& idOrLabel, Moment asOf)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto standing = standingOf(shop, idOrLabel, asOf);
    if (!standing)
        return tl::unexpected(standing.error());
    const auto& [container, state] = *standing;

    const auto climate = ClimateAsOf::of(shop, *catalogue, asOf);
    if (!climate)
        return tl::unexpected(climate.error());
    ShelfJudge judge(*catalogue, **climate);
    const ShelfItem item = judge.item(container, state, asOf);
    const Subject subject { state.history, judge.figures(container.material), judge.climate(), asOf };
    LifeStory story;
    story.asOf = asOf;
    story.from = beginningOf(subject);
    story.to = endOfPicture(story.from, asOf, item.judgement.goodUntil);
    story.keepBetween = subject.figures.keepBetween;
    story.place = item.place;
    story.placeName = item.placeName;

    std::vector<Moment> changes { asOf, state.history.arrived };
    if (state.history.opened)
        changes.push_back(*state.history.opened);
    for (const Stay& stay : state.history.stays)
        changes.push_back(stay.from);
    const auto at = moments(story.from, story.to, changes);
    for (bool sinceOpening : { true, false }) {
        if (auto track = trackOf(subject, sinceOpening, at))
            story.tracks.push_back(std::move(*track));
    }
    story.air = airOf(subject, at);
    addWatched(story, subject);
    story.marks = marksOf(story, subject, item, *catalogue, shop.units());
    return story;
}

} // namespace gw
