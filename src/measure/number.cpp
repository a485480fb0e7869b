#include "measure/number.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <string>

#include "measure/quoted.h"

namespace gw {

namespace {

using namespace std::string_view_literals;

/// ASCII white space, no-break space, thin space, narrow no-break space.
constexpr std::array blanks { " "sv, "\t"sv, "\n"sv, "\r"sv, "\v"sv, "\f"sv, "\u00A0"sv, "\u2009"sv,
    "\u202F"sv };

/// More digits than this are no amount anybody weighs.
constexpr std::size_t longestNumber = 24;

bool isDigit(char c) { return c >= '0' && c <= '9'; }

bool isMark(char c) { return c == '.' || c == ','; }

/// The sign's value; takes it off the text. Tablets offer the real minus sign (U+2212) too.
double takeSign(std::string_view& text)
{
    for (const std::string_view minus : { "-"sv, "\u2212"sv }) {
        if (text.starts_with(minus)) {
            text.remove_prefix(minus.size());
            return -1;
        }
    }
    if (text.starts_with('+'))
        text.remove_prefix(1);
    return 1;
}

/// A comma before exactly three digits is a thousands mark to half the world, unless nothing but a zero leads
/// it.
bool mayBeThousands(std::string_view whole, std::string_view decimals)
{
    return decimals.size() == 3 && !whole.empty() && whole.size() <= 3 && whole != "0";
}

tl::unexpected<Error> ambiguous(std::string_view number)
{
    return fail(ErrorCode::BadInput,
        inQuotes(number)
            + " can be read in two ways: type it without a thousands mark, with a point for the decimals.");
}

} // namespace

std::string numberWords(double value, int decimals, int leastDecimals)
{
    if (!std::isfinite(value))
        return "not a number";
    const double scale = std::pow(10, decimals);
    double rounded = std::abs(value) < 1e12 ? std::round(value * scale) / scale : value;
    if (rounded == 0)
        rounded = 0; // never "-0"
    char buffer[400];
    const auto end
        = std::to_chars(buffer, buffer + sizeof buffer, rounded, std::chars_format::fixed, decimals).ptr;
    std::string text(buffer, end);
    if (const auto point = text.find('.'); point != std::string::npos) {
        const auto shortest = point + 1 + static_cast<std::size_t>(leastDecimals);
        while (text.size() > shortest && text.back() == '0')
            text.pop_back();
        if (text.back() == '.')
            text.pop_back();
    }
    return text;
}

std::string_view trimmed(std::string_view text)
{
    const auto atFront = [&] {
        return std::find_if(
            blanks.begin(), blanks.end(), [&](auto blank) { return text.starts_with(blank); });
    };
    const auto atBack = [&] {
        return std::find_if(blanks.begin(), blanks.end(), [&](auto blank) { return text.ends_with(blank); });
    };
    for (auto blank = atFront(); blank != blanks.end(); blank = atFront())
        text.remove_prefix(blank->size());
    for (auto blank = atBack(); blank != blanks.end(); blank = atBack())
        text.remove_suffix(blank->size());
    return text;
}

Result<LeadingNumber> leadingNumber(std::string_view text)
{
    text = trimmed(text);
    const std::string_view whole = text;
    const double sign = takeSign(text);
    const std::size_t end
        = std::min(text.size(), static_cast<std::size_t>(std::find_if(text.begin(), text.end(), [](char c) {
              return !isDigit(c) && !isMark(c);
          }) - text.begin()));
    const std::string_view number = text.substr(0, end);
    const auto marks = std::count_if(number.begin(), number.end(), isMark);
    if (std::none_of(number.begin(), number.end(), isDigit))
        return fail(
            ErrorCode::BadInput, inQuotes(whole) + " does not begin with a number: type the number first.");
    if (number.size() > longestNumber)
        return fail(ErrorCode::BadInput, inQuotes(number) + " has too many digits: type fewer.");
    if (marks > 1)
        return ambiguous(number);

    const std::size_t mark = number.find_first_of(".,");
    if (mark == number.size() - 1)
        return fail(ErrorCode::BadInput,
            inQuotes(number) + " has no digits after its decimal mark: type them or leave the mark out.");
    if (mark != std::string_view::npos && number[mark] == ','
        && mayBeThousands(number.substr(0, mark), number.substr(mark + 1)))
        return ambiguous(number);

    std::string plain(number);
    std::replace(plain.begin(), plain.end(), ',', '.');
    double value = 0;
    std::from_chars(plain.data(), plain.data() + plain.size(), value);
    return LeadingNumber { sign * value, trimmed(text.substr(end)) };
}

} // namespace gw
