#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "measure/error.h"
#include "measure/moment.h"

class QString;

namespace gw {

enum class TextEncoding { Utf8, Latin1, Utf16Little, Utf16Big };
enum class DateOrder { YearFirst, DayFirst, MonthFirst };
enum class DegreeUnit { Celsius, Fahrenheit };
enum class StampForm { Calendar, UnixSeconds, UnixMilliseconds, SpreadsheetDays };
enum class RowOrder { OldestFirst, NewestFirst, Mixed };

/// How a file of readings is written: what was found in it or chosen by a person. Columns count from 0.
struct ReadingsLayout {
    TextEncoding encoding = TextEncoding::Utf8;
    char delimiter = ',';
    char decimalSign = '.';
    int headerLine = 0; ///< 0 when the file has none; rows begin on firstRowLine
    int firstRowLine = 1;
    std::vector<std::string> columns; ///< names as the file writes them, or "column 1" where it has none
    std::size_t width = 0; ///< cells that a row has at the least; a shorter one was cut
    std::size_t timeColumn = 0; ///< date, or date and time of day
    std::optional<std::size_t> clockColumn; ///< time of day where it has its own column
    std::optional<std::size_t> temperatureColumn; ///< either this one, or both below
    std::optional<std::size_t> lowColumn, highColumn;
    std::optional<std::size_t> humidityColumn;
    StampForm stamp = StampForm::Calendar;
    DateOrder dateOrder = DateOrder::YearFirst;
    DegreeUnit unit = DegreeUnit::Celsius;
    std::string zone; ///< "UTC", "UTC+02:00" or an IANA id; an offset written in a time wins over it
    RowOrder order = RowOrder::OldestFirst;
    bool daily = false; ///< a row is the low and high of a local day
    friend bool operator==(const ReadingsLayout&, const ReadingsLayout&) = default;
};

/// What a person said about a file, and what the shop takes where nobody did.
struct ReadingsChoices {
    std::optional<DateOrder> dateOrder {};
    std::optional<DegreeUnit> unit {}; ///< wins over the file's own word
    std::optional<DegreeUnit> unitWhereSilent {}; ///< only where neither the file nor its values tell
    std::optional<std::string> zone {}; ///< "UTC", "+02:00", "UTC+02:00" or an IANA id
    std::optional<std::string> column {}; ///< the temperature column's name, or its number from 1
    std::optional<std::string> timeColumn {}; ///< likewise
    std::optional<std::string> humidityColumn {}; ///< likewise
    std::string shopZone = "UTC"; ///< IANA id; taken, and said so, for a file that names no zone
};

enum class DoubtKind { DateOrder, Unit, Zone, Column };

/// A thing the file leaves open, put as a question with the answers to choose from.
struct Doubt {
    DoubtKind kind = DoubtKind::Unit;
    std::string question;
    std::vector<std::string> choices; ///< at least two, in a person's words
    std::vector<std::string> values; ///< the same as the command line's option takes them
    std::optional<std::size_t> taken; ///< the choice the layout goes by meanwhile; none: it must be answered
};

/// "--date-order", "--unit", "--zone", "--column".
std::string optionOf(DoubtKind kind);
/// The choices with one doubt answered by the number of its choice, for another look.
ReadingsChoices answered(ReadingsChoices choices, const Doubt& doubt, std::size_t choice);
/// An option's value into the choices. Errors: BadInput, naming the values there are.
Result<void> setChoice(ReadingsChoices& choices, DoubtKind kind, const std::string& value);
/// The refusal, naming the options that settle it, when a doubt must be answered first; none otherwise.
std::optional<Error> unanswered(const std::vector<Doubt>& doubts, const std::string& fileName);

struct ReadingsLook {
    std::string name; ///< the file's name, for sentences
    std::int64_t bytes = 0;
    ReadingsLayout layout;
    std::vector<Doubt> doubts; ///< those with no choice taken first
    std::vector<std::vector<std::string>> sample; ///< the first rows, at most 8, as written
};

/// Looks at the first 4 MB of a logger's CSV, or any like it, and says how it is written. Errors:
/// FileUnreadable; BadInput with the file's name and, where one is at fault, the line: empty, no text, no
/// time column, no temperature column (naming those there are), a temperature column of words, a choice that
/// the file contradicts or does not have.
Result<ReadingsLook> lookAtReadings(const QString& path, Moment now, const ReadingsChoices& choices = {});

} // namespace gw
