#include "codes/digitallink.h"

#include <algorithm>
#include <string>
#include <vector>

#include "codes/applicationidentifiers.h"
#include "codes/elementcheck.h"
#include "measure/quoted.h"

namespace gw {

namespace {

using Pieces = std::vector<std::string_view>;

Pieces split(std::string_view text, char mark)
{
    Pieces pieces;
    for (std::size_t end = text.find(mark); end != std::string_view::npos; end = text.find(mark)) {
        pieces.push_back(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
    pieces.push_back(text);
    return pieces;
}

bool isDigit(char c) { return c >= '0' && c <= '9'; }

bool allDigits(std::string_view text)
{
    return !text.empty() && std::all_of(text.begin(), text.end(), isDigit);
}

/// The characters of a URI: RFC 3986, section 2.
bool isUriText(std::string_view text)
{
    constexpr std::string_view marks = "-._~:/?#[]@!$&'()*+,;=%";
    return std::all_of(text.begin(), text.end(), [&](char c) {
        return isDigit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')
            || marks.find(c) != std::string_view::npos;
    });
}

int hexValue(char c)
{
    if (isDigit(c))
        return c - '0';
    const char lower = static_cast<char>(c | 0x20);
    return lower >= 'a' && lower <= 'f' ? lower - 'a' + 10 : -1;
}

/// Percent-decoded; in a query "+" is a blank. A "%" that no two hexadecimal digits follow stands for itself.
std::string decoded(std::string_view text, bool query)
{
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const int high = text[i] == '%' && i + 2 < text.size() ? hexValue(text[i + 1]) : -1;
        const int low = high >= 0 ? hexValue(text[i + 2]) : -1;
        if (low >= 0) {
            plain += static_cast<char>(high * 16 + low);
            i += 2;
        } else {
            plain += query && text[i] == '+' ? ' ' : text[i];
        }
    }
    return plain;
}

/// The path and the query of a web address whose scheme is all lower or all upper case and that names a host.
struct Address {
    std::string_view path;
    std::string_view query;
};

std::optional<Address> addressOf(std::string_view text)
{
    const std::size_t fragment = text.find('#');
    text = text.substr(0, std::min(fragment, text.size()));
    for (const std::string_view scheme : { "https://", "HTTPS://", "http://", "HTTP://" }) {
        if (!text.starts_with(scheme))
            continue;
        text.remove_prefix(scheme.size());
        const std::size_t path = text.find('/');
        if (path == 0 || path == std::string_view::npos || text.find('?') < path)
            return std::nullopt;
        text.remove_prefix(path + 1);
        const std::size_t query = std::min(text.find('?'), text.size());
        return Address { text.substr(0, query), text.substr(std::min(query + 1, text.size())) };
    }
    return std::nullopt;
}

/// Whether a path piece may be meant as the key's value. Keys begin with digits (a company prefix has at
/// least four of them); the years, months and page numbers in ordinary addresses are short.
bool mayBeValue(const Identifier& key, std::string_view piece)
{
    const std::size_t leastDigits = key.parts[0].set == CharSet::Digits ? 8 : 4;
    return piece.size() > leastDigits - 1 && allDigits(piece.substr(0, leastDigits));
}

/// Where in the path the key stands, or npos. A stem may hold anything, so the last key is the one; a lot may
/// read like a key, so keys from which pairs lead to the end come first.
std::size_t keyPlace(const Pieces& pieces)
{
    for (const std::size_t odd : { 0U, 1U }) {
        for (std::size_t i = pieces.size() - 1; i-- > 0;) {
            const Identifier* key = linkKey(pieces[i]) ? identifierNamed(pieces[i]) : nullptr;
            if ((pieces.size() - i) % 2 == odd && key && mayBeValue(*key, pieces[i + 1]))
                return i;
        }
    }
    return std::string_view::npos;
}

/// Whether the identifiers in the path may follow the key, in this order.
bool inOrder(const LinkKey& key, const Pieces& qualifiers)
{
    return std::any_of(key.qualifiers.begin(), key.qualifiers.end(), [&](std::string_view allowed) {
        const Pieces order = split(allowed, ',');
        auto next = order.begin();
        for (const std::string_view qualifier : qualifiers) {
            next = std::find(next, order.end(), qualifier);
            if (next == order.end())
                return false;
            ++next;
        }
        return true;
    });
}

bool isQualifier(const LinkKey& key, std::string_view ai)
{
    return std::any_of(key.qualifiers.begin(), key.qualifiers.end(), [&](std::string_view allowed) {
        const Pieces order = split(allowed, ',');
        return std::find(order.begin(), order.end(), ai) != order.end();
    });
}

CodeError error(std::string_view kind, std::string sentence)
{
    return { std::string(kind),
        "This link is not a right one: " + std::move(sentence) + " Type what the label says instead." };
}

/// Checks a value and adds the element; the error when it is wrong or already there.
std::optional<CodeError> add(
    ElementsRead& read, const Identifier& identifier, std::string_view ai, std::string value, int currentYear)
{
    if (std::any_of(read.elements.begin(), read.elements.end(), [&](const Element& e) { return e.ai == ai; }))
        return error("duplicate AI", named(identifier, ai) + " stands there twice.");
    auto wrong = checkValue(identifier, ai, value, currentYear);
    if (wrong && ai == "01" && (wrong->kind == "value too short" || wrong->kind == "value too long"))
        wrong = error("GTIN must have 14 digits", "the item number must have 14 digits.");
    if (!wrong)
        read.elements.push_back({ std::string(ai), std::move(value) });
    return wrong;
}

/// The key and what follows it, in pairs to the end of the path.
std::optional<CodeError> readPath(
    ElementsRead& read, const LinkKey& key, const Pieces& pieces, int currentYear)
{
    if (pieces.back().empty())
        return error("ends in slash", "its path ends in a slash.");
    Pieces qualifiers;
    for (std::size_t i = 2; i < pieces.size(); i += 2)
        qualifiers.push_back(pieces[i]);
    if (pieces.size() % 2 != 0 || !inOrder(key, qualifiers))
        return error("bad key-qualifier sequence", "the parts of its path do not follow each other so.");
    for (std::size_t i = 0; i < pieces.size(); i += 2) {
        // Two slashes that follow each other name nothing.
        const Identifier* identifier = identifierNamed(pieces[i]);
        if (!identifier)
            return error("bad key-qualifier sequence", "a part of its path has no name.");
        if (auto wrong = add(read, *identifier, pieces[i], decoded(pieces[i + 1], false), currentYear))
            return wrong;
    }
    return std::nullopt;
}

/// Keys that are not all digits are other people's and skipped, as are parameters without a value sign.
std::optional<CodeError> readQuery(
    ElementsRead& read, const LinkKey& key, std::string_view query, int currentYear)
{
    for (const std::string_view parameter : split(query, '&')) {
        const std::size_t sign = parameter.find('=');
        const std::string_view ai = parameter.substr(0, std::min(sign, parameter.size()));
        if (sign == std::string_view::npos || !allDigits(ai))
            continue;
        const Identifier* identifier = identifierNamed(ai);
        if (!identifier)
            return error(
                "unknown numeric query key", "there is no application identifier " + inQuotes(ai) + '.');
        const bool twice = std::any_of(
            read.elements.begin(), read.elements.end(), [&](const Element& e) { return e.ai == ai; });
        if (!twice && (!identifier->linkAttribute || isQualifier(key, ai)))
            return error("qualifier in query",
                named(*identifier, ai) + " belongs in the path, not behind the question mark.");
        if (auto wrong = add(read, *identifier, ai, decoded(parameter.substr(sign + 1), true), currentYear))
            return wrong;
    }
    return std::nullopt;
}

} // namespace

std::optional<ElementsRead> readDigitalLink(std::string_view text, int currentYear)
{
    const auto address = addressOf(text);
    if (!address)
        return std::nullopt;
    const Pieces pieces = split(address->path, '/');
    const std::size_t place = keyPlace(pieces);
    if (place == std::string_view::npos)
        return std::nullopt;

    ElementsRead read;
    const LinkKey& key = *linkKey(pieces[place]);
    if (!isUriText(text))
        read.error = error("illegal URI character", "it holds a character that no web address may hold.");
    if (!read.error)
        read.error = readPath(read, key,
            Pieces(pieces.begin() + static_cast<std::ptrdiff_t>(place), pieces.end()), currentYear);
    if (!read.error)
        read.error = readQuery(read, key, address->query, currentYear);
    return read;
}

} // namespace gw
