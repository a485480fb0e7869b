#include "app/stockfilecontroller.h"

#include <algorithm>

#include <QDir>
#include <QStandardPaths>

#include "app/words.h"

namespace gw {

namespace {

struct LookedAt {
    std::shared_ptr<const CsvTable> table;
    StockPlan plan;
};

} // namespace

StockFileController::StockFileController(QObject* parent)
    : Controller(parent)
    , m_notes(stockNoteRoles)
{
    constexpr int often = 100; // ms: as often as a person sees a count move
    m_poll.setInterval(often);
    connect(&m_poll, &QTimer::timeout, this, [this] {
        m_done = m_counter ? m_counter->load() : 0;
        Q_EMIT progressed();
    });
}

void StockFileController::setStage(Stage stage)
{
    m_stage = stage;
    Q_EMIT stageChanged();
}

void StockFileController::reset()
{
    if (m_stage == Running)
        return;
    m_table.reset();
    m_plan = {};
    m_said.clear();
    m_notes.setRows({});
    m_notListed = 0;
    clearError();
    setStage(Choosing);
}

bool StockFileController::canStart() const
{
    return m_stage == Looked && !refused() && m_plan.count(StockPlanRow::Fate::Coming) > 0;
}

QString StockFileController::columns() const
{
    QStringList lines;
    for (const StockColumn& column : stockColumns())
        lines.append(
            QStringLiteral("%1: %2").arg(QString::fromUtf8(column.name), QString::fromUtf8(column.means)));
    return lines.join(u'\n');
}

QUrl StockFileController::folder() const
{
    return QUrl::fromLocalFile(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
}

QUrl StockFileController::suggestedFile() const
{
    const QDir documents(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    const QString today = services() ? services()->clock().today().toString(Qt::ISODate) : QString();
    return QUrl::fromLocalFile(documents.filePath(tr("stock-%1.csv").arg(today)));
}

void StockFileController::takeOut(const QUrl& file)
{
    const QString path = file.toLocalFile();
    if (path.isEmpty())
        return;
    setError(QString());
    take(services()->shop().run([path, now = services()->clock().now()](
                                    const Shop& shop) { return takeOutStock(shop, now, path); }),
        [this, path](int lines) {
            services()->say(
                tr("%1: %2").arg(tr("%n container(s)", nullptr, lines), QDir::toNativeSeparators(path)));
        });
}

void StockFileController::look(const QUrl& file)
{
    if (m_stage == Running)
        return;
    reset();
    const QString path = file.toLocalFile();
    take(
        services()->shop().run([path, now = services()->clock().now()](const Shop& shop) -> Result<LookedAt> {
            auto table = readCsvFile(path);
            if (!table)
                return tl::unexpected(table.error());
            auto plan = planStock(shop, *table, now);
            if (!plan)
                return tl::unexpected(plan.error());
            return LookedAt { std::make_shared<const CsvTable>(std::move(*table)), std::move(*plan) };
        }),
        [this](LookedAt looked) {
            m_table = std::move(looked.table);
            show(std::move(looked.plan));
        });
}

void StockFileController::show(StockPlan plan)
{
    constexpr std::size_t shown = 100; // nobody reads further; the file is put right and looked at again
    m_plan = std::move(plan);
    m_said = q(m_plan.said());
    std::vector<ShownRow> rows;
    const auto note = [&rows](const QString& where, const std::string& text, bool refused) {
        rows.push_back({ QString::number(rows.size()), { where, q(text), refused } });
    };
    for (const StockRefusal& refusal : m_plan.refusals)
        note(tr("Line %1, %2").arg(refusal.line).arg(q(refusal.column)), refusal.why, true);
    for (const StockPlanRow& row : m_plan.rows) {
        if (row.fate == StockPlanRow::Fate::Differs)
            note(tr("Line %1, %2").arg(row.row.line).arg(q(row.row.label)), row.differs, false);
    }
    m_notListed = static_cast<int>(rows.size() - std::min(rows.size(), shown));
    rows.resize(std::min(rows.size(), shown));
    m_notes.setRows(std::move(rows));
    setStage(Looked);
}

void StockFileController::start()
{
    if (!canStart())
        return;
    setError(QString());
    m_counter = std::make_shared<std::atomic<int>>(0);
    m_done = 0;
    setStage(Running);
    m_poll.start();
    auto answer = services()->shop().act([table = m_table, counter = m_counter](Shop& shop, ActTime time) {
        return bringInStock(shop, *table, time, [counter](int lines) { *counter = lines; });
    });
    // Goes on, and is said, even when the page was left meanwhile.
    whenDone(answer, services(), [services = services()](const Result<ActDone>& done) {
        if (done)
            services->say(*done);
        else
            services->say(q(done.error().sentence));
    });
    whenDone(answer, this, [this](const Result<ActDone>& done) {
        m_poll.stop();
        if (done)
            m_said = q(done->said);
        setStage(done ? Done : Looked);
    });
    take(answer, [](const ActDone&) { });
}

} // namespace gw
