#include "scan/plausible.h"

#include <algorithm>

#include "codes/gtin.h"

namespace gw {

namespace {

/// The outline with room around it: a few scan lines do not show how tall a bar code is.
QRectF surroundings(const Symbol& symbol)
{
    const QRectF box = symbol.outline.boundingRect();
    const double room = std::max(box.width(), box.height()) / 4 + 2;
    return box.adjusted(-room, -room, room, room);
}

bool contradicts(const Symbol& other, const Symbol& weak)
{
    return isBarCode(other) && other.text != weak.text
        && (!isWeak(other) || other.text.size() > weak.text.size())
        && surroundings(other).intersects(surroundings(weak));
}

} // namespace

bool isBarCode(const Symbol& symbol) { return symbol.format != "QR Code" && symbol.format != "Data Matrix"; }

bool isWeak(const Symbol& symbol)
{
    return symbol.format == "EAN-8" || symbol.format == "UPC-E" || symbol.format == "ITF";
}

bool wantsConfirming(const Symbol& symbol)
{
    constexpr std::size_t few = 6;
    return isWeak(symbol) || symbol.format == "EAN-13" || symbol.format == "UPC-A"
        || (symbol.format == "Code 128" && symbol.text.size() <= few)
        || (isBarCode(symbol) && !symbol.engine.starts_with("zxing-cpp"));
}

std::string itfIdentifier(std::string_view digits)
{
    const auto check = digits.empty() ? std::nullopt : checkDigit(digits.substr(0, digits.size() - 1));
    return check && digits.back() == '0' + *check ? "]I1" : "]I0";
}

void addUnseen(std::vector<Symbol>& symbols, std::vector<Symbol> more)
{
    for (Symbol& symbol : more) {
        const bool seen = std::any_of(symbols.begin(), symbols.end(), [&symbol](const Symbol& known) {
            return known.text == symbol.text && known.symbology == symbol.symbology;
        });
        if (!seen)
            symbols.push_back(std::move(symbol));
    }
}

void dropContradicted(std::vector<Symbol>& symbols)
{
    const std::vector<Symbol> all = symbols;
    std::erase_if(symbols, [&all](const Symbol& symbol) {
        return isWeak(symbol) && std::any_of(all.begin(), all.end(), [&symbol](const Symbol& other) {
            return contradicts(other, symbol);
        });
    });
}

} // namespace gw
