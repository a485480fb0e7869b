#include "app/ordercontroller.h"

#include <algorithm>
#include <array>

#include <QClipboard>
#include <QDir>
#include <QGuiApplication>
#include <QLocale>
#include <QStandardPaths>

#include "app/words.h"
#include "exchange/orderlist.h"
#include "exchange/orderpapers.h"
#include "shop/orders.h"

namespace gw {

namespace {

constexpr std::array serviceLevels { 80, 90, 95, 99 }; // percent
constexpr int furthest = 12; // months; further ahead nothing is known of the work
constexpr double weeksInMonth = meanMonth.count() / 7;
constexpr double lateDays = 14;

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
    readSupposable();
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

OrderAsked OrderController::asked() const
{
    OrderAsked asked { monthStart(), double(gw::serviceLevels[static_cast<std::size_t>(m_service)]) };
    if (m_moreOf > 0 && m_moreOf <= static_cast<int>(m_supposable.jobTypes.size())) {
        asked.whatIf.moreOf
            = JobTypeId { m_supposable.jobTypes[static_cast<std::size_t>(m_moreOf - 1)].first };
        asked.whatIf.morePerMonth = weeksInMonth;
    }
    if (m_lateSupplier > 0 && m_lateSupplier <= m_supposable.suppliers.size()) {
        asked.whatIf.lateSupplier = m_supposable.suppliers[m_lateSupplier - 1].toStdString();
        asked.whatIf.lateDays = lateDays;
    }
    return asked;
}

QStringList OrderController::kindsOfWork() const
{
    QStringList names { tr("No more than expected") };
    for (const auto& [id, name] : m_supposable.jobTypes)
        names.append(name);
    return names;
}

QStringList OrderController::suppliers() const
{
    return QStringList { tr("Nobody is late") } + m_supposable.suppliers;
}

QString OrderController::whatIf() const
{
    QStringList parts;
    if (m_moreOf > 0 && m_moreOf < kindsOfWork().size())
        parts.append(tr("one more %1 a week").arg(kindsOfWork().at(m_moreOf)));
    if (m_lateSupplier > 0 && m_lateSupplier < suppliers().size())
        parts.append(tr("%1 two weeks late").arg(suppliers().at(m_lateSupplier)));
    return parts.join(QStringLiteral(" · "));
}

void OrderController::setMoreOf(int index)
{
    m_moreOf = index;
    Q_EMIT askedChanged();
    read();
}

void OrderController::setLateSupplier(int index)
{
    m_lateSupplier = index;
    Q_EMIT askedChanged();
    read();
}

void OrderController::supposeNothing()
{
    m_moreOf = m_lateSupplier = 0;
    Q_EMIT askedChanged();
    read();
}

void OrderController::readSupposable()
{
    take(services()->shop().run(orderSupposable), [this](OrderSupposable all) {
        m_supposable = std::move(all);
        Q_EMIT askedChanged();
    });
}

void OrderController::read()
{
    if (!m_active)
        return;
    const Moment now = services()->clock().now();
    // An error comes as an answer too: it must put away the list before it.
    using Answer = Result<OrderShown>;
    take(services()->shop().run([asked = asked(), now](const Shop& shop) -> Result<Answer> {
        return Answer(orderShown(shop, asked, now));
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

QUrl OrderController::suggestedFile() const { return suggested(tr("order-%1.csv")); }
QUrl OrderController::suggestedPages() const { return suggested(tr("order-%1.pdf")); }

QUrl OrderController::suggested(const QString& name) const
{
    const QDir documents(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    return QUrl::fromLocalFile(documents.filePath(name.arg(q(formatDate(monthStart())).left(7))));
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

void OrderController::savePages(const QUrl& file)
{
    const QString path = file.toLocalFile();
    if (path.isEmpty())
        return;
    setError(QString());
    const Moment now = services()->clock().now();
    take(services()->shop().run(
             [plan = m_shown.plan, path, month = monthStart(), now](const Shop& shop) -> Result<void> {
                 const auto heading = orderHeading(shop, month, now);
                 if (!heading)
                     return tl::unexpected(heading.error());
                 return writeOrderPdf(plan, *heading, path);
             }),
        [this, path] {
            services()->say(tr("The list is in %1.").arg(QDir::toNativeSeparators(path)));
            Q_EMIT saved(path);
        });
}

void OrderController::copyText()
{
    setError(QString());
    const Moment now = services()->clock().now();
    take(services()->shop().run(
             [plan = m_shown.plan, month = monthStart(), now](const Shop& shop) -> Result<std::string> {
                 const auto heading = orderHeading(shop, month, now);
                 if (!heading)
                     return tl::unexpected(heading.error());
                 return orderMessage(plan, *heading);
             }),
        [this](const std::string& text) {
            QGuiApplication::clipboard()->setText(q(text));
            services()->say(tr("What to order is copied; paste it into a message."));
        });
}

void OrderController::keep()
{
    setError(QString());
    const Moment now = services()->clock().now();
    const OrderAsked asked { monthStart(), double(gw::serviceLevels[static_cast<std::size_t>(m_service)]) };
    take(services()->shop().change(
             [plan = m_shown.plan, asked, now](Shop& shop) { return keepOrderList(shop, plan, asked, now); }),
        [this](const OrderListId&) {
            services()->say(tr("The list is kept under Order lists."));
            Q_EMIT kept();
        });
}

} // namespace gw
