#include "scan/abortguard.h"

#include <csetjmp>
#include <csignal>
#include <mutex>

namespace gw {

namespace {

thread_local sigjmp_buf* wayOut = nullptr;
struct sigaction before {};

/// POSIX lets a handler leave abort() by a jump. An abort from elsewhere goes on to whoever was in charge of
/// it.
void onAbort(int signal)
{
    if (wayOut)
        siglongjmp(*wayOut, 1);
    sigaction(signal, &before, nullptr);
    raise(signal);
}

void listenForAborts()
{
    static std::once_flag once;
    std::call_once(once, [] {
        struct sigaction ours {};
        ours.sa_handler = onAbort;
        sigemptyset(&ours.sa_mask);
        sigaction(SIGABRT, &ours, &before);
    });
}

} // namespace

bool survivesAbort(void (*work)(void* context), void* context)
{
    listenForAborts();
    sigjmp_buf here;
    sigjmp_buf* volatile const outer = wayOut; // volatile: it must still be there after the jump
    if (sigsetjmp(here, 1) != 0) {
        wayOut = outer;
        return false;
    }
    wayOut = &here;
    work(context);
    wayOut = outer;
    return true;
}

} // namespace gw
