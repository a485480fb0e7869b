#pragma once

#include <QJsonObject>
#include <QString>

#include "shop/batch.h"

namespace gw {

/// A batch for programs. Errors: those of reading its containers' labels.
Result<QJsonObject> jsonBatch(const Shop& shop, const BatchState& state);

/// A batch for people: what it is, its clocks, why, what went in, what was noted.
Result<QString> batchText(const Shop& shop, const BatchState& state);

/// One line for each: label, name, what is left, verdict, where it is and what is due next.
QString batchTable(const std::vector<BatchState>& states, UnitSystem units, Moment asOf);

} // namespace gw
