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
    connect(shop, &ShopThread::failed, this, [this](const Error& error) {
        m_trouble = error;
        setState(Trouble);
    });
    connect(shop, &ShopThread::backupFailed, this,
        [this](const Error& error) { setBackupTrouble(QString::fromStdString(error.sentence)); });
    connect(shop, &ShopThread::backupDone, this, [this] { setBackupTrouble({}); });
    connect(shop, &ShopThread::changed, this, &WindowController::count);
    connect(&services()->clock(), &Clock::dayChanged, this, &WindowController::count);

    // The store may have been opened before the window came: ask rather than miss the signal.
    // One that is not open yet is no trouble.
    shop->standing().then(this, [this](const Result<ShopThread::Standing>& standing) {
        if (standing && m_state == Opening)
            setState(standing->first ? FirstStart : Ready);
    });
}

QString WindowController::advice() const
{
    switch (m_trouble.code) {
    case ErrorCode::StoreLocked:
        return tr("Close the other program that has it open, then try again.");
    case ErrorCode::StoreNewer:
        return tr("Update this program, or open another store. Nothing was changed in this one.");
    case ErrorCode::StoreForeign:
        return tr("Open another file, or start a new store beside it. Nothing was changed in this one.");
    case ErrorCode::StoreReadOnly:
        return tr("Ask whoever looks after this machine for the right to write there, or open another store.");
    case ErrorCode::StoreFull:
        return tr("Make room on the disk, then try again.");
    case ErrorCode::StoreDamaged:
        return tr("Put a backup back in its place, or open another store. Nothing was changed in this one.");
    case ErrorCode::StoreUnreachable:
        return tr("See that the server runs and that this machine is on its network, then try again.");
    default:
        return tr("Try again, or open another store.");
    }
}

bool WindowController::retryHelps() const
{
    return m_trouble.code != ErrorCode::StoreNewer && m_trouble.code != ErrorCode::StoreForeign;
}

void WindowController::retry()
{
    setState(Opening);
    services()->shop().reopen();
}

void WindowController::openStore(const QUrl& file, bool make)
{
    const QString path = file.isLocalFile() ? file.toLocalFile() : file.toString();
    if (path.isEmpty())
        return;
    setState(Opening);
    services()->settings()->setStore(path);
    services()->shop().open({ path.toStdString() }, make);
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
