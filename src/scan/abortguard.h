#pragma once

#include <type_traits>

namespace gw {

/// Runs work(context); false when a library under it gave up by abort(), as a failed assertion does, in which
/// case the work was left where it stood: nothing it held is released, and what it was changing must not be
/// used. Nothing may be thrown. For libraries that distributions build with their assertions on and that meet
/// untrusted input there. Any thread.
bool survivesAbort(void (*work)(void* context), void* context);

template <class Work> bool survivesAbort(Work& work)
{
    static_assert(std::is_nothrow_invocable_v<Work&>);
    return survivesAbort([](void* context) { (*static_cast<Work*>(context))(); }, &work);
}

} // namespace gw
