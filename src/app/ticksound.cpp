#include "app/ticksound.h"

#include <QAudioDevice>
#include <QMediaDevices>
#include <QSoundEffect>
#include <QUrl>

namespace gw {

TickSound::TickSound() = default;
TickSound::~TickSound() = default;

void TickSound::play()
{
    if (!m_effect) {
        if (QMediaDevices::defaultAudioOutput().isNull())
            return;
        m_effect = std::make_unique<QSoundEffect>();
        m_effect->setSource(QUrl(QStringLiteral("qrc:/gluewright/sounds/tick.wav")));
        m_effect->setVolume(0.7F);
    }
    m_effect->play();
}

} // namespace gw
