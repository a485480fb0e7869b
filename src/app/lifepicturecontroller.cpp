#include "app/lifepicturecontroller.h"

#include <algorithm>

namespace gw {

LifePictureController::LifePictureController(QObject* parent)
    : Controller(parent)
    , m_marks(lifeMarkRoles)
{
}

void LifePictureController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &LifePictureController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &LifePictureController::read);
    connect(services()->settings(), &Settings::unitsChanged, this, &LifePictureController::read);
    read();
}

void LifePictureController::setContainer(const QString& idOrLabel)
{
    if (idOrLabel == m_container)
        return;
    m_container = idOrLabel;
    Q_EMIT containerChanged();
    if (services())
        read();
}

void LifePictureController::read()
{
    if (m_container.isEmpty())
        return;
    take(services()->shop().run([container = m_container.toStdString(), now = services()->clock().now(),
                                    units = services()->settings()->unitSystem()](const Shop& shop) {
        return lifeStory(shop, container, now).map([&](const LifeStory& story) {
            return lifePictureShown(story, units);
        });
    }),
        [this](LifePictureShown picture) { show(std::move(picture)); });
}

void LifePictureController::show(LifePictureShown picture)
{
    m_marks.setRows(std::move(picture.marks));
    m_shown = std::move(picture);
    m_air.draw(m_shown.air);
    m_loaded = true;
    setError(QString());
    setClock(
        m_shown.clocks.isEmpty() ? -1 : std::clamp(m_clock, 0, static_cast<int>(m_shown.clocks.size()) - 1));
}

void LifePictureController::setClock(int clock)
{
    m_clock = clock;
    if (clock >= 0 && clock < m_shown.clocks.size())
        m_life.draw(m_shown.lives[static_cast<std::size_t>(clock)]);
    Q_EMIT shown();
}

} // namespace gw
