#include "measure/money.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

namespace gw {

namespace {

/// Decimals of a currency: two, unless ISO 4217 (list one, minor unit column) says otherwise.
std::size_t minorDigits(std::string_view currency)
{
    constexpr std::array<std::string_view, 17> none { "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW",
        "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF" };
    constexpr std::array<std::string_view, 7> three { "BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND" };
    if (std::find(none.begin(), none.end(), currency) != none.end())
        return 0;
    return std::find(three.begin(), three.end(), currency) != three.end() ? 3 : 2;
}

} // namespace

std::string formatMoney(const Money& money)
{
    const std::size_t decimals = minorDigits(money.currency);
    std::string digits = std::to_string(money.minorUnits);
    const bool negative = digits.front() == '-';
    if (negative)
        digits.erase(0, 1);
    if (digits.size() <= decimals)
        digits.insert(0, decimals + 1 - digits.size(), '0');
    if (decimals > 0)
        digits.insert(digits.size() - decimals, 1, '.');
    return (negative ? "-" : "") + digits + (money.currency.empty() ? "" : ' ' + money.currency);
}

} // namespace gw
