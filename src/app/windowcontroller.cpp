#include "app/windowcontroller.h"

#include "shop/shelf.h"

namespace gw {

WindowController::WindowController(QObject* parent)
    : Controller(parent)
    , m_attention(6, 0)
{
}

void WindowController::begin()
{
    ShopThread* shop = &services()->shop();
    connect(shop, &ShopThread::opened, this, [this](bool first) { setState(first ? FirstStart : Ready); });
    connect(shop, &ShopThread::opening, this, [this] { setState(Opening); });
    connect(shop, &ShopThread::failed, this, [this] { setState(Trouble); });
    connect(shop, &ShopThread::backupFailed, this,
        [this](const Error& error) { setBackupTrouble(QString::fromStdString(error.sentence)); });
    connect(shop, &ShopThread::backupDone, this, [this] { setBackupTrouble({}); });
    connect(shop, &ShopThread::changed, this, &WindowController::count);
    connect(&services()->clock(), &Clock::dayChanged, this, &WindowController::count);

    // The store may have been opened before the window came: ask rather than miss the signal.
    // One that is not open yet is no trouble.
    whenDone(shop->standing(), this, [this](const Result<ShopThread::Standing>& standing) {
        if (standing && m_state == Opening)
            setState(standing->first ? FirstStart : Ready);
    });
}

void WindowController::setState(State state)
{
    if (state == Ready)
        count();
    m_state = state;
    Q_EMIT stateChanged();
}

void WindowController::setBackupTrouble(const QString& sentence)
{
    if (sentence == m_backupTrouble)
        return;
    m_backupTrouble = sentence;
    Q_EMIT backupTroubleChanged();
}

void WindowController::count()
{
    const Moment now = services()->clock().now();
    take(services()->shop().run([now](const Shop& shop) { return today(shop, now); }),
        [this](const Today& today) {
            m_attention[Navigation::Today] = static_cast<int>(today.items.size());
            Q_EMIT attentionChanged();
        });
}

} // namespace gw
