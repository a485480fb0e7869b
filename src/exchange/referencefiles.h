#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/csv.h"
#include "measure/error.h"

namespace gw {

/// The tables of db/reference, which the program carries in itself; each named after its file without the
/// ending
/// ("classes", "class_figures" ...), in the order of the names. Their columns are described in
/// db/reference/README.md. Errors: StoreDamaged with file and line, should a table not be one.
Result<std::vector<CsvTable>> readReference();

/// The same for db/demo, the invented shop.
Result<std::vector<CsvTable>> readDemo();

/// A table by its name; null when there is none.
const CsvTable* tableNamed(const std::vector<CsvTable>& tables, std::string_view name);

/// Changes whenever a byte of the reference tables does: the first 12 hexadecimal digits of a SHA-256
/// over the names, lengths and bytes of all of them.
std::string referenceEdition();

} // namespace gw
