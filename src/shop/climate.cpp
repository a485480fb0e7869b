#include "shop/climate.h"

#include <algorithm>
#include <cmath>

#include <QString>

#include "measure/quoted.h"
#include "shop/climateasof.h"
#include "shop/shelfitems.h"

namespace gw {

namespace {

constexpr int mostSteps = 400; ///< as many as a picture a hand wide can show
constexpr std::chrono::days withoutReadings { 365 }; ///< span shown of a place that has none
constexpr double farthestOff = 40; ///< degrees between two places that go with each other

bool sameName(const std::string& a, const std::string& b)
{
    return QString::fromStdString(a).simplified().compare(
               QString::fromStdString(b).simplified(), Qt::CaseInsensitive)
        == 0;
}

/// Lowest to highest of each step: of what was read where most of it was watched, else of what is assumed.
std::vector<TraceStep> stepsOf(
    const WatchedClimate& climate, const PlaceId& place, Moment from, Moment to, int count)
{
    std::vector<TraceStep> steps;
    const WatchedTrace* trace = climate.readings(place);
    const Days whole = daysBetween(from, to);
    for (int i = 0; i < count; ++i) {
        const Moment begin = later(from, whole * (static_cast<double>(i) / count));
        const Moment end = later(from, whole * (static_cast<double>(i + 1) / count));
        TraceStep step;
        step.from = begin;
        step.watched = trace && trace->watched(begin, end) * 2 >= daysBetween(begin, end);
        if (step.watched) {
            step.air = trace->extremes(begin, end);
        } else {
            const Exposure exposure = climate.exposure(place, begin, end, Rate {});
            if (exposure.known && exposure.coldest && exposure.hottest)
                step.air = Range<Celsius> { *exposure.coldest, *exposure.hottest };
        }
        steps.push_back(step);
    }
    return steps;
}

void addFigures(PlaceClimate& shown, const WatchedClimate& climate)
{
    const WatchedTrace* watched = climate.readings(shown.place.id);
    if (!watched || watched->empty())
        return;
    const Trace& trace = watched->trace();
    const std::size_t end = trace.countUpTo(shown.to);
    const std::size_t begin = trace.countUpTo(shown.from - std::chrono::milliseconds { 1 });
    if (end > 0)
        shown.newest = trace.reading(end - 1);
    if (begin >= end)
        return;
    shown.readings = static_cast<std::int64_t>(end - begin);
    shown.first = trace.at(begin);
    shown.last = trace.at(end - 1);
    const auto figures = climate.summary(shown.place.id, *shown.first, *shown.last);
    if (!figures)
        return;
    shown.low = figures->low;
    shown.high = figures->high;
    shown.mean = figures->mean;
    shown.kinetic = figures->kinetic;
    shown.unwatched = figures->unwatched;
    shown.frost.freezes = static_cast<int>(figures->freezes());
    shown.frost.thaws = static_cast<int>(figures->thaws());
    shown.frost.below = figures->below;
    for (const FrostMark& mark : figures->marks) {
        if (mark.frozen)
            shown.frost.last = mark.at;
    }
}

Result<std::vector<StandsHere>> standsIn(
    const Shop& shop, const Catalogue& catalogue, const PlaceId& place, Moment asOf)
{
    auto standings = standingsAsOf(shop, asOf);
    if (!standings)
        return tl::unexpected(standings.error());
    std::vector<StandsHere> stands;
    for (const Standing& standing : *standings) {
        if (standing.state.place != place || standing.state.history.retired || standing.state.left.milli <= 0)
            continue;
        const auto* material = catalogue.material(standing.container.material);
        const auto* cls = catalogue.classOf(standing.container.material);
        StandsHere here { standing.container.id, standing.container.label, {}, {}, Frost::Never, {} };
        if (material)
            here.materialName = material->name;
        if (material && cls) {
            const LifeFigures figures = lifeFiguresOf(*cls, *material);
            here.keepBetween = figures.keepBetween;
            here.frost = figures.frost;
            if (figures.frost != Frost::Never)
                here.freezesAt = figures.freezesAt;
        }
        stands.push_back(std::move(here));
    }
    std::ranges::sort(stands, [](const StandsHere& a, const StandsHere& b) {
        return std::tie(a.materialName, a.label) < std::tie(b.materialName, b.label);
    });
    return stands;
}

/// Whether a place would come to follow itself by way of others.
bool followsItself(const std::vector<PlaceRecord>& places, const PlaceId& place, const PlaceId& followed)
{
    PlaceId at = followed;
    for (std::size_t step = 0; step <= places.size(); ++step) {
        if (at == place)
            return true;
        const auto found = std::ranges::find(places, at, &PlaceRecord::id);
        if (found == places.end() || !found->follows)
            return false;
        at = found->follows->place;
    }
    return true;
}

Result<void> mayBe(const std::optional<Range<Celsius>>& range)
{
    if (!range)
        return {};
    if (!(range->low <= range->high))
        return fail(ErrorCode::BadInput, "The low of a place cannot lie above its high; swap the two.");
    if (!(range->low >= possibleAir.low && range->high <= possibleAir.high))
        return fail(
            ErrorCode::BadInput, "A place is taken to be between -60 and 80 °C; give a range within.");
    return {};
}

} // namespace

Result<PlaceRecord> findPlace(const Shop& shop, const std::string& name)
{
    auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    std::string names;
    for (PlaceRecord& place : *places) {
        if (place.id.text == name || sameName(place.name, name))
            return std::move(place);
        names += (names.empty() ? "" : ", ") + place.name;
    }
    if (names.empty())
        return fail(ErrorCode::NotFound,
            "There is no place " + inQuotes(name) + " and no other in this shop; make one first.");
    return fail(ErrorCode::NotFound,
        "There is no place " + inQuotes(name) + " in this shop; there are: " + names + ".");
}

Result<PlaceClimate> climateShown(
    const Shop& shop, const std::string& placeName, Moment asOf, std::optional<Moment> from)
{
    auto place = findPlace(shop, placeName);
    if (!place)
        return tl::unexpected(place.error());
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto climate = ClimateAsOf::of(shop, *catalogue, asOf);
    if (!climate)
        return tl::unexpected(climate.error());

    PlaceClimate shown;
    shown.place = catalogue->places.contains(place->id) ? catalogue->places.at(place->id) : *place;
    if (shown.place.follows)
        shown.followsName = catalogue->placeName(shown.place.follows->place);
    const WatchedTrace* trace = (**climate).readings(place->id);
    const bool any = trace && trace->trace().countUpTo(asOf) > 0;
    shown.to = asOf;
    shown.from = std::min(asOf, from.value_or(any ? trace->trace().at(0) : asOf - withoutReadings));
    addFigures(shown, **climate);
    if (shown.from < shown.to)
        shown.trace = stepsOf(**climate, place->id, shown.from, shown.to, mostSteps);
    auto stands = standsIn(shop, *catalogue, place->id, asOf);
    if (!stands)
        return tl::unexpected(stands.error());
    shown.stands = std::move(*stands);
    return shown;
}

Result<void> placeMayBe(const std::vector<PlaceRecord>& places, const PlaceRecord& place)
{
    if (auto may = mayBe(place.assumed.year); !may)
        return may;
    for (const auto& quarter : place.assumed.quarters) {
        if (auto may = mayBe(quarter); !may)
            return may;
    }
    if (!place.follows)
        return {};
    const Follow& follows = *place.follows;
    if (!(std::abs(follows.warmer) <= farthestOff))
        return fail(ErrorCode::BadInput,
            "A place that goes with another is at most 40 degrees warmer or colder; give it its own range.");
    if (!(follows.damped >= 0 && follows.damped <= 1))
        return fail(ErrorCode::BadInput, "Damped is a share from 0, all of the swing, to 1, none of it.");
    if (std::ranges::find(places, follows.place, &PlaceRecord::id) == places.end())
        return fail(ErrorCode::NotFound, "The place to follow is not there any more; choose another.");
    if (followsItself(places, place.id, follows.place))
        return fail(ErrorCode::BadInput, place.name + " would come to follow itself; choose another place.");
    return {};
}

Result<PlaceRecord> savePlaceClimate(Shop& shop, const std::string& placeName, const AssumedRanges& assumed,
    const std::optional<Follow>& follows)
{
    PlaceRecord saved;
    const auto done = shop.store().transact([&]() -> Result<void> {
        auto place = findPlace(shop, placeName);
        if (!place)
            return tl::unexpected(place.error());
        auto places = shop.store().places();
        if (!places)
            return tl::unexpected(places.error());
        place->assumed = assumed;
        place->follows = follows;
        if (auto may = placeMayBe(*places, *place); !may)
            return may;
        saved = *place;
        return shop.store().savePlace(*place);
    });
    if (!done)
        return tl::unexpected(done.error());
    return saved;
}

} // namespace gw
