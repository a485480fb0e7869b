#include "exchange/readingsnames.h"

#include <algorithm>
#include <array>
#include <initializer_list>

#include <QRegularExpression>
#include <QString>
#include <QStringList>

#include "exchange/readingszone.h"

namespace gw {

namespace {

using namespace Qt::StringLiterals;

using Words = std::initializer_list<QLatin1String>;

bool anyOf(const QStringList& words, Words known)
{
    return std::any_of(words.begin(), words.end(),
        [&](const QString& word) { return std::find(known.begin(), known.end(), word) != known.end(); });
}

bool anyStarts(const QStringList& words, Words known)
{
    return std::any_of(words.begin(), words.end(), [&](const QString& word) {
        return std::any_of(known.begin(), known.end(), [&](auto start) { return word.startsWith(start); });
    });
}

/// Lower case, without accents; a degree sign is the word "deg", a percent sign "percent"; "tempC" and
/// "TempMax" are two words each.
QStringList wordsOf(std::string_view name)
{
    QString text = QString::fromUtf8(name.data(), qsizetype(name.size()));
    text.replace(u'\u00BA', u'\u00B0'); // the ordinal sign, often typed for it, would decompose into an "o"
    text = text.normalized(QString::NormalizationForm_KD);
    text.replace(u'%', u" percent "_s).replace(u'\u00B0', u" deg "_s);
    static const QRegularExpression hump(u"(\\p{Ll})(\\p{Lu})"_s);
    static const QRegularExpression accents(u"\\p{Mn}+"_s);
    static const QRegularExpression noWord(u"[^\\p{L}\\p{N}]+"_s);
    text.replace(hump, u"\\1 \\2"_s).remove(accents);
    return text.toLower().split(noWord, Qt::SkipEmptyParts);
}

std::optional<DegreeUnit> unitIn(const QStringList& words)
{
    const bool celsius
        = anyOf(words, { "c"_L1, "degc"_L1, "celsius"_L1, "centigrade"_L1, "tempc"_L1, "tc"_L1 });
    const bool fahrenheit = anyOf(words, { "f"_L1, "degf"_L1, "fahrenheit"_L1, "tempf"_L1, "tf"_L1 });
    if (celsius == fahrenheit)
        return {};
    return celsius ? DegreeUnit::Celsius : DegreeUnit::Fahrenheit;
}

std::string zoneIn(std::string_view name)
{
    static const QRegularExpression universal(
        u"(?<![A-Za-z])(?:UTC|GMT)(?![A-Za-z])\\s*([+-]\\d{1,2}(?::?\\d{2})?)?"_s,
        QRegularExpression::CaseInsensitiveOption);
    const auto found = universal.match(QString::fromUtf8(name.data(), qsizetype(name.size())));
    if (!found.hasMatch())
        return {};
    return zoneNamed("UTC" + found.captured(1).toStdString()).value_or("");
}

} // namespace

ColumnName columnName(std::string_view name)
{
    const QStringList words = wordsOf(name);
    ColumnName column;
    column.unit = unitIn(words);
    column.zone = zoneIn(name);
    column.time = anyStarts(words, { "date"_L1, "timestamp"_L1, "datum"_L1, "zeit"_L1, "uhrzeit"_L1 })
        || anyOf(words,
            { "time"_L1, "datetime"_L1, "day"_L1, "hour"_L1, "clock"_L1, "when"_L1, "at"_L1, "tag"_L1,
                "heure"_L1, "jour"_L1, "fecha"_L1, "hora"_L1, "ora"_L1, "tijd"_L1, "dato"_L1, "tid"_L1 });
    column.humidity = anyStarts(words, { "humid"_L1, "feucht"_L1, "luftfeucht"_L1, "humed"_L1, "umid"_L1 })
        || anyOf(words, { "rh"_L1, "hum"_L1, "percent"_L1, "rf"_L1, "percentrh"_L1 });
    column.temperature = !column.humidity
        && (anyStarts(words, { "temp"_L1 }) || anyOf(words, { "tmin"_L1, "tmax"_L1, "tc"_L1, "tf"_L1 })
            || column.unit.has_value());
    column.plainValue
        = anyOf(words, { "value"_L1, "reading"_L1, "measurement"_L1, "wert"_L1, "messwert"_L1, "t"_L1 });
    column.low = anyOf(words, { "low"_L1, "lowest"_L1, "min"_L1, "minimum"_L1, "tmin"_L1, "mini"_L1 });
    column.high = anyOf(words, { "high"_L1, "highest"_L1, "max"_L1, "maximum"_L1, "tmax"_L1, "maxi"_L1 });
    column.mean = anyOf(words, { "mean"_L1, "avg"_L1, "average"_L1, "mittel"_L1, "mittelwert"_L1 });
    column.other = anyOf(words,
        { "dew"_L1, "dewpoint"_L1, "wet"_L1, "index"_L1, "feels"_L1, "apparent"_L1, "alarm"_L1, "alert"_L1,
            "limit"_L1, "target"_L1, "setpoint"_L1, "threshold"_L1, "battery"_L1, "taupunkt"_L1, "delta"_L1,
            "offset"_L1, "diff"_L1 });
    // "date" and "temperature" in one name are two columns run together, or a title.
    column.time = column.time && !column.temperature && !column.humidity;
    return column;
}

bool isUnitCell(std::string_view cell)
{
    const QStringList words = wordsOf(cell);
    return std::all_of(words.begin(), words.end(), [](const QString& word) {
        return anyOf({ word },
            { "c"_L1, "f"_L1, "deg"_L1, "degc"_L1, "degf"_L1, "celsius"_L1, "fahrenheit"_L1, "percent"_L1,
                "rh"_L1, "utc"_L1, "gmt"_L1, "local"_L1, "hh"_L1, "mm"_L1, "ss"_L1, "dd"_L1, "yy"_L1,
                "yyyy"_L1, "v"_L1, "hpa"_L1, "unit"_L1, "units"_L1 });
    });
}

} // namespace gw
