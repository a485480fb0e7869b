#include "app/readingsimportcontroller.h"

#include <QLocale>

#include "app/readingswords.h"
#include "app/words.h"

namespace gw {

ReadingsImportController::ReadingsImportController(QObject* parent)
    : Controller(parent)
    , m_doubts(readingsDoubtRoles)
    , m_setAside(setAsideRoles)
{
    constexpr int often = 100; // ms: as often as a person sees a bar move
    m_poll.setInterval(often);
    connect(&m_poll, &QTimer::timeout, this, [this] {
        const auto total = m_running ? m_running->total.load() : 0;
        m_progress = total > 0 ? static_cast<double>(m_running->done.load()) / static_cast<double>(total) : 0;
        Q_EMIT progressed();
    });
}

void ReadingsImportController::setStage(Stage stage)
{
    m_stage = stage;
    Q_EMIT stageChanged();
    Q_EMIT looked();
}

void ReadingsImportController::reset()
{
    m_path.clear();
    m_choices = {};
    m_answered = false;
    m_look = {};
    m_found.clear();
    m_import = {};
    m_doubts.setRows({});
    m_setAside.setRows({});
    clearError();
    setStage(Choosing);
}

void ReadingsImportController::look(const QUrl& file)
{
    reset();
    m_path = file.toLocalFile();
    lookAgain();
}

void ReadingsImportController::lookAgain()
{
    setError(QString());
    take(services()->shop().run(
             [path = m_path.toStdString(), choices = m_choices, now = services()->clock().now()](
                 const Shop& shop) { return lookAtReadingsFor(shop, path, choices, now); }),
        [this](ReadingsLook look) { show(std::move(look)); });
}

void ReadingsImportController::show(ReadingsLook look)
{
    m_look = std::move(look);
    m_found = foundText(m_look);
    std::vector<ShownRow> rows;
    for (const Doubt& doubt : m_look.doubts) {
        QStringList choices;
        for (const std::string& choice : doubt.choices)
            choices.append(q(choice));
        rows.push_back({ q(optionOf(doubt.kind)),
            { q(doubt.question), choices, doubt.taken ? static_cast<int>(*doubt.taken) : -1 } });
    }
    m_doubts.setRows(std::move(rows));
    setStage(Looked);
}

// Another look, for one answer may settle or raise another doubt. What was answered is asked no more, and
// stands among what was found.
void ReadingsImportController::answer(int doubt, int choice)
{
    if (m_stage != Looked || busy() || doubt < 0 || doubt >= static_cast<int>(m_look.doubts.size()))
        return;
    m_answered = true;
    m_choices = gw::answered(
        m_choices, m_look.doubts[static_cast<std::size_t>(doubt)], static_cast<std::size_t>(choice));
    lookAgain();
}

void ReadingsImportController::askAgain()
{
    if (m_stage != Looked || busy())
        return;
    m_choices = {};
    m_answered = false;
    lookAgain();
}

void ReadingsImportController::start()
{
    if (!canStart())
        return;
    setError(QString());
    m_running = std::make_shared<UnderWay>();
    m_progress = 0;
    setStage(Running);
    m_poll.start();
    auto answer = services()->shop().change(
        [place = m_place.toStdString(), path = m_path.toStdString(), choices = m_choices,
            now = services()->clock().now(), running = m_running](Shop& shop) {
            return importReadings(
                shop, place, path, choices, now, [running](std::int64_t done, std::int64_t total) {
                    running->done = done;
                    running->total = total;
                    return !running->cancelled;
                });
        });
    // Goes on, and is said, even when the page was left meanwhile.
    whenDone(answer, this, [this](const Result<ReadingsImport>& import) {
        m_poll.stop();
        if (!import)
            setStage(Looked);
    });
    whenDone(answer, services(), [services = services()](const Result<ReadingsImport>& import) {
        services->say(q(import ? import->said : import.error().sentence));
    });
    take(answer, [this](ReadingsImport import) { report(std::move(import)); });
}

void ReadingsImportController::cancel()
{
    if (m_running)
        m_running->cancelled = true;
}

void ReadingsImportController::report(ReadingsImport import)
{
    m_import = std::move(import);
    std::vector<ShownRow> rows;
    for (const SetAside& row : m_import.listed)
        rows.push_back(
            { QString::number(rows.size()), { tr("Line %1").arg(row.line), q(row.text), q(row.why) } });
    m_setAside.setRows(std::move(rows));
    setStage(m_import.cancelled ? Looked : Done);
}

QStringList ReadingsImportController::reportNames() const
{
    return { tr("Rows in the file"), tr("Taken"), tr("Already there"), tr("Another reading stood there"),
        tr("Set aside") };
}

QStringList ReadingsImportController::reportValues() const
{
    QStringList values;
    for (std::int64_t count :
        { m_import.rows, m_import.added, m_import.alreadyThere, m_import.different, m_import.setAside })
        values.append(QLocale().toString(static_cast<qlonglong>(count)));
    return values;
}

} // namespace gw
