#pragma once

#include <QFuture>
#include <QFutureWatcher>
#include <QObject>

namespace gw {

/// Calls then(answer) on the thread of an object when a future has its answer, unless the object has gone
/// before. QFuture::then with a context does the same on paper, but when the context is gone it stops a debug
/// build of Qt 6.4.
template <class R, class F> void whenDone(const QFuture<R>& future, QObject* object, F then)
{
    auto* watcher = new QFutureWatcher<R>(object);
    QObject::connect(
        watcher, &QFutureWatcherBase::finished, object, [watcher, then = std::move(then)]() mutable {
            watcher->deleteLater();
            // A job that its thread never came to has no answer.
            if (watcher->future().resultCount() > 0)
                then(watcher->result());
        });
    watcher->setFuture(future);
}

} // namespace gw
