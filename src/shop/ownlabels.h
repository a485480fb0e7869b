#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "store/store.h"

namespace gw {

/// One of our label codes that no container or batch of the store carries, those of the running act included.
/// `draw` gives a number at random. Errors: those of the store; Conflict when it draws nothing free.
Result<std::string> freeOwnLabel(const Store& store, const std::function<std::uint64_t()>& draw);
/// The same, drawn by the device.
Result<std::string> freeOwnLabel(const Store& store);

} // namespace gw
