#pragma once

#include <QByteArray>
#include <QImage>

namespace gw::test {

enum class Symbology {
    Ean8,
    Ean13,
    UpcA,
    UpcE,
    Itf14,
    Interleaved2of5,
    Code128,
    Gs1_128,
    DataMatrix,
    Gs1DataMatrix,
    Qr,
    Gs1Qr,
    DataBar,
    DataBarExpanded,
};

/// Draws a symbol with Zint: black on white, Grayscale8, a narrow bar or module 2 x scale pixels wide, quiet
/// zones around it. GS1 texts have their identifiers in square brackets; EAN and UPC texts lack or have their
/// check digit as Zint asks. A text that Zint refuses stops the test program.
QImage drawSymbol(Symbology symbology, const QByteArray& text, float scale = 2);

/// The picture in the middle of a larger sheet of one brightness.
QImage placed(const QImage& symbol, QSize sheet, int paper = 255);

/// What cameras and workshops do to a label. Same input, same output: the noise has a fixed seed.
QImage turned(const QImage& picture, double degrees);
QImage dimmed(const QImage& picture, int black, int white); ///< the brightness that black and white become
QImage shaded(
    const QImage& picture, double darkest); ///< from full light at the left to a share of it at the right
QImage noisy(const QImage& picture, double sigma, unsigned seed = 1);
QImage blurred(const QImage& picture, int passes); ///< 3 x 3 mean, so many times
QImage tilted(
    const QImage& picture, double share); ///< seen from the side: the right edge is that much shorter

/// A frame of 640 x 480 with the symbol somewhere in it at any angle, bent, spotted, out of focus, grainy and
/// shaded by chance.
QImage spoiledAtRandom(const QImage& symbol, unsigned seed);

} // namespace gw::test
