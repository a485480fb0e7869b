#include "scan/engine.h"

#include <cstdint>
#include <map>
#include <string_view>

#include "scan/abortguard.h"
#include "scan/databartext.h"

// The engine's face changed from 1.4 to 2 to 3.
#if __has_include(<ZXing/ReaderOptions.h>)
#include <ZXing/ReadBarcode.h>
#include <ZXing/ReaderOptions.h>
#else
#define ZX_USE_UTF8
#include <ZXing/DecodeHints.h>
#include <ZXing/ReadBarcode.h>
#endif
#if __has_include(<ZXing/Version.h>)
#include <ZXing/Version.h>
#else
#include <ZXing/ZXVersion.h>
#endif

namespace gw {

namespace {

#if ZXING_VERSION_MAJOR >= 2
using Options = ZXing::ReaderOptions;
#else
using Options = ZXing::DecodeHints;
#endif

Options optionsFor(Question question, Effort effort)
{
    using enum ZXing::BarcodeFormat;
    Options options;
    switch (question) {
    case Question::Squares:
        options.setFormats(DataMatrix | QRCode);
        options.setMaxNumberOfSymbols(16);
        break;
    case Question::DataMatrixAlone:
        options.setFormats(DataMatrix);
        options.setMaxNumberOfSymbols(1);
        break;
    case Question::Bars:
        options.setFormats(EAN13 | UPCA | Code128);
        options.setMaxNumberOfSymbols(1);
        break;
    case Question::WeakBars:
        options.setFormats(EAN8 | UPCE | ITF);
        options.setMaxNumberOfSymbols(1);
        break;
    case Question::DataBars:
#if ZXING_VERSION_MAJOR >= 3
        options.setFormats(DataBar);
#else
        options.setFormats(DataBar | DataBarExpanded);
#endif
        options.setMaxNumberOfSymbols(1);
        break;
    }
#if ZXING_VERSION_MAJOR >= 2
    // The default there is for people to read: brackets in place of group separators.
    options.setTextMode(ZXing::TextMode::Plain);
    options.setTryInvert(false); // a look of its own
#endif
    options.setTryHarder(true);
    options.setTryRotate(true);
    // Its own way of it compares what it finds, see above; done here instead.
    options.setTryDownscale(false);
    // A picture is looked at once, so a reading must be borne out by more of it.
    std::uint8_t lines = effort == Effort::Picture ? 3 : 2;
#if ZXING_VERSION_MAJOR < 2
    // Its assertions do not bear a second line of DataBar; later editions see DataBar in noise on only one.
    if (question == Question::DataBars)
        lines = 1;
#endif
    options.setMinLineCount(lines);
    return options;
}

/// The trade's name of a symbology. Named after the identifier of ISO/IEC 15424, which is the same in every
/// version.
std::string formatName(const std::string& identifier, ZXing::BarcodeFormat format)
{
    const char family = identifier.size() > 1 ? identifier[1] : ' ';
    switch (family) {
    case 'C':
        return "Code 128";
    case 'd':
        return "Data Matrix";
    case 'Q':
        return "QR Code";
    case 'I':
        return "ITF";
    case 'e':
        return std::string_view(ZXing::ToString(format)).find("Exp") == std::string_view::npos
            ? "DataBar"
            : "DataBar Expanded";
    default:
        break;
    }
    switch (format) {
    case ZXing::BarcodeFormat::EAN8:
        return "EAN-8";
    case ZXing::BarcodeFormat::UPCA:
        return "UPC-A";
    case ZXing::BarcodeFormat::UPCE:
        return "UPC-E";
    default:
        return "EAN-13";
    }
}

/// What the symbol prints and its symbology transmits, whatever the engine's version makes of it.
std::string messageText(std::string text, const std::string& format)
{
    if (format == "UPC-A" && text.size() == 13 && text.front() == '0')
        return text.substr(1);
    if (format.starts_with("DataBar"))
        return dataBarElementString(text);
    return text;
}

std::string versionedName()
{
    return "zxing-cpp " + std::to_string(ZXING_VERSION_MAJOR) + '.' + std::to_string(ZXING_VERSION_MINOR)
        + '.' + std::to_string(ZXING_VERSION_PATCH);
}

std::vector<Symbol> find(const LuminanceView& picture, const Options& options)
{
    const ZXing::ImageView view(picture.data, picture.width, picture.height, ZXing::ImageFormat::Lum,
        static_cast<int>(picture.stride));
    std::vector<Symbol> symbols;
    for (const auto& found : ZXing::ReadBarcodes(view, options)) {
        if (!found.isValid())
            continue;
        Symbol symbol;
        symbol.symbology = found.symbologyIdentifier();
        symbol.format = formatName(symbol.symbology, found.format());
        symbol.text = messageText(found.text(), symbol.format);
        if (symbol.text.empty())
            continue;
        symbol.engine = versionedName();
        for (const auto& corner : found.position())
            symbol.outline.append(QPointF(corner.x, corner.y));
        symbols.push_back(std::move(symbol));
    }
    return symbols;
}

/// Any version from 1.4 on. Bar codes are asked for one by one: 1.4 compares those it finds and fails an
/// assertion when two say the same, as on a shelf of equal bottles.
class ZxingEngine final : public Engine {
public:
    explicit ZxingEngine(Effort effort)
    {
        for (const Question question : { Question::Squares, Question::DataMatrixAlone, Question::Bars,
                 Question::WeakBars, Question::DataBars })
            m_options.emplace(question, optionsFor(question, effort));
    }

    std::string name() const override { return versionedName(); }

    std::vector<Symbol> ask(const LuminanceView& picture, Question question) override
    {
        std::vector<Symbol> symbols;
        // The engine signals broken symbols by throwing, and now and then lets one out; distributions build
        // it with its assertions on, and a bent QR Code can fail them (1.4 and 2.3 alike).
        auto work = [&]() noexcept {
            try {
                symbols = find(picture, m_options.at(question));
            } catch (...) {
                symbols.clear();
            }
        };
        if (!survivesAbort(work))
            return {};
        return symbols;
    }

private:
    std::map<Question, Options> m_options;
};

} // namespace

std::unique_ptr<Engine> makeZxingEngine(Effort effort) { return std::make_unique<ZxingEngine>(effort); }

} // namespace gw
