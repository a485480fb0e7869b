#pragma once

namespace gw {

/// Low and high of something not known exactly. low <= high; equal when it is known.
template <class T> struct Range {
    T low {};
    T high {};
    friend bool operator==(const Range&, const Range&) = default;
};

} // namespace gw
