#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include <QPolygonF>

namespace gw {

/// Brightness, one byte a pixel, top row first. Does not own the bytes.
struct LuminanceView {
    const std::uint8_t* data = nullptr;
    int width = 0;
    int height = 0;
    qsizetype stride = 0; ///< bytes from one row to the next, at least width
};

/// A bar code or square code that was found in a picture.
struct Symbol {
    /// The exact message, in UTF-8; a group separator is byte 29. UPC-A has its 12 digits, UPC-E the 8 it
    /// prints; DataBar is the element string that ISO/IEC 24724 transmits ("01" and the GTIN, or the
    /// elements).
    std::string text;
    /// "EAN-13", "EAN-8", "UPC-A", "UPC-E", "ITF", "Code 128", "Data Matrix", "QR Code", "DataBar", "DataBar
    /// Expanded".
    std::string format;
    std::string symbology; ///< symbology identifier of ISO/IEC 15424, such as "]d2"
    std::string engine; ///< the library that read it, and its version
    QPolygonF outline; ///< four corners in pixels of the picture, from the symbol's own upper left clockwise
};

/// What is looked for.
enum class Sought { Everything, Bars, Squares };

/// Finds symbols in a picture. One reader serves one thread at a time.
class SymbolReader {
public:
    SymbolReader() = default;
    SymbolReader(const SymbolReader&) = delete;
    SymbolReader& operator=(const SymbolReader&) = delete;
    virtual ~SymbolReader() = default;

    virtual std::string name() const = 0; ///< its engines, separated by ", "
    /// All symbols found, none for a picture without; never throws. The outlines are in pixels of the view.
    virtual std::vector<Symbol> read(const LuminanceView& picture) = 0;
    /// The same for bar codes alone: a slant hides them, and does not hide square codes.
    virtual std::vector<Symbol> readBars(const LuminanceView& picture) { return read(picture); }
    /// What each engine by itself sees in a small picture of one symbol, in this size alone: the same symbol
    /// as often as there are engines that see it.
    virtual std::vector<Symbol> readByEach(const LuminanceView& picture, Sought) { return read(picture); }
};

/// How much time a look may take.
enum class Effort {
    Frame, ///< one of many: the next one comes at once
    Picture, ///< the only one there is
};

/// The reader of this program, over every engine it was built with: EAN-8 and -13, UPC-A and -E, ITF, Code
/// 128, Data Matrix, QR Code; DataBar in pictures only. What it gives has its own check right; whether that
/// is enough to believe it is up to findSymbols() and findInFrame().
std::unique_ptr<SymbolReader> makeReader(Effort effort = Effort::Picture);

/// The engines this program was built with, with their versions, separated by ", "; then, in brackets, which
/// it was built without.
std::string engineNames();

} // namespace gw
