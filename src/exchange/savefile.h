#pragma once

#include <string_view>

#include "measure/error.h"

class QString;

namespace gw {

/// Writes a file whole or not at all: under another name first, then renamed over what was there.
/// Errors: FileUnwritable (no such folder, no right to write, it is a folder), StoreFull when the disk is
/// full.
Result<void> saveFile(const QString& path, std::string_view bytes);

} // namespace gw
