#pragma once

#include <string>
#include <vector>

#include <QImage>
#include <QString>

#include "measure/error.h"
#include "scan/symbolreader.h"

namespace gw {

/// A picture from a file, upright, its transparent parts on white, at most 16 million pixels: larger ones are
/// scaled down while they are read. Errors: FileUnreadable when the file is missing, may not be read, is no
/// picture, is broken, or is too large to be looked at.
Result<QImage> loadPicture(const QString& path);

/// All symbols in a picture file. Looks at it as it is first, then at halved, doubled, turned, inverted and
/// smoothed copies, and stops at the first that shows any; the outlines are in pixels of loadPicture()'s
/// picture. Blocks for up to a few seconds; any thread. Errors: those of loadPicture(), and NoSymbol.
Result<std::vector<Symbol>> readPicture(const QString& path, SymbolReader& reader);

/// The same with a reader of its own.
Result<std::vector<Symbol>> readPicture(const QString& path);

/// A picture made small enough to keep: a JPEG of at most 1600 pixels a side and so many bytes, without what
/// the camera wrote beside it (place, time). Empty when there is no picture, or it cannot be made that small.
std::string smallJpeg(const QImage& picture, std::size_t mostBytes);

} // namespace gw
