#include "app/shopthread.h"

#include "shop/care.h"

namespace gw {

namespace {

/// A backup folder that cannot be written to is tried again this much later, not at every act.
constexpr std::chrono::hours backupRetry { 1 };

/// A shop that was started empty has places and nothing booked in; it is not asked again.
Result<bool> isFirst(const Shop& shop)
{
    auto started = shop.store().setting("started");
    if (!started)
        return tl::unexpected(started.error());
    return *started ? Result<bool>(false) : isEmpty(shop);
}

} // namespace

ShopThread::ShopThread(Clock& clock, QObject* parent)
    : QObject(parent)
    , m_clock(clock)
    , m_worker(new QObject)
    , m_room(std::make_unique<Room>())
{
    m_room->closed = { ErrorCode::NotFound, "No store is open." };
    m_thread.setObjectName(QStringLiteral("shop"));
    m_worker->moveToThread(&m_thread);
    m_thread.start();
}

ShopThread::~ShopThread()
{
    // The connection was made on that thread and has to go there too, after the jobs that were asked before.
    QMetaObject::invokeMethod(
        m_worker,
        [this] {
            m_room->shop.reset();
            m_thread.quit();
        },
        Qt::QueuedConnection);
    m_thread.wait();
    delete m_worker;
}

void ShopThread::open(const StoreLocation& location, bool create)
{
    Q_EMIT opening();
    const Moment now = m_clock.now();
    QMetaObject::invokeMethod(
        m_worker,
        [this, location, create, now] {
            m_room->location = location;
            m_room->create = create;
            openNow(now);
        },
        Qt::QueuedConnection);
}

void ShopThread::reopen()
{
    Q_EMIT opening();
    const Moment now = m_clock.now();
    QMetaObject::invokeMethod(m_worker, [this, now] { openNow(now); }, Qt::QueuedConnection);
}

void ShopThread::openNow(Moment now)
{
    m_room->shop.reset();
    m_room->backupTried.reset();
    OpenOptions options;
    options.now = now;
    options.backupFolder = defaultBackupFolder(m_room->location);
    options.create = m_room->create;
    auto shop = Shop::open(m_room->location, options);
    auto first = shop ? isFirst(**shop) : Result<bool>(tl::unexpected(shop.error()));
    if (!first) {
        m_room->closed = first.error();
        Q_EMIT failed(first.error());
        return;
    }
    m_room->shop = std::move(*shop);
    Q_EMIT opened(*first);
    if (!*first)
        backUp(now);
}

QFuture<Result<ShopThread::Standing>> ShopThread::standing()
{
    return run([](const Shop& shop) {
        return isFirst(shop).map([](bool first) { return Standing { true, first }; });
    });
}

void ShopThread::afterAct(const ActDone& done, Moment now)
{
    QStringList containers;
    for (const ContainerId& id : done.containers)
        containers.append(QString::fromStdString(id.text));
    Q_EMIT changed(containers);

    const auto& tried = m_room->backupTried;
    if (!tried || dateOf(*tried) != dateOf(now))
        backUp(now);
}

void ShopThread::backUp(Moment now)
{
    m_room->backupTried = now;
    auto chosen = m_room->shop->store().setting("backup_folder");
    if (!chosen) {
        Q_EMIT backupFailed(chosen.error());
        return;
    }
    const std::string folder
        = *chosen && !(*chosen)->empty() ? **chosen : defaultBackupFolder(m_room->location);
    auto file = dailyBackup(*m_room->shop, folder, now);
    if (!file) {
        // Put back far enough that the next act after the wait tries again.
        m_room->backupTried = now - std::chrono::days(1) + backupRetry;
        Q_EMIT backupFailed(file.error());
        return;
    }
    if (!file->empty())
        Q_EMIT backupDone(QString::fromStdString(*file));
}

} // namespace gw
