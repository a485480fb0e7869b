#pragma once

#include <optional>

#include <QJsonObject>
#include <QJsonValue>

#include "codes/code.h"
#include "demand/orderplan.h"
#include "gluing/glueup.h"
#include "shop/shelf.h"

namespace gw {

QJsonValue jsonText(const std::string& text);
QJsonValue jsonTextOrNull(const std::string& text); ///< an empty text is null
QJsonObject jsonAmount(Amount amount); ///< {value, unit}
QJsonValue jsonDate(const std::optional<Date>& date);
QJsonValue jsonMoment(const std::optional<Moment>& moment);
QJsonValue jsonNumber(const std::optional<double>& number);

QJsonObject jsonShelfItem(const ShelfItem& item);
QJsonObject jsonContainerPage(const ContainerPage& page);
QJsonObject jsonCode(const Code& code);
QJsonObject jsonGlueUp(const GlueUpAnswer& answer);
QJsonObject jsonOrder(const OrderPlan& plan, Date monthStart);

} // namespace gw
