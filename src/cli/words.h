#pragma once

#include <QString>
#include <QStringList>

#include "demand/orderplan.h"
#include "gluing/glueup.h"
#include "shop/shelf.h"

namespace gw {

inline QString q(const std::string& text) { return QString::fromStdString(text); }
inline QString q(std::string_view text) { return QString::fromUtf8(text.data(), qsizetype(text.size())); }

/// Plain text for the terminal: aligned columns, nothing cut off, no colour.
QString shelfTable(const std::vector<ShelfItem>& items, UnitSystem units);
QString containerText(const ContainerPage& page, UnitSystem units);
QString glueUpText(const GlueUpAnswer& answer, UnitSystem units);
QString orderText(const OrderPlan& plan, Date monthStart, UnitSystem units);
QString todayText(const Today& today);

/// "good", "test first", "do not use", "not known"
QString spoken(Verdict verdict);

/// Rows of cells as columns two blanks apart; the last column is not padded.
QString columns(const QList<QStringList>& rows);

} // namespace gw
