#include "gluing/sentences.h"

#include <cmath>

#include "measure/number.h"

namespace gw {

namespace {

bool isUpper(char c) { return c >= 'A' && c <= 'Z'; }

bool isLower(char c) { return c >= 'a' && c <= 'z'; }

} // namespace

std::string percentWords(double value) { return numberWords(value, 2) + " %"; }

std::string percentRangeWords(const Range<double>& range)
{
    return numberWords(range.low, 2) + " to " + percentWords(range.high);
}

std::string millimetreWords(double value) { return numberWords(value, 3) + " mm"; }

std::string temperatureRangeWords(const Range<Celsius>& range, UnitSystem units)
{
    std::string high = formatTemperature(range.high, units);
    if (range.low == range.high)
        return high;
    const std::string low = formatTemperature(range.low, units);
    return low.substr(0, low.find(' ')) + " to " + high;
}

std::string lowerFirst(std::string_view name)
{
    std::string text(name); // abbreviations such as PVA keep their capitals
    if (text.size() > 1 && isUpper(text[0]) && isLower(text[1]))
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

std::string upperFirst(std::string_view name)
{
    std::string text(name);
    if (!text.empty() && isLower(text[0]))
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

std::string inSentence(std::string_view name)
{
    constexpr std::string_view comma = ", ";
    const auto at = name.find(comma);
    if (at == std::string_view::npos || name.find(comma, at + 1) != std::string_view::npos)
        return lowerFirst(name);
    return lowerFirst(name.substr(at + comma.size())) + " " + lowerFirst(name.substr(0, at));
}

std::string listWords(const std::vector<std::string>& names)
{
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0)
            text += i + 1 == names.size() ? " and " : ", ";
        text += names[i];
    }
    return text;
}

std::string asSentence(std::string text)
{
    if (!text.empty() && text.back() != '.' && text.back() != '?' && text.back() != '!')
        text += '.';
    return text;
}

std::string sentencesTogether(std::string first, const std::string& second)
{
    if (!first.empty() && !second.empty())
        first += ' ';
    return first + second;
}

double roundedToTenth(Celsius temperature) { return std::round(temperature.value * 10) / 10; }

} // namespace gw
