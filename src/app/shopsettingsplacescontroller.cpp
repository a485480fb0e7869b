#include "app/shopsettingsplacescontroller.h"

#include <algorithm>
#include <cmath>

#include <QUuid>

#include "app/words.h"

namespace gw {

namespace {

/// What a heated room is taken to reach over a year; common practice, no source. Only where a draft begins.
constexpr Range<Celsius> usualRange { Celsius { 15 }, Celsius { 25 } };

Result<void> keepPlace(Shop& shop, PlaceRecord place)
{
    place.name = q(place.name).simplified().toStdString();
    if (place.name.empty())
        return fail(ErrorCode::BadInput, "Give the place a name.");
    if (place.id.empty())
        place.id.text = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
    return shop.store().savePlace(place);
}

} // namespace

ShopSettingsPlacesController::ShopSettingsPlacesController(QObject* parent)
    : Controller(parent)
    , m_places(shopPlaceRoles)
{
}

void ShopSettingsPlacesController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &ShopSettingsPlacesController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &ShopSettingsPlacesController::read);
    connect(services()->settings(), &Settings::unitsChanged, this, [this] {
        read();
        Q_EMIT draftChanged();
    });
    read();
}

void ShopSettingsPlacesController::read()
{
    take(services()->shop().run([](const Shop& shop) { return shop.store().places(); }),
        [this](std::vector<PlaceRecord> places) {
            const UnitSystem units = services()->settings()->unitSystem();
            std::vector<ShownRow> rows;
            rows.reserve(places.size());
            for (const PlaceRecord& place : places) {
                const auto& year = place.assumed.year;
                const QString range = year
                    ? tr("%1 to %2, assumed")
                          .arg(temperatureText(year->low, units), temperatureText(year->high, units))
                    : tr("Temperatures not known");
                rows.push_back({ q(place.id.text), { q(place.name), range } });
            }
            m_all = std::move(places);
            m_places.setRows(std::move(rows));
            m_loaded = true;
            Q_EMIT placesChanged();
        });
}

UnitSystem ShopSettingsPlacesController::units() const
{
    return services() ? services()->settings()->unitSystem() : UnitSystem::Metric;
}

QString ShopSettingsPlacesController::unit() const { return degreeUnit(units()); }

int ShopSettingsPlacesController::shown(Celsius degrees) const
{
    return static_cast<int>(std::lround(degreesShown(degrees, units())));
}

Celsius ShopSettingsPlacesController::kept(int degrees) const { return celsiusOf(degrees, units()); }

void ShopSettingsPlacesController::setName(const QString& name)
{
    m_draft.name = name.toStdString();
    Q_EMIT draftChanged();
}

void ShopSettingsPlacesController::setAssumed(bool assumed)
{
    if (assumed == this->assumed())
        return;
    m_draft.assumed.year = assumed ? std::optional(usualRange) : std::nullopt;
    Q_EMIT draftChanged();
}

// A figure that shows the same stays what it is: 18 °C is not turned into 64 °F and back.
void ShopSettingsPlacesController::setLow(int degrees)
{
    if (degrees == low())
        return;
    const Celsius low = kept(degrees);
    const Celsius high = assumed() ? m_draft.assumed.year->high : low;
    m_draft.assumed.year = Range<Celsius> { low, std::max(low, high) };
    Q_EMIT draftChanged();
}

void ShopSettingsPlacesController::setHigh(int degrees)
{
    if (degrees == high())
        return;
    const Celsius high = kept(degrees);
    const Celsius low = assumed() ? m_draft.assumed.year->low : high;
    m_draft.assumed.year = Range<Celsius> { std::min(low, high), high };
    Q_EMIT draftChanged();
}

void ShopSettingsPlacesController::draftNew()
{
    m_draft = {};
    m_draft.assumed.year = usualRange;
    clearError();
    Q_EMIT draftChanged();
}

void ShopSettingsPlacesController::draftOf(const QString& place)
{
    const auto found = std::find_if(
        m_all.begin(), m_all.end(), [&place](const PlaceRecord& known) { return q(known.id.text) == place; });
    if (found == m_all.end())
        return;
    m_draft = *found;
    clearError();
    Q_EMIT draftChanged();
}

void ShopSettingsPlacesController::save()
{
    setError(QString());
    take(services()->shop().change([place = m_draft](Shop& shop) { return keepPlace(shop, place); }),
        [this] { Q_EMIT saved(); });
}

} // namespace gw
