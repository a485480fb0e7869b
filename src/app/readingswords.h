#pragma once

#include <QStringList>

#include "exchange/readingslook.h"

namespace gw {

/// What was found in a logger's file, one plain line for each thing a person may want to check. Any thread.
QStringList foundText(const ReadingsLook& look);

} // namespace gw
