#include "scan/finding.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QTransform>

#include "scan/budget.h"
#include "scan/closer.h"
#include "scan/look.h"
#include "scan/plausible.h"

namespace gw {

namespace {

/// Looks beyond the first are at no more than this; a symbol that takes more would have been seen in the
/// first.
constexpr double mostPixelsAgain = 4'000'000;

/// Processor time for all looks at a picture; the one under way is ended.
constexpr double mostMilliseconds = 4000;
/// The same for a closer look at a frame, so that it is answered before the next but one comes.
constexpr double frameMilliseconds = 18;

/// Angles that, with the quarter turn a reader tries by itself, leave no bar code more than six degrees off.
constexpr std::array angles { 45.0, 22.5, 67.5, 11.25, 33.75, 56.25, 78.75 };
/// Of these, enough for a symbol that is not long.
constexpr std::size_t coarseAngles = 3;

/// What a reader sees in a look, in the look's own pixels.
std::vector<Symbol> seenIn(const QImage& picture, SymbolReader& reader, Sought sought)
{
    if (picture.isNull())
        return {};
    const LuminanceView view { picture.constBits(), picture.width(), picture.height(),
        picture.bytesPerLine() };
    return sought == Sought::Bars ? reader.readBars(view) : reader.read(view);
}

void mapBack(std::vector<Symbol>& symbols, const QTransform& back)
{
    for (Symbol& symbol : symbols)
        symbol.outline = back.map(symbol.outline);
}

bool holds(const std::vector<Symbol>& symbols, const Symbol& wanted)
{
    return std::any_of(symbols.begin(), symbols.end(), [&wanted](const Symbol& symbol) {
        return symbol.text == wanted.text && symbol.symbology == wanted.symbology;
    });
}

/// What stands round about a bar code when its bars are turned upright: only what two sizes of the picture
/// agree upon.
std::vector<Symbol> uprightAround(const Symbol& symbol, const QImage& grey, SymbolReader& reader)
{
    const QRect box = symbol.outline.boundingRect().toAlignedRect();
    const double upright = turnToUpright(grey.copy(box.adjusted(-2, -2, 2, 2).intersected(grey.rect())));
    const int room = std::max(box.width(), box.height()) * 5 / 4 + 8;
    const QRect around = box.adjusted(-room, -room, room, room).intersected(grey.rect());

    const Look look = turnedLook(grey.copy(around), upright);
    auto symbols = seenIn(look.picture, reader, Sought::Bars);
    const auto again = seenIn(scaledLook(look.picture, 1.4).picture, reader, Sought::Bars);
    std::erase_if(symbols, [&again](const Symbol& one) { return !holds(again, one); });
    mapBack(symbols, look.back * QTransform::fromTranslate(around.x(), around.y()));
    return symbols;
}

/// Keeps a bar code that wants confirming only if it is read with its bars upright as well. A part of a
/// longer one is not: what lay beside the slanted line of pixels is then on the line, and what is read
/// instead takes its place.
std::vector<Symbol> confirmed(std::vector<Symbol> found, const QImage& grey, SymbolReader& reader)
{
    std::vector<Symbol> kept;
    for (Symbol& symbol : found) {
        if (!wantsConfirming(symbol)) {
            addUnseen(kept, { std::move(symbol) });
            continue;
        }
        auto around = uprightAround(symbol, grey, reader);
        if (holds(around, symbol))
            addUnseen(kept, { std::move(symbol) });
        addUnseen(kept, std::move(around));
    }
    dropContradicted(kept);
    return kept;
}

std::vector<Symbol> lookAt(const Look& look, SymbolReader& reader, Sought sought = Sought::Everything)
{
    auto symbols = confirmed(seenIn(look.picture, reader, sought), look.picture, reader);
    mapBack(symbols, look.back);
    return symbols;
}

} // namespace

std::vector<Symbol> findSymbols(const QImage& picture, SymbolReader& reader)
{
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    if (grey.isNull())
        return {};
    const Budget budget(mostMilliseconds);
    std::vector<Symbol> found = lookAt({ grey, {} }, reader);

    const double pixels = double(grey.width()) * grey.height();
    const Look base = pixels > mostPixelsAgain ? scaledLook(grey, std::sqrt(mostPixelsAgain / pixels))
                                               : Look { grey, {} };
    const int shorter = std::min(base.picture.width(), base.picture.height());
    const auto again = [&](Look look, Sought sought = Sought::Everything) {
        if (!budget.isLeft())
            return;
        look.back *= base.back;
        found = lookAt(look, reader, sought);
    };

    if (found.empty()) {
        const Look wider = framedLook(base.picture);
        Look look = levelledLook(wider.picture);
        look.back = wider.back;
        again(std::move(look));
    }
    if (found.empty()) {
        found = lookCloser(base.picture, reader, Closeness::Picture, budget);
        mapBack(found, base.back);
    }
    if (found.empty() && shorter >= 200)
        again(scaledLook(base.picture, 0.5));
    if (found.empty() && pixels <= 1'500'000)
        again(scaledLook(base.picture, 2));
    for (std::size_t i = 0; i < angles.size() && found.empty(); ++i)
        // A square code seen from the side sometimes shows at another angle; the finer ones are for long bar
        // codes.
        again(turnedLook(base.picture, angles[i]), i < coarseAngles ? Sought::Everything : Sought::Bars);
    if (found.empty())
        again(invertedLook(base.picture));
    if (found.empty() && shorter >= 100)
        again(smoothedLook(base.picture));
    return found;
}

std::vector<Symbol> findInFrame(const LuminanceView& frame, qint64 number, SymbolReader& reader)
{
    const QImage grey(frame.data, frame.width, frame.height, frame.stride, QImage::Format_Grayscale8);
    if (grey.isNull())
        return {};
    std::vector<Symbol> found;
    if (number % 3 == 2)
        found = lookCloser(grey, reader, Closeness::Frame, Budget(frameMilliseconds));
    else
        found = lookAt(number % 3 == 0 ? Look { grey, {} } : levelledLook(grey), reader);
    // Of an ITF any even part looks whole. On goods it has the 14 digits of an item number.
    std::erase_if(
        found, [](const Symbol& symbol) { return symbol.format == "ITF" && symbol.text.size() != 14; });
    return found;
}

} // namespace gw
