#include "app/troublecontroller.h"

namespace gw {

TroubleController::TroubleController(QObject* parent)
    : Controller(parent)
{
}

void TroubleController::begin()
{
    ShopThread* shop = &services()->shop();
    connect(shop, &ShopThread::failed, this, &TroubleController::show);
    whenDone(shop->standing(), this, [this](const Result<ShopThread::Standing>& standing) {
        if (!standing)
            show(standing.error());
    });
}

void TroubleController::show(const Error& trouble)
{
    m_trouble = trouble;
    Q_EMIT shown();
}

QString TroubleController::advice() const
{
    switch (m_trouble.code) {
    case ErrorCode::StoreLocked:
        return tr("Close the other program that has it open, then try again.");
    case ErrorCode::StoreNewer:
        return tr("Update this program, or open another store. Nothing was changed in this one.");
    case ErrorCode::StoreForeign:
        return tr("Open another file, or start a new store beside it. Nothing was changed in this one.");
    case ErrorCode::StoreReadOnly:
        return tr(
            "Ask whoever looks after this machine for the right to write there, or open another store.");
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

bool TroubleController::retryHelps() const
{
    return m_trouble.code != ErrorCode::StoreNewer && m_trouble.code != ErrorCode::StoreForeign;
}

void TroubleController::retry() { services()->shop().reopen(); }

void TroubleController::openStore(const QUrl& file, bool make)
{
    const QString path = file.toLocalFile();
    if (path.isEmpty())
        return;
    services()->settings()->setStore(path);
    services()->shop().open({ path.toStdString() }, make);
}

} // namespace gw
