#include "app/glueupcontroller.h"

#include <algorithm>

#include "app/words.h"

namespace gw {

namespace {

constexpr auto pause = std::chrono::milliseconds(120); // long enough to gather a held button's steps

std::optional<Celsius> degrees(const GlueUpCondition& condition)
{
    const auto value = condition.value();
    return value ? std::optional<Celsius>(Celsius { *value }) : std::nullopt;
}

} // namespace

GlueUpController::GlueUpController(QObject* parent)
    : Controller(parent)
    , m_air(GlueUpCondition::Kind::Temperature, tr("Room"))
    , m_wood(GlueUpCondition::Kind::Temperature, tr("Wood"))
    , m_humidity(GlueUpCondition::Kind::Humidity, tr("Humidity"))
    , m_woodMoisture(GlueUpCondition::Kind::WoodMoisture, tr("Wood moisture"))
    , m_gap(GlueUpCondition::Kind::Gap, tr("Widest gap"))
    , m_jobs(glueUpJobRoles)
    , m_gates(glueUpGateRoles)
    , m_uses(glueUpUseRoles)
    , m_weigh(glueUpNumberRoles)
    , m_clocks(glueUpNumberRoles)
    , m_glues(glueUpGlueRoles)
{
    m_pause.setSingleShot(true);
    m_pause.setInterval(pause);
    connect(&m_pause, &QTimer::timeout, this, &GlueUpController::check);
    for (const auto* condition : { &m_air, &m_wood, &m_humidity, &m_woodMoisture, &m_gap })
        connect(condition, &GlueUpCondition::changed, this, &GlueUpController::ask);
    connect(&m_more, &GlueUpMore::changed, this, &GlueUpController::ask);
}

void GlueUpController::begin()
{
    const auto takeUnits = [this] {
        for (auto* condition : { &m_air, &m_wood, &m_humidity, &m_woodMoisture, &m_gap })
            condition->setUnits(services()->settings()->unitSystem());
    };
    takeUnits();
    connect(services()->settings(), &Settings::unitsChanged, this, takeUnits);
    const auto again = [this] {
        readJobs();
        ask();
    };
    connect(&services()->shop(), &ShopThread::changed, this, again);
    connect(&services()->shop(), &ShopThread::opened, this, again);
    connect(&services()->clock(), &Clock::minutePassed, this, &GlueUpController::check);
    readJobs();
}

void GlueUpController::setActive(bool active)
{
    if (active == m_active)
        return;
    m_active = active;
    Q_EMIT activeChanged();
    if (m_active && services()) {
        readJobs();
        ask();
    }
}

void GlueUpController::readJobs()
{
    if (!m_active)
        return;
    take(services()->shop().run([](const Shop& shop) { return glueUpJobs(shop); }),
        [this](std::vector<ShownRow> jobs) {
            m_allJobs = std::move(jobs);
            showJobs();
            Q_EMIT askedChanged();
        });
    take(services()->shop().run([](const Shop& shop) { return GlueUpMore::read(shop); }),
        [this](GlueUpMore::Choices choices) { m_more.setChoices(std::move(choices)); });
}

void GlueUpController::showJobs()
{
    const QString sought = m_search.trimmed();
    std::vector<ShownRow> rows;
    for (const ShownRow& row : m_allJobs) {
        const bool found
            = std::any_of(row.values.begin(), row.values.end(), [&sought](const QVariant& value) {
                  return value.toString().contains(sought, Qt::CaseInsensitive);
              });
        if (sought.isEmpty() || found)
            rows.push_back(row);
    }
    m_jobs.setRows(std::move(rows));
}

void GlueUpController::setSearch(const QString& search)
{
    if (search == m_search)
        return;
    m_search = search;
    showJobs();
    Q_EMIT searchChanged();
}

void GlueUpController::setJobType(const QString& key)
{
    if (key == m_jobType)
        return;
    m_jobType = key;
    m_pieces = 1;
    ask();
}

QString GlueUpController::jobName() const
{
    for (const ShownRow& row : m_allJobs) {
        if (row.key == m_jobType)
            return row.values[0].toString();
    }
    return {};
}

QString GlueUpController::jobNote() const
{
    for (const ShownRow& row : m_allJobs) {
        if (row.key == m_jobType)
            //: a family of glue, then what is usual for the work and how much of it
            return tr("%1 · %2").arg(row.values[2].toString(), row.values[1].toString());
    }
    return {};
}

void GlueUpController::setPieces(int pieces)
{
    pieces = std::clamp(pieces, 1, 1000);
    if (pieces == m_pieces)
        return;
    m_pieces = pieces;
    ask();
}

QString GlueUpController::typingError() const
{
    for (const auto* condition : { &m_air, &m_wood, &m_humidity, &m_woodMoisture, &m_gap }) {
        if (!condition->errorText().isEmpty())
            return condition->errorText();
    }
    return {};
}

void GlueUpController::ask()
{
    ++m_turn;
    m_pause.start();
    Q_EMIT askedChanged();
    Q_EMIT shown(); // what is shown is no longer fresh
}

Conditions GlueUpController::conditions() const
{
    Conditions said;
    said.air = degrees(m_air);
    said.wood = degrees(m_wood);
    said.humidity = m_humidity.value();
    said.woodMoisture = m_woodMoisture.value();
    said.gapMm = m_gap.value();
    m_more.addTo(said);
    return said;
}

void GlueUpController::check()
{
    if (!m_active || !services())
        return;
    if (m_jobType.isEmpty()) {
        m_turnShown = m_turn;
        show({});
        return;
    }
    // An error comes as an answer too: it must put away the answer before it.
    using Answer = Result<GlueUpShown>;
    const GlueUpAsked asked { m_jobType.toStdString(), m_pieces, conditions(), services()->clock().now() };
    take(services()->shop().run(
             [asked](const Shop& shop) -> Result<Answer> { return Answer(glueUpShown(shop, asked)); }),
        [this, turn = m_turn](Answer answer) {
            if (turn != m_turn)
                return;
            m_turnShown = turn;
            if (!answer)
                setError(answer.error());
            else if (m_checkFailed)
                clearError();
            m_checkFailed = !answer;
            show(answer ? std::move(*answer) : GlueUpShown {});
        });
}

void GlueUpController::show(GlueUpShown shownNow)
{
    m_gates.setRows(std::move(shownNow.gates));
    m_uses.setRows(std::move(shownNow.uses));
    m_weigh.setRows(std::move(shownNow.weigh));
    m_clocks.setRows(std::move(shownNow.clocks));
    m_shown = std::move(shownNow);
    Q_EMIT shown();
}

QString GlueUpController::verdict() const
{
    if (m_shown.answer == QLatin1String("go"))
        return QStringLiteral("good");
    if (m_shown.answer == QLatin1String("fix_first"))
        return QStringLiteral("test_first");
    if (m_shown.answer == QLatin1String("stop"))
        return QStringLiteral("do_not_use");
    return QStringLiteral("not_known");
}

QString GlueUpController::answer() const
{
    if (m_shown.answer == QLatin1String("go"))
        return tr("Go ahead");
    if (m_shown.answer == QLatin1String("fix_first"))
        return tr("Fix first");
    if (m_shown.answer == QLatin1String("stop"))
        return tr("Stop");
    return m_shown.answer.isEmpty() ? QString() : tr("Not known yet");
}

QString GlueUpController::firstFix() const
{
    if (m_shown.answer != QLatin1String("go"))
        return m_shown.firstFix;
    return m_shown.warnings == 0 ? tr("Everything that was looked at passes.")
                                 : tr("Nothing stands against it; take care with what is marked below.");
}

void GlueUpController::setPiece(const QString& piece)
{
    if (piece == m_piece)
        return;
    m_piece = piece;
    Q_EMIT pieceChanged();
}

void GlueUpController::record()
{
    if (!canRecord())
        return;
    JobRecord job = m_shown.job;
    job.piece = m_piece.trimmed().toStdString();
    act([job, takings = m_shown.takings, fromBatches = m_shown.fromBatches](
            Shop& shop, ActTime time) { return useForJob(shop, takings, job, time, fromBatches); },
        [this](const ActDone&) {
            setPiece({});
            Q_EMIT recorded();
        });
    ask(); // comes after the act; until then there is nothing to record twice
}

void GlueUpController::findGlues()
{
    take(services()->shop().run(
             [asked = m_more.asked(m_gap.value())](const Shop& shop) { return whichGlueFor(shop, asked); }),
        [this](const WhichGlueAnswer& answer) {
            m_glues.setRows(glueRows(answer));
            m_gluesNote = q(answer.note);
            Q_EMIT gluesShown();
        });
}

} // namespace gw
