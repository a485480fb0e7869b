#include "codes/gtin.h"

#include <algorithm>

#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// Longer than any number with the blanks and hyphens people type between its groups.
constexpr std::size_t longestTyped = 40;

bool allDigits(std::string_view text)
{
    return !text.empty()
        && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// Without the blanks and hyphens that stand between groups of digits under the bars; nothing when too long.
std::string withoutGroupMarks(std::string_view text)
{
    text = trimmed(text);
    std::string digits;
    if (text.size() <= longestTyped)
        std::copy_if(text.begin(), text.end(), std::back_inserter(digits),
            [](char c) { return c != ' ' && c != '-'; });
    return digits;
}

} // namespace

std::optional<int> checkDigit(std::string_view digitsWithoutCheck)
{
    if (!allDigits(digitsWithoutCheck))
        return std::nullopt;
    // The weight of every digit depends on its place from the right, so that leading zeros change nothing.
    unsigned sum = 0;
    unsigned weight = digitsWithoutCheck.size() % 2 == 1 ? 3 : 1;
    for (const char digit : digitsWithoutCheck) {
        sum = (sum + weight * static_cast<unsigned>(digit - '0')) % 10;
        weight = 4 - weight;
    }
    return static_cast<int>((10 - sum) % 10);
}

Result<Gtin> parseGtin(std::string_view text)
{
    const std::string digits = withoutGroupMarks(text);
    if (!allDigits(digits))
        return fail(ErrorCode::BadInput,
            inQuotes(trimmed(text)) + " is not an item number: type the digits under the bars.");
    const std::size_t length = digits.size();
    if (length != 8 && length != 12 && length != 13 && length != 14)
        return fail(ErrorCode::BadInput,
            inQuotes(digits) + " has " + std::to_string(length)
                + " digits: an item number has 8, 12, 13 or 14. Type all the digits under the bars.");
    const int right = *checkDigit(std::string_view(digits).substr(0, length - 1));
    if (right != digits.back() - '0')
        return fail(ErrorCode::BadInput,
            "The check digit of " + digits + " does not fit: the last digit would have to be "
                + std::to_string(right) + ". Look at the label again, or scan it.");
    return Gtin { std::string(14 - length, '0') + digits };
}

Result<std::string> expandUpcE(std::string_view text)
{
    const std::string digits = withoutGroupMarks(text);
    if (!allDigits(digits) || digits.size() < 6 || digits.size() > 8)
        return fail(ErrorCode::BadInput,
            inQuotes(trimmed(text))
                + " is not a short item number: it has 6, 7 or 8 digits. Type all the digits beside and "
                  "under the bars.");
    const char system = digits.size() == 6 ? '0' : digits.front();
    if (system != '0' && system != '1')
        return fail(ErrorCode::BadInput,
            inQuotes(digits) + " is not a short item number: it begins with 0 or 1. Type the full number.");

    // GS1 General Specifications 5.2.2.4: the last of the six digits says which zeros were left out.
    const std::string_view six = std::string_view(digits).substr(digits.size() == 6 ? 0 : 1, 6);
    std::string data(1, system);
    const char last = six[5];
    if (last <= '2')
        data.append(six.substr(0, 2)).append(1, last).append("0000").append(six.substr(2, 3));
    else if (last == '3')
        data.append(six.substr(0, 3)).append("00000").append(six.substr(3, 2));
    else if (last == '4')
        data.append(six.substr(0, 4)).append("00000").append(six.substr(4, 1));
    else
        data.append(six.substr(0, 5)).append("0000").append(1, last);

    const char check = static_cast<char>('0' + *checkDigit(data));
    if (digits.size() == 8 && digits.back() != check)
        return fail(ErrorCode::BadInput,
            "The check digit of " + digits + " does not fit: the last digit would have to be " + check
                + ". Look at the label again, or scan it.");
    return data + check;
}

PackLevel packLevel(const Gtin& gtin)
{
    const char indicator = gtin.digits14.empty() ? '0' : gtin.digits14.front();
    if (indicator == '9')
        return PackLevel::VariableMeasure;
    return indicator == '0' ? PackLevel::Item : PackLevel::Case;
}

std::optional<Gtin> itemInside(const Gtin& gtin)
{
    if (packLevel(gtin) != PackLevel::Case || gtin.digits14.size() != 14)
        return std::nullopt;
    const std::string data = '0' + gtin.digits14.substr(1, 12);
    const auto check = checkDigit(data);
    return check ? std::optional(Gtin { data + static_cast<char>('0' + *check) }) : std::nullopt;
}

std::string printedForm(const Gtin& gtin)
{
    const std::string_view digits = gtin.digits14;
    for (const std::size_t length : { 8U, 12U, 13U }) {
        if (digits.size() == 14 && digits.find_first_not_of('0') >= 14 - length)
            return std::string(digits.substr(14 - length));
    }
    return gtin.digits14;
}

} // namespace gw
