#include "exchange/readingscells.h"

#include <cmath>

#include "measure/number.h"

namespace gw {

namespace {

using std::chrono::milliseconds;
using std::chrono::minutes;

constexpr bool isDigit(char c) { return c >= '0' && c <= '9'; }
constexpr bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

/// Walks over a text; every step that does not fit leaves it where it was.
class Cursor {
public:
    explicit Cursor(std::string_view text)
        : m_text(text)
    {
    }
    bool done() const { return m_text.empty(); }
    char peek() const { return m_text.empty() ? '\0' : m_text.front(); }
    std::string_view rest() const { return m_text; }
    void skip(std::size_t count) { m_text.remove_prefix(count); }
    bool take(char c)
    {
        if (peek() != c || done())
            return false;
        skip(1);
        return true;
    }
    void blanks()
    {
        while (take(' '))
            ;
    }
    /// Up to `most` digits and no digit behind them.
    std::optional<int> number(int most, int* digits = nullptr)
    {
        int value = 0;
        int count = 0;
        while (count <= most && std::size_t(count) < m_text.size() && isDigit(m_text[std::size_t(count)])) {
            value = value * 10 + (m_text[std::size_t(count)] - '0');
            ++count;
        }
        if (count == 0 || count > most)
            return {};
        skip(std::size_t(count));
        if (digits != nullptr)
            *digits = count;
        return value;
    }
    /// A word in any case, with nothing of a word behind it.
    bool word(std::string_view word)
    {
        if (m_text.size() < word.size())
            return false;
        for (std::size_t i = 0; i < word.size(); ++i)
            if (lower(m_text[i]) != word[i])
                return false;
        if (m_text.size() > word.size() && isLetter(m_text[word.size()]))
            return false;
        skip(word.size());
        return true;
    }

private:
    std::string_view m_text;
};

std::optional<int> monthName(Cursor& at)
{
    constexpr std::array<std::string_view, 12> names { "january", "february", "march", "april", "may", "june",
        "july", "august", "september", "october", "november", "december" };
    for (std::size_t i = 0; i < names.size(); ++i)
        if (at.word(names[i]) || at.word(names[i].substr(0, 3)))
            return int(i) + 1;
    if (at.word("sept"))
        return 9;
    return {};
}

std::optional<WrittenDate> date(Cursor& at)
{
    WrittenDate date;
    for (int i = 0; i < 3; ++i) {
        if (i > 0) {
            const char mark = at.peek();
            const bool afterName = mark == ',' && date.nameAt >= 0;
            const bool between = mark == '-' || mark == '/' || mark == '.' || mark == ' ';
            const bool changes = i == 2 && mark != date.mark && date.nameAt < 0;
            if (!afterName && (!between || changes))
                return {};
            at.skip(1);
            if (!afterName)
                date.mark = mark;
            if (mark == ' ' || date.nameAt >= 0)
                at.blanks();
        }
        auto& digits = date.digits[std::size_t(i)];
        auto part = at.number(4, &digits);
        if (part && digits == 3)
            return {};
        if (!part && i < 2 && date.nameAt < 0) {
            part = monthName(at);
            date.nameAt = i;
        }
        if (!part)
            return {};
        date.parts[std::size_t(i)] = *part;
    }
    if (date.mark == ' ' && date.nameAt < 0)
        return {};
    return date;
}

std::optional<milliseconds> clock(Cursor& at)
{
    int digits = 0;
    const auto hour = at.number(2);
    if (!hour || !at.take(':'))
        return {};
    const auto minute = at.number(2, &digits);
    if (!minute || digits != 2)
        return {};
    int second = 0;
    int thousandths = 0;
    if (at.take(':')) {
        const auto seconds = at.number(2, &digits);
        if (!seconds || digits != 2)
            return {};
        second = *seconds;
        if (at.peek() == '.' || at.peek() == ',') {
            at.skip(1);
            int scale = 100;
            int count = 0;
            for (; isDigit(at.peek()); at.skip(1), ++count, scale /= 10)
                thousandths += (at.peek() - '0') * scale;
            if (count == 0)
                return {};
        }
    }
    int hours = *hour;
    if (at.done() && hours < 24 && *minute < 60 && second < 60)
        return std::chrono::hours(hours) + minutes(*minute) + std::chrono::seconds(second)
            + milliseconds(thousandths);
    const auto before = at;
    at.blanks();
    const bool morning = at.word("am") || at.word("a.m.");
    const bool afternoon = !morning && (at.word("pm") || at.word("p.m."));
    if (morning || afternoon) {
        if (hours < 1 || hours > 12)
            return {};
        hours = hours % 12 + (afternoon ? 12 : 0);
    } else {
        at = before;
    }
    const bool midnight = hours == 24 && *minute == 0 && second == 0 && thousandths == 0;
    if ((hours > 23 && !midnight) || *minute > 59 || second > 59)
        return {};
    return std::chrono::hours(hours) + minutes(*minute) + std::chrono::seconds(second)
        + milliseconds(thousandths);
}

} // namespace

std::string_view bare(std::string_view text)
{
    const auto isInk = [](char c) { return c > ' ' && c <= '~'; };
    if (!text.empty() && isInk(text.front()) && isInk(text.back()))
        return text;
    return trimmed(text);
}

bool WrittenDate::plain() const { return digits[0] == 4 || nameAt >= 0 || (mark == '.' && digits[2] == 4); }

std::optional<minutes> parseOffset(std::string_view text)
{
    Cursor at(text);
    const bool west = at.take('-');
    if (!west && !at.take('+'))
        return {};
    int digits = 0;
    auto hours = at.number(4, &digits);
    if (!hours || digits == 3)
        return {};
    int past = 0;
    if (digits == 4) {
        past = *hours % 100;
        hours = *hours / 100;
    } else if (at.take(':')) {
        const auto minute = at.number(2, &digits);
        if (!minute || digits != 2)
            return {};
        past = *minute;
    }
    // Clocks run from 12 h behind UTC to 14 h ahead of it.
    if (!at.done() || past > 59 || *hours * 60 + past > 14 * 60)
        return {};
    const minutes offset { *hours * 60 + past };
    return west ? -offset : offset;
}

std::optional<WrittenTime> parseWrittenTime(std::string_view text)
{
    text = bare(text);
    WrittenTime time;
    Cursor at(text);
    time.date = date(at);
    if (time.date) {
        if (at.done())
            return time;
        if (!at.take('T') && !at.take('t') && !at.take(' ') && !at.take(','))
            return {};
        at.blanks();
    } else {
        at = Cursor(text);
    }
    time.clock = clock(at);
    if (!time.clock)
        return {};
    at.blanks();
    const bool universal = at.word("z") || at.word("utc") || at.word("gmt");
    if (!at.done()) {
        time.offset = parseOffset(at.rest());
        if (!time.offset)
            return {};
    } else if (universal) {
        time.offset = minutes { 0 };
    }
    return time;
}

std::optional<Date> dayOf(const WrittenDate& date, DateOrder order, int thisYear)
{
    if (date.digits[0] == 4)
        order = DateOrder::YearFirst;
    else if (date.nameAt == 0)
        order = DateOrder::MonthFirst;
    else if (date.plain())
        order = DateOrder::DayFirst;
    std::size_t year = 2;
    std::size_t month = 1;
    std::size_t day = 0;
    if (order == DateOrder::YearFirst) {
        year = 0;
        day = 2;
    } else if (order == DateOrder::MonthFirst) {
        month = 0;
        day = 1;
    }
    if (date.digits[month] > 2 || date.digits[day] > 2 || date.digits[year] == 1)
        return {};
    int full = date.parts[year];
    if (date.digits[year] == 2)
        full += 2000 + full > thisYear ? 1900 : 2000;
    const Date found { std::chrono::year(full), std::chrono::month(unsigned(date.parts[month])),
        std::chrono::day(unsigned(date.parts[day])) };
    if (!found.ok())
        return {};
    return found;
}

std::optional<WrittenNumber> parseWrittenNumber(std::string_view text, char decimalSign)
{
    // Fifteen digits and a power of ten up to this are exact, and so is their quotient as far as it goes.
    constexpr int mostDigits = 15;
    static constexpr auto tens = [] {
        std::array<double, mostDigits + 1> powers { 1 };
        for (std::size_t i = 1; i < powers.size(); ++i)
            powers[i] = powers[i - 1] * 10;
        return powers;
    }();
    text = bare(text);
    bool below = false;
    if (text.starts_with("\xE2\x88\x92")) { // the minus sign of typesetters
        below = true;
        text.remove_prefix(3);
    } else if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
        below = text.front() == '-';
        text.remove_prefix(1);
    }
    WrittenNumber number;
    std::int64_t whole = 0;
    int digits = 0;
    bool fraction = false;
    std::size_t at = 0;
    for (; at < text.size(); ++at) {
        const char c = text[at];
        if (isDigit(c)) {
            if (++digits > mostDigits)
                return {};
            whole = whole * 10 + (c - '0');
            number.decimals += fraction ? 1 : 0;
        } else if (c == decimalSign && !fraction) {
            fraction = true;
        } else {
            break;
        }
    }
    if (digits == 0)
        return {};
    number.value = double(below ? -whole : whole) / tens[std::size_t(number.decimals)];
    text.remove_prefix(at);
    if (text.empty())
        return number;
    text = bare(text);
    if (text.empty())
        return number;
    for (const std::string_view degree : { "\xC2\xB0", "\xC2\xBA", "\xB0", "\xBA", "deg" })
        if (text.starts_with(degree)) {
            text = bare(text.substr(degree.size()));
            break;
        }
    if (text == "C" || text == "c" || text == "\xE2\x84\x83")
        number.unit = DegreeUnit::Celsius;
    else if (text == "F" || text == "f" || text == "\xE2\x84\x89")
        number.unit = DegreeUnit::Fahrenheit;
    else if (text != "%" && text != "%RH" && text != "% RH" && text != "%rh" && text != "% rh")
        return {};
    return number;
}

std::optional<Moment> stampOf(double number, StampForm form)
{
    constexpr double first = 631'152'000; // 1990-01-01 in seconds since 1970
    constexpr double last = 7'258'118'400; // 2200-01-01
    constexpr double spreadsheetDay0 = 25'569; // 1970-01-01 counted from 1899-12-30
    double seconds = number;
    if (form == StampForm::UnixMilliseconds)
        seconds = number / 1000;
    else if (form == StampForm::SpreadsheetDays)
        seconds = std::round((number - spreadsheetDay0) * 86'400);
    if (form == StampForm::Calendar || !(seconds >= first && seconds < last))
        return {};
    return Moment { milliseconds { std::llround(seconds * 1000) } };
}

Celsius toCelsius(double value, DegreeUnit unit)
{
    return { unit == DegreeUnit::Fahrenheit ? (value - 32) * 5 / 9 : value };
}

} // namespace gw
