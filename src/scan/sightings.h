#pragma once

#include <chrono>
#include <map>
#include <string>
#include <vector>

#include "scan/symbolreader.h"

namespace gw {

/// Tells a symbol that comes into view from one that is held there, so that one bottle is read once.
///
/// A text is new when it was not in view: gone from five frames in a row over at least 0.8 s, or not seen for
/// 2 s. EAN-8, UPC-E and ITF, whose checks are weak against a half-seen or made-up pattern, are believed when
/// a second frame shows the same.
class Sightings {
public:
    using Time = std::chrono::steady_clock::time_point;

    /// Takes what one frame showed, gives what of it is new.
    std::vector<Symbol> update(const std::vector<Symbol>& inFrame, Time now);
    /// Whatever is in view counts as new again.
    void forget() { m_known.clear(); }

private:
    struct Sighting {
        Time last;
        int framesWithout = 0;
        int framesWith = 0;
        bool told = false;
    };

    std::map<std::pair<std::string, std::string>, Sighting> m_known; ///< by symbology and text
};

} // namespace gw
