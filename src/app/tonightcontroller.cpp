#include "app/tonightcontroller.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "app/words.h"

namespace gw {

namespace {

constexpr Celsius begins { 0 }; ///< of the stepper: where frost begins

struct NightWords {
    Q_DECLARE_TR_FUNCTIONS(gw::TonightController)
};

QString verdictOf(ColdHarm harm)
{
    switch (harm) {
    case ColdHarm::Spoils:
        return verdictKey(Verdict::DoNotUse);
    case ColdHarm::ComesBack:
    case ColdHarm::BelowLimit:
        return verdictKey(Verdict::TestFirst);
    case ColdHarm::None:
        break;
    }
    return verdictKey(Verdict::Good);
}

/// How long it lasts in that cold, rounded down: bring it in sooner rather than later.
QString lastsText(const TonightRisk& risk)
{
    if (!risk.hoursToEvent)
        return {};
    if (*risk.hoursToEvent >= 1)
        return NightWords::tr("%n h", nullptr, static_cast<int>(*risk.hoursToEvent));
    return NightWords::tr("%1 min").arg(static_cast<int>(*risk.hoursToEvent * 60));
}

/// The place a low is most likely typed for: one that has one, else the one taken to get coldest.
int likeliest(const TonightController::Night& night)
{
    int likeliest = night.places.empty() ? -1 : 0;
    std::optional<Celsius> coldest;
    for (std::size_t i = 0; i < night.places.size(); ++i) {
        if (night.lows[i])
            return static_cast<int>(i);
        for (std::size_t quarter = 0; quarter < 4; ++quarter) {
            const auto range = night.places[i].assumed.of(quarter);
            if (range && (!coldest || range->low < *coldest)) {
                coldest = range->low;
                likeliest = static_cast<int>(i);
            }
        }
    }
    return likeliest;
}

Result<TonightController::Night> nightOf(const Shop& shop, Moment now)
{
    auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    TonightController::Night night;
    std::vector<std::pair<PlaceId, Celsius>> expected;
    for (const PlaceRecord& place : *places) {
        auto low = expectedLow(shop, place.id, now);
        if (!low)
            return tl::unexpected(low.error());
        night.lows.push_back(*low);
        if (*low)
            expected.emplace_back(place.id, **low);
    }
    const auto nights = tonight(shop, expected, now);
    if (!nights)
        return tl::unexpected(nights.error());
    for (const Tonight& each : *nights)
        night.said.append(q(each.said));
    for (const auto& [place, cold] : mostUrgentFirst(*nights))
        night.rows.push_back({ q(cold.container.text),
            { q(cold.materialName), q(cold.label), q(place), q(cold.text), lastsText(cold.risk),
                verdictOf(cold.risk.harm) } });
    night.places = std::move(*places);
    return night;
}

} // namespace

TonightController::TonightController(QObject* parent)
    : Controller(parent)
    , m_cold(coldRoles)
{
}

void TonightController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &TonightController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &TonightController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &TonightController::read);
    connect(services()->settings(), &Settings::unitsChanged, this, &TonightController::shown);
    read();
}

void TonightController::read()
{
    take(services()->shop().run(
             [now = services()->clock().now()](const Shop& shop) { return nightOf(shop, now); }),
        [this](Night night) { show(std::move(night)); });
}

void TonightController::show(Night night)
{
    m_cold.setRows(std::move(night.rows));
    m_said = night.said.join(u' ');
    m_night = std::move(night);
    m_loaded = true;
    const int last = static_cast<int>(m_night.places.size()) - 1;
    if (m_place < 0 || m_place > last)
        m_place = likeliest(m_night);
    Q_EMIT shown();
}

UnitSystem TonightController::units() const
{
    return services() ? services()->settings()->unitSystem() : UnitSystem::Metric;
}

QStringList TonightController::places() const
{
    QStringList names;
    for (const PlaceRecord& place : m_night.places)
        names.append(q(place.name));
    return names;
}

QStringList TonightController::lows() const
{
    QStringList texts;
    for (const auto& low : m_night.lows)
        texts.append(low ? temperatureText(*low, units()) : QString());
    return texts;
}

void TonightController::setPlace(int place)
{
    if (place == m_place || place < 0 || place >= static_cast<int>(m_night.places.size()))
        return;
    m_place = place;
    Q_EMIT shown();
}

bool TonightController::expected() const
{
    return m_place >= 0 && m_night.lows[static_cast<std::size_t>(m_place)].has_value();
}

int TonightController::low() const
{
    const Celsius low = expected() ? *m_night.lows[static_cast<std::size_t>(m_place)] : begins;
    return static_cast<int>(std::lround(degreesShown(low, units())));
}

int TonightController::coldest() const { return static_cast<int>(degreesShown(Celsius { -40 }, units())); }
int TonightController::warmest() const { return static_cast<int>(degreesShown(Celsius { 25 }, units())); }
QString TonightController::unit() const { return degreeUnit(units()); }

void TonightController::expect(int low) { keep(celsiusOf(low, units())); }

void TonightController::forget() { keep(std::nullopt); }

void TonightController::keep(std::optional<Celsius> low)
{
    if (m_place < 0)
        return;
    setError(QString());
    const std::string place = m_night.places[static_cast<std::size_t>(m_place)].id.text;
    take(services()->shop().change([place, low, now = services()->clock().now()](
                                       Shop& shop) { return expectLow(shop, place, low, now); }),
        [] {});
}

} // namespace gw
