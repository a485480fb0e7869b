#include "app/orderplannedcontroller.h"

#include "app/words.h"
#include "shop/plannedwork.h"

namespace gw {

namespace {

struct Known {
    std::vector<ShownRow> rows;
    std::vector<std::pair<std::string, QString>> jobTypes;
};

Result<Known> readKnown(const Shop& shop, Moment now)
{
    Known known;
    const auto jobs = plannedWork(shop, now);
    if (!jobs)
        return tl::unexpected(jobs.error());
    for (const PlannedJob& job : *jobs)
        known.rows.push_back({ q(job.record.id.text),
            { q(job.jobType), q(job.record.piece),
                //: how many on which day: 2 × on 5 May 2026
                OrderPlannedController::tr("%1 × on %2").arg(job.record.pieces).arg(dateText(job.record.day)),
                job.overdue } });
    const auto types = shop.store().jobTypes();
    if (!types)
        return tl::unexpected(types.error());
    for (const JobTypeRecord& type : *types)
        known.jobTypes.emplace_back(type.id.text, q(type.name));
    return known;
}

} // namespace

OrderPlannedController::OrderPlannedController(QObject* parent)
    : Controller(parent)
    , m_rows(orderPlannedRoles)
{
}

void OrderPlannedController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &OrderPlannedController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &OrderPlannedController::read);
    read();
}

void OrderPlannedController::read()
{
    take(services()->shop().run(
             [now = services()->clock().now()](const Shop& shop) { return readKnown(shop, now); }),
        [this](Known now) {
            m_rows.setRows(std::move(now.rows));
            m_names.clear();
            m_ids.clear();
            for (auto& [id, name] : now.jobTypes) {
                m_ids.push_back(id);
                m_names.append(name);
            }
            Q_EMIT known();
        });
}

QString OrderPlannedController::today() const
{
    return services() ? services()->clock().today().toString(Qt::ISODate) : QString();
}

void OrderPlannedController::setJobType(int jobType)
{
    m_jobType = jobType;
    Q_EMIT draftChanged();
}

void OrderPlannedController::setDay(const QString& day)
{
    m_day = day;
    Q_EMIT draftChanged();
}

void OrderPlannedController::setPieces(int pieces)
{
    m_pieces = std::clamp(pieces, 1, 1000);
    Q_EMIT draftChanged();
}

void OrderPlannedController::setPiece(const QString& piece)
{
    m_piece = piece;
    Q_EMIT draftChanged();
}

void OrderPlannedController::add()
{
    setError(QString());
    if (m_jobType < 0 || m_jobType >= static_cast<int>(m_ids.size()))
        return;
    const auto day = parseDate(m_day.trimmed().toStdString());
    if (!day) {
        setError(day.error());
        return;
    }
    const PlannedDraft draft { m_ids[static_cast<std::size_t>(m_jobType)], *day, m_pieces,
        m_piece.simplified().toStdString() };
    take(services()->shop().change(
             [draft, now = services()->clock().now()](Shop& shop) { return planJob(shop, draft, now); }),
        [this](const PlannedJob&) {
            m_piece.clear();
            m_pieces = 1;
            Q_EMIT draftChanged();
            Q_EMIT added();
        });
}

void OrderPlannedController::done(const QString& key) { set(key, true); }
void OrderPlannedController::drop(const QString& key) { set(key, false); }

void OrderPlannedController::set(const QString& key, bool done)
{
    setError(QString());
    const PlannedState state = done ? PlannedState::Done : PlannedState::Dropped;
    take(services()->shop().change([id = key.toStdString(), state, now = services()->clock().now()](
                                       Shop& shop) { return setPlanned(shop, id, state, now); }),
        [](const PlannedJob&) {});
}

} // namespace gw
