#include "app/placecontroller.h"

#include <array>

#include "app/labeltext.h"
#include "app/words.h"
#include "shop/readingsimport.h"

namespace gw {

namespace {

/// Days back from now; 0: from the first reading.
constexpr std::array spanDays { 0, 365, 90, 14 };

} // namespace

PlaceController::PlaceController(QObject* parent)
    : Controller(parent)
    , m_figures(placeFigureRoles)
    , m_stands(standsHereRoles)
{
}

void PlaceController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &PlaceController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &PlaceController::read);
    connect(services()->settings(), &Settings::unitsChanged, this, &PlaceController::read);
    read();
}

void PlaceController::setPlace(const QString& id)
{
    if (id == m_place)
        return;
    m_place = id;
    Q_EMIT placeChanged();
    if (services())
        read();
}

QStringList PlaceController::spans() const
{
    return { tr("All of it"), tr("A year"), tr("Three months"), tr("Two weeks") };
}

void PlaceController::setSpan(int span)
{
    if (span == m_span || span < 0 || span >= static_cast<int>(spanDays.size()))
        return;
    m_span = span;
    Q_EMIT shown();
    read();
}

QString PlaceController::today() const
{
    return services() ? services()->clock().today().toString(Qt::ISODate) : QString();
}

QString PlaceController::unit() const
{
    return services() ? degreeUnit(services()->settings()->unitSystem()) : QString();
}

void PlaceController::read()
{
    if (m_place.isEmpty())
        return;
    const Moment now = services()->clock().now();
    std::optional<Moment> from;
    if (const int days = spanDays[static_cast<std::size_t>(m_span)]; days > 0)
        from = later(now, Days(-days));
    take(services()->shop().run([id = m_place.toStdString(), now, from, today = services()->clock().today(),
                                    units = services()->settings()->unitSystem()](const Shop& shop) {
        return climateShown(shop, id, now, from).map([&](const PlaceClimate& climate) {
            return placeShown(climate, now, units, today);
        });
    }),
        [this](PlaceShown shown) { show(std::move(shown)); });
}

void PlaceController::show(PlaceShown page)
{
    m_figures.setRows(std::move(page.figures));
    m_stands.setRows(std::move(page.stands));
    m_shown = std::move(page);
    m_trace.draw(m_shown.trace);
    m_loaded = true;
    Q_EMIT shown();
}

void PlaceController::typeLowHigh(const QString& day, const QString& low, const QString& high)
{
    setError(QString());
    const auto date = parseDate(day.toStdString());
    if (!date)
        return setError(date.error());
    const UnitSystem units = services()->settings()->unitSystem();
    const auto coldest = readTemperature(low, units);
    const auto warmest = readTemperature(high, units);
    if (!coldest || !warmest)
        return setError(!coldest ? coldest.error() : warmest.error());
    take(services()->shop().change([id = m_place.toStdString(), day = *date, low = *coldest, high = *warmest,
                                       now = services()->clock().now()](Shop& shop) {
        return gw::typeLowHigh(shop, id, day, low, high, now);
    }),
        [this](const LowHighTyped& done) {
            services()->say(q(done.said));
            Q_EMIT typed();
        });
}

} // namespace gw
