#pragma once

#include <map>

#include "app/rowsmodel.h"
#include "store/records.h"

/// Figures of classes and labels as a person reads them, each with where it is from. Any thread.
namespace gw {

QString figureName(const std::string& figure); ///< "Keeps sealed"
QString figureValue(const Figure& figure, UnitSystem units); ///< "5 to 20 years"
/// "Wood Handbook, chapter 10; from memory": the sources a figure names, by their titles.
QString sourceText(const Figure& figure, const std::map<std::string, std::string>& titles);
QString confidenceText(const Figure& figure); ///< "low confidence"; empty for a label's figure

/// One row for each figure: key, name, value, source, confidence, basis.
QByteArrayList figureRoles();
std::vector<ShownRow> figureRows(
    const std::vector<Figure>& figures, const std::map<std::string, std::string>& titles, UnitSystem units);

} // namespace gw
