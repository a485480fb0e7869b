#pragma once

namespace gw {

/// While one stands, nothing reaches stderr. The picture libraries write their own remarks there on a broken
/// file, past every handler; the one sentence that says what is wrong is ours.
class QuietLibraries {
public:
    QuietLibraries();
    ~QuietLibraries();
    QuietLibraries(const QuietLibraries&) = delete;
    QuietLibraries& operator=(const QuietLibraries&) = delete;

private:
    int m_kept;
};

} // namespace gw
