#pragma once

#include <QFont>

namespace gw {

/// The typeface of what is printed, so that the text can be copied out of a PDF again: shaped by context, a
/// hyphen or a colon becomes a drawing that stands for no character there.
inline QFont paperFont(double points)
{
    QFont font(QStringLiteral("Inter"));
    font.setPointSizeF(points);
    font.setStyleStrategy(QFont::PreferNoShaping);
    return font;
}

} // namespace gw
