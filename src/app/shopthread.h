#pragma once

#include <memory>
#include <optional>
#include <type_traits>

#include <QFuture>
#include <QObject>
#include <QPromise>
#include <QStringList>
#include <QThread>

#include "app/clock.h"
#include "shop/acts.h"

namespace gw {

/// The one thread the shop lives on. The screens ask it and never wait: a job goes over as a value, its
/// answer comes back as a future, to be taken up on the GUI thread (Controller::take). A job that is asked
/// while the store cannot be opened answers with that error.
class ShopThread : public QObject {
    Q_OBJECT

public:
    explicit ShopThread(Clock& clock, QObject* parent = nullptr);
    /// Lets the jobs that were asked for end, then closes the store.
    ~ShopThread() override;

    /// Opens a store in place of the one that was open. Answers by opened() or failed().
    void open(const StoreLocation& location, bool create = true);
    /// Tries the same store again.
    void reopen();

    /// Whether a store is open, for who comes later than the signals; fails with what stood in the way.
    struct Standing {
        bool open = false;
        bool first = false; ///< see opened()
    };
    QFuture<Result<Standing>> standing();

    /// A question: job(const Shop&) or job(Shop&) -> Result<T>.
    template <class F> auto run(F job) -> QFuture<std::invoke_result_t<F, Shop&>>
    {
        return post<std::invoke_result_t<F, Shop&>>(std::move(job), [](ShopThread&, const auto&) { });
    }

    /// An act of a person: job(Shop&, ActTime) -> Result<ActDone>. The time is the moment this is called.
    /// Says changed() when it was done.
    template <class F> QFuture<Result<ActDone>> act(F job)
    {
        const Moment now = m_clock.now();
        return post<Result<ActDone>>(
            [job = std::move(job), now](Shop& shop) { return job(shop, ActTime { now, now }); },
            [now](ShopThread& self, const Result<ActDone>& done) {
                if (done)
                    self.afterAct(*done, now);
            });
    }

    /// Any other writing, such as of places and settings: job(Shop&) -> Result<T>. Says changed() when it was
    /// done.
    template <class F> auto change(F job) -> QFuture<std::invoke_result_t<F, Shop&>>
    {
        return post<std::invoke_result_t<F, Shop&>>(std::move(job), [](ShopThread& self, const auto& answer) {
            if (answer)
                Q_EMIT self.changed({});
        });
    }

Q_SIGNALS:
    void opening(); ///< one was asked for; opened() or failed() follows
    /// The store is open. first: nothing is in it, and nobody has said yet how to begin.
    void opened(bool first);
    void failed(const gw::Error& error); ///< the store could not be opened
    /// Something was written. The ids of the containers it touched; none when it may be anything.
    void changed(const QStringList& containers);
    void backupFailed(const gw::Error& error);
    void backupDone(const QString& file);

private:
    /// What the worker thread alone may touch.
    struct Room {
        std::unique_ptr<Shop> shop;
        Error closed;
        StoreLocation location;
        bool create = true;
        std::optional<Moment> backupTried;
    };

    template <class R, class F, class After> QFuture<R> post(F job, After after)
    {
        auto promise = std::make_shared<QPromise<R>>();
        promise->start();
        QFuture<R> future = promise->future();
        QMetaObject::invokeMethod(
            m_worker,
            [this, promise, job = std::move(job), after = std::move(after)]() mutable {
                R answer = m_room->shop ? job(*m_room->shop) : R(tl::unexpected(m_room->closed));
                promise->addResult(answer);
                promise->finish();
                after(*this, answer);
            },
            Qt::QueuedConnection);
        return future;
    }

    void openNow(Moment now);
    void afterAct(const ActDone& done, Moment now);
    void backUp(Moment now);

    Clock& m_clock;
    QThread m_thread;
    QObject* m_worker;
    std::unique_ptr<Room> m_room;
};

} // namespace gw
