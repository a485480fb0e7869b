#pragma once

#include <memory>

class QSoundEffect;

namespace gw {

/// The tick when a code was read: two short tones of our own making. A device without sound stays silent.
/// GUI thread.
class TickSound {
public:
    TickSound();
    ~TickSound();
    TickSound(const TickSound&) = delete;
    TickSound& operator=(const TickSound&) = delete;

    void play();

private:
    std::unique_ptr<QSoundEffect> m_effect; ///< made with the first tick: opening the sound takes a moment
};

} // namespace gw
