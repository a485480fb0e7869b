#pragma once

#include <string>

#include <QImage>

namespace gw::test {

/// A symbol as a camera may show it: drawn by Zint, with a text of its own, then spoiled in one of the ways
/// of trouble().
struct DistortedSymbol {
    QImage picture; ///< Grayscale8, 800 x 600
    std::string text; ///< as a reader transmits it
    const char* symbology;
    const char* trouble;
};

constexpr int distortedKinds = 12; ///< symbologies
constexpr int distortedTroubles = 11;

const char* trouble(int number);
const char* distortedKind(int number);

/// The same number in the same set is the same picture. Numbers run through the symbologies first, then
/// through the troubles: so many pictures as the product of both show each once.
DistortedSymbol distortedSymbol(unsigned set, unsigned number);

} // namespace gw::test
