#include "app/ordercontroller.h"

#include <algorithm>
#include <array>

#include <QDir>
#include <QLocale>
#include <QStandardPaths>

#include "app/words.h"
#include "exchange/orderlist.h"

namespace gw {

namespace {

constexpr std::array serviceLevels { 80, 90, 95, 99 }; // percent
constexpr int furthest = 12; // months; further ahead nothing is known of the work

} // namespace

OrderController::OrderController(QObject* parent)
    : Controller(parent)
    , m_lines(orderLineRoles)
{
}

void OrderController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &OrderController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &OrderController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, [this] {
        Q_EMIT askedChanged();
        read();
    });
    // The month is counted from a day that only the services know.
    Q_EMIT askedChanged();
    read();
}

void OrderController::setActive(bool active)
{
    if (active == m_active)
        return;
    m_active = active;
    Q_EMIT activeChanged();
    if (m_active && services())
        read();
}

Date OrderController::monthStart() const
{
    const QDate today = services() ? services()->clock().today() : QDate();
    return fromQDate(QDate(today.year(), today.month(), 1).addMonths(m_ahead));
}

QString OrderController::month() const
{
    if (!services())
        return {};
    //: The month of the order list; see QLocale::toString for the letters.
    return QLocale().toString(toQDate(monthStart()), tr("MMMM yyyy"));
}

bool OrderController::canGoOn() const { return m_ahead < furthest; }

QStringList OrderController::serviceLevels() const
{
    QStringList texts;
    for (const int level : gw::serviceLevels)
        texts.append(tr("%1 %").arg(level));
    return texts;
}

void OrderController::setService(int service)
{
    if (service == m_service || service < 0 || service >= static_cast<int>(gw::serviceLevels.size()))
        return;
    m_service = service;
    Q_EMIT askedChanged();
    read();
}

void OrderController::stepMonth(int direction)
{
    const int ahead = std::clamp(m_ahead + direction, 0, furthest);
    if (ahead == m_ahead)
        return;
    m_ahead = ahead;
    Q_EMIT askedChanged();
    read();
}

void OrderController::read()
{
    if (!m_active)
        return;
    const double percent = gw::serviceLevels[static_cast<std::size_t>(m_service)];
    const Moment now = services()->clock().now();
    // An error comes as an answer too: it must put away the list before it.
    using Answer = Result<OrderShown>;
    take(services()->shop().run([month = monthStart(), percent, now](const Shop& shop) -> Result<Answer> {
        return Answer(orderShown(shop, month, percent, now));
    }),
        [this, turn = ++m_turn](Answer answer) {
            if (turn != m_turn)
                return;
            setError(answer ? QString() : q(answer.error().sentence));
            m_shown = answer ? std::move(*answer) : OrderShown {};
            m_lines.setRows(m_shown.lines);
            m_loaded = true;
            Q_EMIT shown();
        });
}

QString OrderController::total() const { return m_shown.totals.join(QStringLiteral(" + ")); }

QString OrderController::summary() const
{
    if (!m_loaded || !errorText().isEmpty())
        return {};
    if (m_lines.count() == 0)
        return m_shown.workExpected ? tr("Nothing wants buying") : QString();
    return tr("%1, %2").arg(
        tr("%n line(s)", nullptr, m_lines.count()), tr("%n pack(s)", nullptr, m_shown.packs));
}

QUrl OrderController::folder() const
{
    return QUrl::fromLocalFile(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
}

QUrl OrderController::suggestedFile() const
{
    const QDir documents(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    const QString month = q(formatDate(monthStart())).left(7);
    return QUrl::fromLocalFile(documents.filePath(tr("order-%1.csv").arg(month)));
}

void OrderController::saveCsv(const QUrl& file)
{
    const QString path = file.toLocalFile();
    if (path.isEmpty())
        return;
    setError(QString());
    // Files too are written off this thread.
    take(services()->shop().run(
             [plan = m_shown.plan, path](const Shop&) { return writeOrderCsv(plan, path); }),
        [this, path] {
            services()->say(tr("The list is in %1.").arg(QDir::toNativeSeparators(path)));
            Q_EMIT saved(path);
        });
}

} // namespace gw
