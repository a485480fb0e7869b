#pragma once

#include <memory>

#include <QString>

class QSoundEffect;

namespace gw {

/// A short sound of our own making: the tick when a code was read, or the bell when a pot is due. A device
/// without sound stays silent. GUI thread.
class TickSound {
public:
    explicit TickSound(QString file = QStringLiteral("tick.wav"));
    ~TickSound();
    TickSound(const TickSound&) = delete;
    TickSound& operator=(const TickSound&) = delete;

    void play();

private:
    QString m_file;
    std::unique_ptr<QSoundEffect> m_effect; ///< made with the first tick: opening the sound takes a moment
};

} // namespace gw
