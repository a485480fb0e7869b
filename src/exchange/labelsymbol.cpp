#include "exchange/labelsymbol.h"

#include <memory>

#include <zint.h>

namespace gw {

namespace {

constexpr std::size_t mostCharacters = 40;

} // namespace

Result<SymbolModules> dataMatrixOf(const std::string& text)
{
    if (text.empty() || text.size() > mostCharacters)
        return fail(ErrorCode::BadInput, "A label's code has 1 to 40 characters.");
    const std::unique_ptr<zint_symbol, decltype(&ZBarcode_Delete)> symbol(
        ZBarcode_Create(), &ZBarcode_Delete);
    symbol->symbology = BARCODE_DATAMATRIX;
    symbol->option_3 = DM_SQUARE;
    const auto* bytes = reinterpret_cast<const unsigned char*>(text.data());
    if (ZBarcode_Encode(symbol.get(), bytes, static_cast<int>(text.size())) >= ZINT_ERROR)
        return fail(ErrorCode::BadInput, "The code cannot be drawn: " + std::string(symbol->errtxt) + ".");
    SymbolModules modules;
    modules.size = symbol->width;
    for (int y = 0; y < symbol->rows; ++y) {
        for (int x = 0; x < symbol->width; ++x)
            modules.dark.push_back(((symbol->encoded_data[y][x >> 3] >> (x & 7)) & 1) != 0);
    }
    return modules;
}

} // namespace gw
