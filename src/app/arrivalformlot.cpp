// The lot code of an arrival and the made date it may give.
#include <algorithm>

#include "app/arrivalform.h"
#include "app/words.h"

namespace gw {

std::vector<LotDate> ArrivalForm::possibleLotDates() const
{
    ArrivalDraft draft = m_read;
    draft.lot = m_lot.trimmed().toStdString();
    if (m_dateKind == UseBy || m_dateKind == BestBefore)
        (void)putDate(draft);
    return lotDatesOf(draft, m_lotContext);
}

QStringList ArrivalForm::lotDates() const
{
    QStringList words;
    for (const LotDate& date : possibleLotDates())
        words.append(q(date.words));
    if (!words.isEmpty())
        words.append(tr("None of these"));
    return words;
}

int ArrivalForm::lotDateAt() const
{
    const auto dates = possibleLotDates();
    if (m_noLotDate)
        return static_cast<int>(dates.size());
    ArrivalDraft draft = m_read;
    if (!putDate(draft) || draft.lotReadAs.empty())
        return -1;
    const auto at = std::ranges::find(dates, draft.lotReadAs, &LotDate::key);
    return at == dates.end() ? -1 : static_cast<int>(at - dates.begin());
}

QString ArrivalForm::lotDateNote() const
{
    const auto dates = possibleLotDates();
    const int at = lotDateAt();
    if (at < 0 || at >= static_cast<int>(dates.size()))
        return dates.empty() ? QString() : tr("A guess until you pick one. Not sure? Leave it.");
    const LotDate& date = dates[static_cast<std::size_t>(at)];
    const QString counts
        = date.days.low == date.days.high ? QString() : tr(" Its life counts from the first day.");
    return (date.asLastTime ? tr("Read as %1, as last time.") : tr("Read as %1; next time too."))
               .arg(q(date.manner))
        + counts;
}

void ArrivalForm::takeMade(const LotDate& date)
{
    takeLotDate(m_read, date);
    m_noLotDate = false;
    if (m_dateKind != UseBy && m_dateKind != BestBefore) {
        m_dateKind = MadeOn;
        m_date = q(formatDate(date.days.low));
    }
}

void ArrivalForm::forgetLotDate()
{
    if (m_read.lotReadAs.empty())
        return;
    m_read.lotReadAs.clear();
    m_read.made.reset();
    if (m_dateKind == MadeOn) {
        m_dateKind = -1;
        m_date.clear();
        m_asksDate = true;
    }
}

void ArrivalForm::readLotAsLastTime()
{
    if (m_dateKind == MadeOn || m_dateKind == FoundUndated || m_noLotDate)
        return;
    const auto dates = possibleLotDates();
    if (!dates.empty() && dates.front().asLastTime)
        takeMade(dates.front());
}

void ArrivalForm::setLotContext(const LotDateContext& context)
{
    m_lotContext = context;
    readLotAsLastTime();
    Q_EMIT changed();
}

void ArrivalForm::setLot(const QString& lot)
{
    if (lot == m_lot)
        return;
    // Another code: what was read from the one before is not said any more.
    forgetLotDate();
    m_noLotDate = false;
    m_lot = lot;
    readLotAsLastTime();
    Q_EMIT changed();
}

void ArrivalForm::chooseLotDate(int at)
{
    const auto dates = possibleLotDates();
    if (at < 0 || at > static_cast<int>(dates.size()))
        return;
    if (at == static_cast<int>(dates.size())) {
        forgetLotDate();
        m_noLotDate = true;
    } else {
        takeMade(dates[static_cast<std::size_t>(at)]);
    }
    Q_EMIT changed();
}

} // namespace gw
