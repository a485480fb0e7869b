#include "scan/engine.h"

#ifdef GW_WITH_QZXING

#include <algorithm>
#include <cstring>

#include <zxing/BinaryBitmap.h>
#include <zxing/DecodeHints.h>
#include <zxing/Exception.h>
#include <zxing/MultiFormatReader.h>
#include <zxing/common/GreyscaleLuminanceSource.h>
#include <zxing/common/HybridBinarizer.h>

#include "scan/abortguard.h"
#include "scan/plausible.h"

namespace gw {

namespace {

using Bytes = std::vector<zxing::byte>;

constexpr int narrowest = 16; ///< its detectors look at blocks of eight pixels

zxing::DecodeHintType hintsFor(Question question)
{
    using zxing::DecodeHints;
    switch (question) {
    case Question::Squares:
        return DecodeHints::QR_CODE_HINT | DecodeHints::DATA_MATRIX_HINT;
    case Question::DataMatrixAlone:
        return DecodeHints::DATA_MATRIX_HINT;
    case Question::Bars:
        return DecodeHints::EAN_13_HINT | DecodeHints::UPC_A_HINT | DecodeHints::CODE_128_HINT
            | DecodeHints::ASSUME_GS1 | DecodeHints::TRYHARDER_HINT;
    case Question::WeakBars:
        return DecodeHints::EAN_8_HINT | DecodeHints::UPC_E_HINT | DecodeHints::ITF_HINT
            | DecodeHints::TRYHARDER_HINT;
    case Question::DataBars:
        break;
    }
    return 0;
}

bool isAscii(const std::string& text)
{
    return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// The library does not say what was in the first place of a QR Code; its first four bits do (ISO/IEC 18004,
/// mode indicators: 5 FNC1 in first position, 3 structured append, 7 ECI). False: not to be believed.
bool fillQr(Symbol& symbol, const Bytes& raw)
{
    const int mode = raw.empty() ? 0 : raw.front() >> 4;
    symbol.format = "QR Code";
    symbol.symbology = mode == 5 ? "]Q3" : "]Q1";
    return !raw.empty() && mode != 3 && mode != 7 && mode != 9;
}

/// Codeword 232 is FNC1 (ISO/IEC 16022), handed on as a group separator; 233 structured append, 241 ECI.
bool fillDataMatrix(Symbol& symbol, const Bytes& raw)
{
    const int first = raw.empty() ? 0 : raw.front();
    symbol.format = "Data Matrix";
    symbol.symbology = first == 232 ? "]d2" : "]d1";
    if (first == 232 && symbol.text.starts_with('\x1d'))
        symbol.text.erase(0, 1);
    return !raw.empty() && first != 233 && first != 241;
}

bool fillBars(Symbol& symbol, zxing::BarcodeFormat::Value format)
{
    switch (format) {
    case zxing::BarcodeFormat::EAN_13:
        symbol.format = "EAN-13";
        symbol.symbology = "]E0";
        return true;
    case zxing::BarcodeFormat::UPC_A:
        symbol.format = "UPC-A";
        symbol.symbology = "]E0";
        return true;
    case zxing::BarcodeFormat::EAN_8:
        symbol.format = "EAN-8";
        symbol.symbology = "]E4";
        return true;
    case zxing::BarcodeFormat::UPC_E:
        symbol.format = "UPC-E";
        symbol.symbology = "]E0";
        return true;
    case zxing::BarcodeFormat::ITF:
        symbol.format = "ITF";
        symbol.symbology = itfIdentifier(symbol.text);
        return true;
    case zxing::BarcodeFormat::CODE_128:
        symbol.format = "Code 128";
        symbol.symbology = "]C0";
        if (symbol.text.starts_with("]C1")) {
            symbol.symbology = "]C1";
            symbol.text.erase(0, 3);
        }
        return true;
    default:
        return false;
    }
}

class QzxingEngine final : public Engine {
public:
    std::string name() const override { return "qzxing 3.3"; }

    std::vector<Symbol> ask(const LuminanceView& picture, Question question) override
    {
        if (question == Question::DataBars || std::min(picture.width, picture.height) < narrowest)
            return {};
        std::vector<Symbol> symbols;
        auto work = [&]() noexcept {
            try {
                symbols = find(picture, question);
            } catch (...) { // nothing found is thrown as well
                symbols.clear();
            }
        };
        if (!survivesAbort(work))
            return {};
        return symbols;
    }

private:
    std::vector<Symbol> find(const LuminanceView& picture, Question question)
    {
        const auto width = static_cast<std::size_t>(picture.width);
        const QSharedPointer<Bytes> bytes(new Bytes(width * static_cast<std::size_t>(picture.height)));
        for (int y = 0; y < picture.height; ++y)
            std::memcpy(bytes->data() + static_cast<std::size_t>(y) * width,
                picture.data + y * picture.stride, width);
        const QSharedPointer<zxing::LuminanceSource> source(new zxing::GreyscaleLuminanceSource(
            bytes, picture.width, picture.height, 0, 0, picture.width, picture.height));
        const QSharedPointer<zxing::Binarizer> binarizer(new zxing::HybridBinarizer(source));
        const QSharedPointer<zxing::BinaryBitmap> bitmap(new zxing::BinaryBitmap(binarizer));
        zxing::MultiFormatReader reader;
        const auto result = reader.decode(bitmap, zxing::DecodeHints(hintsFor(question)));

        Symbol symbol;
        symbol.text = result->getText()->getText();
        const Bytes raw = result->getRawBytes() ? *result->getRawBytes() : Bytes();
        const auto format = static_cast<zxing::BarcodeFormat::Value>(result->getBarcodeFormat());
        const bool whole = format == zxing::BarcodeFormat::QR_CODE ? fillQr(symbol, raw)
            : format == zxing::BarcodeFormat::DATA_MATRIX          ? fillDataMatrix(symbol, raw)
                                                                   : fillBars(symbol, format);
        // Which characters others stand for it guesses: not believed.
        if (!whole || symbol.text.empty() || !isAscii(symbol.text))
            return {};
        symbol.engine = name();
        QPolygonF points;
        for (const auto& point : *result->getResultPoints())
            if (point)
                points << QPointF(double(point->getX()), double(point->getY()));
        const QRectF box = points.boundingRect();
        symbol.outline = QPolygonF { box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft() };
        std::vector<Symbol> symbols;
        symbols.push_back(std::move(symbol));
        return symbols;
    }
};

} // namespace

std::unique_ptr<Engine> makeQzxingEngine() { return std::make_unique<QzxingEngine>(); }

} // namespace gw

#else

namespace gw {

std::unique_ptr<Engine> makeQzxingEngine() { return nullptr; }

} // namespace gw

#endif
