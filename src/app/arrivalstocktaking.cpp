// The first stock-taking under Arrivals: walk along the shelves, scan what stands there, say how full it is.
#include <set>

#include "app/arrivalcontroller.h"
#include "app/words.h"

namespace gw {

void ArrivalController::beginStockTaking()
{
    services()->stockTaking() = { true, {}, {} };
    clearSummary();
    countTaken({});
    m_taken.setRows({});
    setState(Waiting);
}

void ArrivalController::endStockTaking()
{
    if (!stockTaking())
        return;
    m_summary = takenWords();
    m_summed = services()->stockTaking().containers;
    services()->stockTaking() = {};
    setState(Waiting);
}

void ArrivalController::clearSummary()
{
    m_summary.clear();
    m_summed.clear();
    Q_EMIT shown();
}

int ArrivalController::shelfAt() const
{
    const QString place = services() ? services()->stockTaking().place : QString();
    return place.isEmpty() ? -1 : static_cast<int>(m_form.places().indexOf(place));
}

void ArrivalController::setShelf(int at)
{
    // The last two of the form's places are "another" and "not known".
    const QStringList places = m_form.places();
    const bool named = at >= 0 && at < places.size() - 2;
    services()->stockTaking().place = named ? places[at] : QString();
    Q_EMIT shown();
}

void ArrivalController::standOnShelf(ArrivalDraft& draft) const
{
    const QString place = services()->stockTaking().place;
    if (!place.isEmpty())
        draft.place = place.toStdString();
    // Nobody knows how long it has stood here: no date is asked for, and none is made up.
    if (!draft.made && !draft.printed)
        draft.foundUndated = true;
}

void ArrivalController::bookInFilled(double share)
{
    if (busy() || !asksFill())
        return;
    m_leftShare = share;
    bookIn();
    m_leftShare = 1;
}

void ArrivalController::noteTaken(const ActDone& done)
{
    if (!stockTaking())
        return;
    for (const ContainerId& container : done.containers)
        services()->stockTaking().containers.append(q(container.text));
    read();
}

void ArrivalController::countTaken(const std::vector<ArrivalRow>& rows)
{
    std::set<QString> names;
    for (const ArrivalRow& row : rows)
        names.insert(row.name);
    m_takenCount = { static_cast<int>(rows.size()), static_cast<int>(names.size()) };
}

QString ArrivalController::takenWords() const
{
    if (m_takenCount.containers == 0)
        return tr("Nothing booked in yet.");
    return tr("%1 of %2 on the shelf now.")
        .arg(tr("%n container(s)", nullptr, m_takenCount.containers),
            tr("%n material(s)", nullptr, m_takenCount.materials));
}

} // namespace gw
