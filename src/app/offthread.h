#pragma once

#include <memory>
#include <type_traits>

#include <QFuture>
#include <QPromise>
#include <QThreadPool>

namespace gw {

/// Runs a job that needs no store, such as printing, on a thread of the pool: neither the window nor the
/// shop's thread waits for it. Its answer comes as a future, to be taken up by Controller::take().
template <class F> auto offThread(F job) -> QFuture<std::invoke_result_t<F>>
{
    auto promise = std::make_shared<QPromise<std::invoke_result_t<F>>>();
    promise->start();
    QThreadPool::globalInstance()->start([promise, job = std::move(job)]() mutable {
        promise->addResult(job());
        promise->finish();
    });
    return promise->future();
}

} // namespace gw
