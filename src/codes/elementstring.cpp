#include "codes/elementstring.h"

#include <algorithm>
#include <string>

#include "codes/applicationidentifiers.h"
#include "codes/elementcheck.h"
#include "measure/quoted.h"

namespace gw {

namespace {

CodeError noSuchIdentifier(std::string_view data)
{
    const std::string begin = inQuotes(data.substr(0, 4));
    if (data.front() == groupSeparator)
        return {
            "no such AI",
            "Two separators follow each other, with nothing between them. Scan it again, or type the label."
        };
    return { "no such AI",
        "No application identifier begins " + begin + ". Scan it again, or type the label." };
}

bool allDigits(std::string_view text)
{
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// What is wrong with the text between two brackets, when it names no identifier.
CodeError badIdentifier(std::string_view ai)
{
    if (!allDigits(ai) || ai.empty())
        return {
            "AI not numeric",
            inQuotes(ai)
                + " is no application identifier: digits stand between the brackets. Type it from the label."
        };
    if (ai.size() > 4)
        return { "AI too long",
            inQuotes(ai)
                + " is no application identifier: it has two to four digits. Type it from the label." };
    return { "no such AI",
        "There is no application identifier (" + std::string(ai) + "). Look at the label again." };
}

/// A bracketed value up to the next bracket that opens an element, its "\(" read as "(".
std::string takeValue(std::string_view& text)
{
    std::string value;
    while (!text.empty() && text.front() != '(') {
        if (text.starts_with("\\("))
            text.remove_prefix(1);
        value += text.front();
        text.remove_prefix(1);
    }
    return value;
}

} // namespace

ElementsRead readElementString(std::string_view data, int currentYear)
{
    ElementsRead read;
    if (data.empty()) {
        read.error = CodeError { "empty GS1 data", "The code is empty. Scan it again, or type the label." };
        return read;
    }
    while (!data.empty()) {
        const Identifier* identifier = identifierAtStart(data);
        if (!identifier) {
            read.error = noSuchIdentifier(data);
            return read;
        }
        const std::string_view ai = data.substr(0, identifier->digits);
        data.remove_prefix(ai.size());
        std::string_view value = data.substr(0, std::min(data.find(groupSeparator), data.size()));
        if (identifier->predefinedLength)
            value = value.substr(0, identifier->longest());
        read.error = checkValue(*identifier, ai, value, currentYear);
        if (read.error)
            return read;
        read.elements.push_back({ std::string(ai), std::string(value) });
        data.remove_prefix(value.size());
        if (data.starts_with(groupSeparator))
            data.remove_prefix(1);
    }
    return read;
}

bool looksBracketed(std::string_view text)
{
    return text.size() >= 2 && text[0] == '(' && text[1] >= '0' && text[1] <= '9';
}

ElementsRead readBracketed(std::string_view text, int currentYear)
{
    ElementsRead read;
    while (!text.empty()) {
        text.remove_prefix(1); // the opening bracket
        const std::size_t end = text.find(')');
        if (end == std::string_view::npos) {
            read.error = CodeError { "unterminated AI",
                "A closing bracket is missing behind " + inQuotes(text.substr(0, 4))
                    + ": type it again, such as (10)ABC." };
            return read;
        }
        const std::string_view ai = text.substr(0, end);
        const Identifier* identifier = identifierNamed(ai);
        text.remove_prefix(end + 1);
        if (!identifier) {
            read.error = badIdentifier(ai);
            return read;
        }
        const std::string value = takeValue(text);
        // Often typed to stand for a separator, which the bracketed form has no use for.
        if (value.find('^') != std::string::npos)
            read.error = CodeError { "illegal character",
                named(*identifier, ai) + " holds a ^, which labels cannot carry: type it without." };
        else
            read.error = checkValue(*identifier, ai, value, currentYear);
        if (read.error)
            return read;
        read.elements.push_back({ std::string(ai), value });
    }
    return read;
}

} // namespace gw
