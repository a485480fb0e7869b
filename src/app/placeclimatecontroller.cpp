#include "app/placeclimatecontroller.h"

#include <algorithm>
#include <cmath>

#include "app/words.h"

namespace gw {

namespace {

constexpr int spanCount = 5;
/// Where a draft begins that has nothing yet; common practice, no source.
constexpr Range<Celsius> usualRange { Celsius { 5 }, Celsius { 25 } };

} // namespace

PlaceClimateController::PlaceClimateController(QObject* parent)
    : Controller(parent)
{
}

QStringList PlaceClimateController::spans() const
{
    return { tr("The whole year"), tr("December to February"), tr("March to May"), tr("June to August"),
        tr("September to November") };
}

std::optional<Range<Celsius>>& PlaceClimateController::range(int span)
{
    return span == 0 ? m_draft.assumed.year : m_draft.assumed.quarters.at(static_cast<std::size_t>(span - 1));
}

const std::optional<Range<Celsius>>& PlaceClimateController::range(int span) const
{
    return span == 0 ? m_draft.assumed.year : m_draft.assumed.quarters.at(static_cast<std::size_t>(span - 1));
}

UnitSystem PlaceClimateController::units() const
{
    return services() ? services()->settings()->unitSystem() : UnitSystem::Metric;
}

QString PlaceClimateController::unit() const { return degreeUnit(units()); }

int PlaceClimateController::shown(Celsius degrees) const
{
    return static_cast<int>(std::lround(degreesShown(degrees, units())));
}

Celsius PlaceClimateController::kept(int degrees) const { return celsiusOf(degrees, units()); }

QList<bool> PlaceClimateController::known() const
{
    QList<bool> all;
    for (int span = 0; span < spanCount; ++span)
        all.append(range(span).has_value());
    return all;
}

QList<int> PlaceClimateController::lows() const
{
    QList<int> all;
    for (int span = 0; span < spanCount; ++span)
        all.append(range(span) ? shown(range(span)->low) : 0);
    return all;
}

QList<int> PlaceClimateController::highs() const
{
    QList<int> all;
    for (int span = 0; span < spanCount; ++span)
        all.append(range(span) ? shown(range(span)->high) : 0);
    return all;
}

void PlaceClimateController::setKnown(int span, bool known)
{
    if (span < 0 || span >= spanCount || known == range(span).has_value())
        return;
    range(span) = known ? std::optional(m_draft.assumed.year.value_or(usualRange)) : std::nullopt;
    Q_EMIT draftChanged();
}

// A figure that shows the same stays what it is: 18 °C is not turned into 64 °F and back.
void PlaceClimateController::setLow(int span, int degrees)
{
    if (span < 0 || span >= spanCount || !range(span) || degrees == shown(range(span)->low))
        return;
    const Celsius low = kept(degrees);
    range(span) = Range<Celsius> { low, std::max(low, range(span)->high) };
    Q_EMIT draftChanged();
}

void PlaceClimateController::setHigh(int span, int degrees)
{
    if (span < 0 || span >= spanCount || !range(span) || degrees == shown(range(span)->high))
        return;
    const Celsius high = kept(degrees);
    range(span) = Range<Celsius> { std::min(range(span)->low, high), high };
    Q_EMIT draftChanged();
}

QStringList PlaceClimateController::places() const
{
    QStringList names { tr("None") };
    for (const PlaceRecord& place : m_others)
        names.append(q(place.name));
    return names;
}

int PlaceClimateController::follows() const
{
    if (!m_draft.follows)
        return 0;
    const auto found = std::find_if(m_others.begin(), m_others.end(),
        [this](const PlaceRecord& place) { return place.id == m_draft.follows->place; });
    return found == m_others.end() ? 0 : static_cast<int>(found - m_others.begin()) + 1;
}

void PlaceClimateController::setFollows(int index)
{
    if (index == follows() || index < 0 || index > static_cast<int>(m_others.size()))
        return;
    if (index == 0) {
        m_draft.follows.reset();
    } else {
        Follow follow = m_draft.follows.value_or(Follow {});
        follow.place = m_others[static_cast<std::size_t>(index - 1)].id;
        m_draft.follows = follow;
    }
    Q_EMIT draftChanged();
}

// A difference of temperatures: no offset, only the size of the degree.
int PlaceClimateController::warmer() const
{
    const double warmer = m_draft.follows ? m_draft.follows->warmer : 0;
    return static_cast<int>(std::lround(units() == UnitSystem::Us ? warmer * 1.8 : warmer));
}

void PlaceClimateController::setWarmer(int degrees)
{
    if (!m_draft.follows || degrees == warmer())
        return;
    m_draft.follows->warmer = units() == UnitSystem::Us ? degrees / 1.8 : degrees;
    Q_EMIT draftChanged();
}

int PlaceClimateController::damped() const
{
    return m_draft.follows ? static_cast<int>(std::lround(m_draft.follows->damped * 100)) : 0;
}

void PlaceClimateController::setDamped(int percent)
{
    if (!m_draft.follows || percent == damped())
        return;
    m_draft.follows->damped = percent / 100.0;
    Q_EMIT draftChanged();
}

void PlaceClimateController::draftOf(const QString& place)
{
    setError(QString());
    take(services()->shop().run([](const Shop& shop) { return shop.store().places(); }),
        [this, id = PlaceId { place.toStdString() }](std::vector<PlaceRecord> places) {
            const auto found = std::find_if(
                places.begin(), places.end(), [&id](const PlaceRecord& known) { return known.id == id; });
            if (found == places.end())
                return;
            m_draft = *found;
            places.erase(found);
            m_others = std::move(places);
            Q_EMIT draftChanged();
            Q_EMIT ready();
        });
}

void PlaceClimateController::save()
{
    setError(QString());
    take(services()->shop().change([draft = m_draft](Shop& shop) {
        return savePlaceClimate(shop, draft.id.text, draft.assumed, draft.follows);
    }),
        [this](const PlaceRecord&) { Q_EMIT saved(); });
}

} // namespace gw
