#include "app/potscontroller.h"

#include <cmath>

#include "app/labeltext.h"
#include "app/words.h"

namespace gw {

namespace {

constexpr Celsius usual { 60 };

BatchNoteAsked askedOf(const QString& kind)
{
    BatchNoteAsked asked;
    asked.kind = batchNoteKindOfWord(kind.toStdString()).value_or(BatchNoteKind::Remark);
    return asked;
}

} // namespace

PotsController::PotsController(QObject* parent)
    : Controller(parent)
    , m_pots(potRoles)
{
}

void PotsController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &PotsController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &PotsController::read);
    connect(&services()->clock(), &Clock::minutePassed, this, &PotsController::read);
    read();
}

void PotsController::read()
{
    const Moment now = services()->clock().now();
    const QDate today = services()->clock().today();
    take(services()->shop().run([now, today](const Shop& shop) { return potsShown(shop, now, today); }),
        [this, now, today](PotsShown pots) {
            m_standing = pots.standing;
            m_next.clear();
            for (const PotAlarm& alarm : pots.alarms) {
                if (alarm.at <= now)
                    continue;
                m_next = tr("%1: %2").arg(whenText(alarm.at, today), alarm.text);
                break;
            }
            m_pots.setRows(std::move(pots.pots));
            m_loaded = true;
            Q_EMIT shown();
        });
}

int PotsController::usualDegrees() const
{
    const UnitSystem units = services() ? services()->settings()->unitSystem() : UnitSystem::Metric;
    return static_cast<int>(std::lround(degreesShown(usual, units)));
}

QString PotsController::degreeUnit() const
{
    return services() ? gw::degreeUnit(services()->settings()->unitSystem()) : QString();
}

void PotsController::note(const QString& pot, const QString& kind) { doNote(pot, askedOf(kind)); }

void PotsController::noteTemperature(const QString& pot, const QString& kind, int degrees)
{
    BatchNoteAsked asked = askedOf(kind);
    asked.temperature = celsiusOf(degrees, services()->settings()->unitSystem());
    doNote(pot, asked);
}

void PotsController::noteAmount(
    const QString& pot, const QString& kind, const QString& amount, const QString& unit)
{
    const auto read = readAmount(amount, unit);
    if (!read)
        return setError(read.error());
    BatchNoteAsked asked = askedOf(kind);
    if (asked.kind == BatchNoteKind::Used)
        asked.amount = *read;
    else
        asked.weight = *read;
    doNote(pot, asked);
}

void PotsController::doNote(const QString& pot, const BatchNoteAsked& asked)
{
    act([pot = pot.toStdString(), asked](
            Shop& shop, ActTime time) { return noteBatch(shop, pot, asked, time); },
        [this](const ActDone&) { Q_EMIT noted(); });
}

} // namespace gw
