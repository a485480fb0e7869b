#pragma once

#include <cstdint>
#include <vector>

#include "scan/symbolreader.h"

class QVideoFrame;

namespace gw {

/// A picture's brightness, owned. Filled again and again without asking for new memory.
struct Luminance {
    std::vector<std::uint8_t> bytes;
    int width = 0;
    int height = 0;
    int rotation
        = 0; ///< degrees clockwise by which the frame wants to be turned when shown: 0, 90, 180 or 270
    bool mirrored = false; ///< the frame wants to be shown mirrored

    LuminanceView view() const { return { bytes.data(), width, height, width }; }
};

/// Copies a frame's brightness. Planes of brightness are taken as they are, 32-bit colour is converted,
/// anything else goes through an image. Called on the thread that made the frame. False: the frame cannot be
/// looked at.
bool copyLuminance(const QVideoFrame& frame, Luminance& into);

} // namespace gw
