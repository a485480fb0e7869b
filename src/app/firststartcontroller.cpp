#include "app/firststartcontroller.h"

#include <algorithm>

#include <QSet>
#include <QUuid>

#include "app/words.h"
#include "shop/care.h"

namespace gw {

FirstStartController::FirstStartController(QObject* parent)
    : Controller(parent)
    // Common practice, no source: what such rooms reach over a year in a temperate country. The screen says
    // that they are assumptions and lets each be changed.
    , m_places { { tr("Heated shop"), 15, 25, true }, { tr("Cool store"), 8, 20, true },
        { tr("Unheated lean-to"), -8, 32, true }, { tr("Refrigerator"), 2, 8, false } }
{
}

FirstStartController::Place* FirstStartController::at(int place)
{
    return place >= 0 && place < count() ? &m_places[place] : nullptr;
}

QStringList FirstStartController::names() const
{
    QStringList names;
    for (const Place& place : m_places)
        names.append(place.name);
    return names;
}

QList<int> FirstStartController::lows() const
{
    QList<int> lows;
    for (const Place& place : m_places)
        lows.append(place.low);
    return lows;
}

QList<int> FirstStartController::highs() const
{
    QList<int> highs;
    for (const Place& place : m_places)
        highs.append(place.high);
    return highs;
}

QList<bool> FirstStartController::chosen() const
{
    QList<bool> chosen;
    for (const Place& place : m_places)
        chosen.append(place.chosen);
    return chosen;
}

bool FirstStartController::canStart() const
{
    QSet<QString> names;
    for (const Place& place : m_places) {
        if (!place.chosen)
            continue;
        const QString name = place.name.trimmed().toLower();
        if (name.isEmpty() || names.contains(name))
            return false;
        names.insert(name);
    }
    return !names.isEmpty();
}

void FirstStartController::setName(int place, const QString& name)
{
    if (Place* changed = at(place)) {
        changed->name = name;
        Q_EMIT placesChanged();
    }
}

void FirstStartController::setLow(int place, int degrees)
{
    if (Place* changed = at(place)) {
        changed->low = degrees;
        changed->high = std::max(changed->high, degrees);
        Q_EMIT placesChanged();
    }
}

void FirstStartController::setHigh(int place, int degrees)
{
    if (Place* changed = at(place)) {
        changed->high = degrees;
        changed->low = std::min(changed->low, degrees);
        Q_EMIT placesChanged();
    }
}

void FirstStartController::setChosen(int place, bool chosen)
{
    if (Place* changed = at(place)) {
        changed->chosen = chosen;
        Q_EMIT placesChanged();
    }
}

void FirstStartController::addPlace()
{
    m_places.push_back({ QString(), 15, 25, true });
    Q_EMIT placesChanged();
}

void FirstStartController::startEmpty()
{
    std::vector<PlaceRecord> places;
    for (const Place& place : m_places) {
        if (!place.chosen)
            continue;
        PlaceRecord record;
        record.id.text = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
        record.name = place.name.trimmed().toStdString();
        record.assumed.year = Range<Celsius> { Celsius { static_cast<double>(place.low) },
            Celsius { static_cast<double>(place.high) } };
        places.push_back(std::move(record));
    }
    setError(QString());
    take(services()->shop().change([places](Shop& shop) {
        return shop.store().transact([&]() -> Result<void> {
            for (const PlaceRecord& place : places) {
                if (auto saved = shop.store().savePlace(place); !saved)
                    return saved;
            }
            return shop.store().setSetting("started", "empty");
        });
    }),
        [this] { services()->shop().reopen(); });
}

void FirstStartController::lookRound()
{
    setError(QString());
    const Moment now = services()->clock().now();
    take(services()->shop().change([now](Shop& shop) { return fillDemo(shop, now); }),
        [this](const DemoCounts&) { services()->shop().reopen(); });
}

} // namespace gw
