#include "exchange/readingslook.h"

#include <algorithm>

#include <QString>
#include <QStringDecoder>

#include "exchange/readingshabits.h"
#include "exchange/readingsrow.h"
#include "exchange/readingsshape.h"
#include "exchange/readingsstream.h"
#include "exchange/readingszone.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// Enough for some ten thousand rows, a few weeks of readings a minute.
constexpr std::size_t lookBytes = std::size_t { 4 } * 1024 * 1024;
constexpr std::size_t delimiterBytes = std::size_t { 64 } * 1024;
constexpr std::size_t headRowCount = 400;
constexpr std::size_t sampleRows = 8;

bool isUtf8(std::string_view bytes)
{
    QStringDecoder decoder(QStringDecoder::Utf8);
    const QString text = decoder.decode(QByteArrayView(bytes.data(), qsizetype(bytes.size())));
    Q_UNUSED(text)
    return !decoder.hasError();
}

/// Zero bytes, or more than a few other control characters, among the first of a file.
bool isBinary(std::string_view text)
{
    text = text.substr(0, delimiterBytes);
    const auto controls = std::count_if(text.begin(), text.end(), [](char c) {
        return static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\r' && c != '\n' && c != '\f';
    });
    const auto zeros = std::count(text.begin(), text.end(), '\0');
    return zeros * 4 > std::ptrdiff_t(text.size()) || (controls - zeros) * 50 > std::ptrdiff_t(text.size())
        || (zeros > 0 && text.find('\0') < 64);
}

/// The first line of values that lists them for a sentence: "--unit C or --unit F".
std::string optionsOf(const Doubt& doubt)
{
    std::string options;
    for (std::size_t i = 0; i < doubt.values.size(); ++i) {
        if (i > 0)
            options += i + 1 == doubt.values.size() ? " or " : ", ";
        options += optionOf(doubt.kind) + " " + doubt.values[i];
    }
    return options;
}

} // namespace

std::string optionOf(DoubtKind kind)
{
    switch (kind) {
    case DoubtKind::DateOrder:
        return "--date-order";
    case DoubtKind::Unit:
        return "--unit";
    case DoubtKind::Zone:
        return "--zone";
    case DoubtKind::Column:
        break;
    }
    return "--column";
}

Result<void> setChoice(ReadingsChoices& choices, DoubtKind kind, const std::string& value)
{
    const QString word = QString::fromStdString(value).trimmed().toLower();
    switch (kind) {
    case DoubtKind::DateOrder:
        if (word == QStringLiteral("iso"))
            choices.dateOrder = DateOrder::YearFirst;
        else if (word == QStringLiteral("day-month"))
            choices.dateOrder = DateOrder::DayFirst;
        else if (word == QStringLiteral("month-day"))
            choices.dateOrder = DateOrder::MonthFirst;
        else
            return fail(ErrorCode::BadInput,
                inQuotes(value) + " is no order of dates; give iso, day-month or month-day.");
        break;
    case DoubtKind::Unit:
        if (word == QStringLiteral("c") || word == QStringLiteral("f"))
            choices.unit = word == QStringLiteral("c") ? DegreeUnit::Celsius : DegreeUnit::Fahrenheit;
        else
            return fail(ErrorCode::BadInput, inQuotes(value) + " is no unit of temperature; give C or F.");
        break;
    case DoubtKind::Zone:
        if (!zoneNamed(value))
            return fail(ErrorCode::BadInput,
                "There is no time zone " + inQuotes(value)
                    + "; give UTC, an offset such as +01:00, or a zone's name of the form Area/City.");
        choices.zone = zoneNamed(value);
        break;
    case DoubtKind::Column:
        choices.column = value;
        break;
    }
    return {};
}

ReadingsChoices answered(ReadingsChoices choices, const Doubt& doubt, std::size_t choice)
{
    if (choice < doubt.values.size()) {
        // The values of a doubt are always among those that may be set.
        const auto set = setChoice(choices, doubt.kind, doubt.values[choice]);
        Q_UNUSED(set)
    }
    return choices;
}

std::optional<Error> unanswered(const std::vector<Doubt>& doubts, const std::string& fileName)
{
    std::string sentence;
    for (const Doubt& doubt : doubts)
        if (!doubt.taken)
            sentence += (sentence.empty() ? fileName + ": " : " ") + doubt.question + " Add "
                + optionsOf(doubt) + ".";
    if (sentence.empty())
        return {};
    return Error { ErrorCode::BadInput, sentence };
}

Result<ReadingsLook> lookAtReadings(const QString& path, Moment now, const ReadingsChoices& choices)
{
    auto pieces = TextPieces::open(path);
    if (!pieces)
        return tl::unexpected<Error>(pieces.error());
    TextPieces& file = **pieces;
    ReadingsLook look;
    look.name = file.name();
    look.bytes = file.bytes();
    std::string text;
    bool whole = false;
    while (text.size() < lookBytes && !whole) {
        const auto piece = file.next();
        if (!piece)
            return tl::unexpected<Error>(piece.error());
        whole = piece->empty();
        text += *piece;
    }
    if (text.find_first_not_of(" \t\r\n") == std::string::npos)
        return fail(ErrorCode::BadInput, look.name + " is empty; export the readings again.");
    if (isBinary(text))
        return fail(ErrorCode::BadInput,
            look.name + " is not a table of text; export the readings as CSV and choose that file.");
    look.layout.encoding = file.encoding();
    if (look.layout.encoding == TextEncoding::Utf8 && !isUtf8(text)) {
        look.layout.encoding = TextEncoding::Latin1;
        text = QString::fromLatin1(text.data(), qsizetype(text.size())).toStdString();
    }

    look.layout.delimiter = delimiterOf(std::string_view(text).substr(0, delimiterBytes));
    int openQuoteLine = 0;
    const auto head = headRows(text, look.layout.delimiter, headRowCount, &openQuoteLine);
    if (openQuoteLine > 0)
        return tl::unexpected<Error>(openQuote(look.name, openQuoteLine));
    const auto names = shapeOf(look.name, head, choices, look.layout, look.doubts);
    if (!names)
        return tl::unexpected<Error>(names.error());
    const Looked looked { look.name, text, whole, head, *names, now, choices };
    if (auto habits = habitsOf(looked, look.layout, look.doubts); !habits)
        return tl::unexpected<Error>(habits.error());

    for (const HeadRow& row : head)
        if (row.line >= look.layout.firstRowLine && look.sample.size() < sampleRows)
            look.sample.push_back(row.cells);
    std::stable_partition(
        look.doubts.begin(), look.doubts.end(), [](const Doubt& doubt) { return !doubt.taken; });
    return look;
}

} // namespace gw
