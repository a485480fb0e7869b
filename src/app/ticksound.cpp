#include "app/ticksound.h"

#include <utility>

#include <QAudioDevice>
#include <QMediaDevices>
#include <QSoundEffect>
#include <QUrl>

namespace gw {

TickSound::TickSound(QString file)
    : m_file(std::move(file))
{
}
TickSound::~TickSound() = default;

void TickSound::play()
{
    if (!m_effect) {
        if (QMediaDevices::defaultAudioOutput().isNull())
            return;
        m_effect = std::make_unique<QSoundEffect>();
        m_effect->setSource(QUrl(QStringLiteral("qrc:/gluewright/sounds/") + m_file));
        m_effect->setVolume(0.7F);
    }
    m_effect->play();
}

} // namespace gw
