#include "app/readingswords.h"

#include <algorithm>

#include <QCoreApplication>

#include "app/words.h"

namespace gw {

namespace {

struct Found {
    Q_DECLARE_TR_FUNCTIONS(gw::ReadingsImportController)
};

QString columnName(const ReadingsLayout& layout, std::size_t column)
{
    return column < layout.columns.size() ? q(layout.columns[column])
                                          : Found::tr("column %1").arg(column + 1);
}

/// A doubt nobody has answered is asked, not told.
bool open(const ReadingsLook& look, DoubtKind kind)
{
    return std::any_of(look.doubts.begin(), look.doubts.end(),
        [kind](const Doubt& doubt) { return doubt.kind == kind && !doubt.taken; });
}

QString temperatureLine(const ReadingsLook& look)
{
    const ReadingsLayout& layout = look.layout;
    const QString unit = open(look, DoubtKind::Unit) ? Found::tr("in degrees still to be told")
        : layout.unit == DegreeUnit::Fahrenheit      ? Found::tr("in degrees Fahrenheit")
                                                     : Found::tr("in degrees Celsius");
    if (layout.temperatureColumn)
        return Found::tr("Temperatures in “%1”, %2.")
            .arg(columnName(layout, *layout.temperatureColumn), unit);
    return Found::tr("The low in “%1” and the high in “%2”, %3.")
        .arg(columnName(layout, layout.lowColumn.value_or(0)),
            columnName(layout, layout.highColumn.value_or(0)), unit);
}

QString timeLine(const ReadingsLook& look)
{
    const ReadingsLayout& layout = look.layout;
    const QString column = columnName(layout, layout.timeColumn);
    switch (layout.stamp) {
    case StampForm::UnixSeconds:
        return Found::tr("Times in “%1”, counted in seconds since 1970.").arg(column);
    case StampForm::UnixMilliseconds:
        return Found::tr("Times in “%1”, counted in milliseconds since 1970.").arg(column);
    case StampForm::SpreadsheetDays:
        return Found::tr("Times in “%1”, counted in days as spreadsheets do.").arg(column);
    case StampForm::Calendar:
        break;
    }
    if (open(look, DoubtKind::DateOrder))
        return Found::tr("Dates in “%1”.").arg(column);
    QString order;
    if (layout.dateOrder == DateOrder::DayFirst)
        order = Found::tr("the day first");
    else if (layout.dateOrder == DateOrder::MonthFirst)
        order = Found::tr("the month first");
    else
        order = Found::tr("the year first");
    return Found::tr("Dates in “%1”, %2.").arg(column, order);
}

} // namespace

QStringList foundText(const ReadingsLook& look)
{
    const ReadingsLayout& layout = look.layout;
    QStringList found { temperatureLine(look), timeLine(look) };
    if (!open(look, DoubtKind::Zone))
        found.append(Found::tr("Clock times of %1, unless a row says otherwise.").arg(q(layout.zone)));
    if (layout.humidityColumn)
        found.append(Found::tr("Humidity in “%1”.").arg(columnName(layout, *layout.humidityColumn)));
    if (layout.daily)
        found.append(Found::tr("Each row is a day's low and high."));
    if (layout.order == RowOrder::NewestFirst)
        found.append(Found::tr("The newest row comes first."));
    return found;
}

} // namespace gw
