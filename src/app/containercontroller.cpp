#include "app/containercontroller.h"

#include "app/figurewords.h"
#include "app/words.h"

namespace gw {

ContainerController::ContainerController(QObject* parent)
    : Controller(parent)
    , m_entries(entryRoles())
    , m_figures(figureRoles())
{
}

void ContainerController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &ContainerController::read);
    connect(&services()->clock(), &Clock::minutePassed, this, &ContainerController::read);
    read();
}

void ContainerController::setContainer(const QString& idOrLabel)
{
    if (idOrLabel == m_container)
        return;
    m_container = idOrLabel;
    Q_EMIT containerChanged();
    if (services())
        read();
}

void ContainerController::read()
{
    if (m_container.isEmpty())
        return;
    take(services()->shop().run([container = m_container.toStdString(), now = services()->clock().now(),
                                    today = services()->clock().today()](const Shop& shop) {
        return containerShown(shop, container, now, today);
    }),
        [this](ContainerShown page) { show(std::move(page)); });
}

void ContainerController::show(ContainerShown page)
{
    m_figures.setRows(std::move(page.figures));
    m_page = std::move(page);
    showEntries();
    m_loaded = true;
    setError(QString());
    Q_EMIT shown();
}

void ContainerController::showEntries()
{
    constexpr std::size_t newest = 25; // as many as a person scrolls through; the others are one press away
    std::vector<ShownRow> rows = m_page.entries;
    if (!m_allEntries && rows.size() > newest)
        rows.resize(newest);
    m_entries.setRows(std::move(rows));
}

void ContainerController::showAllEntries()
{
    m_allEntries = true;
    showEntries();
    Q_EMIT shown();
}

QString ContainerController::subtitle() const
{
    return m_loaded ? tr("%1, %2").arg(m_page.label, m_page.className) : QString();
}

QString ContainerController::mainAct() const
{
    // On hold it may be good again tomorrow: nothing is thrown away for that.
    if (m_page.onHold)
        return QStringLiteral("test");
    if (m_page.verdict == verdictKey(Verdict::DoNotUse))
        return QStringLiteral("retire");
    return m_page.verdict == verdictKey(Verdict::Good) ? QStringLiteral("use") : QStringLiteral("test");
}

QStringList ContainerController::places() const
{
    QStringList others = m_page.places;
    others.removeAll(m_page.place);
    return others;
}

} // namespace gw
