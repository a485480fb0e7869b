#include "app/navigation.h"

namespace gw {

Navigation::Navigation(QObject* parent)
    : QObject(parent)
{
}

void Navigation::goTo(int destination)
{
    if (destination < Today || destination > Shop)
        return;
    m_destination = destination;
    m_pages.clear();
    Q_EMIT moved();
}

void Navigation::openContainer(const QString& idOrLabel)
{
    if (idOrLabel.isEmpty() || idOrLabel == container())
        return;
    m_pages.append({ Page::Container, idOrLabel });
    Q_EMIT moved();
}

void Navigation::openPlace(const QString& id)
{
    if (id.isEmpty() || id == place())
        return;
    m_pages.append({ Page::Place, id });
    Q_EMIT moved();
}

void Navigation::openPots()
{
    if (pots())
        return;
    m_pages.append({ Page::Pots, QString() });
    Q_EMIT moved();
}

void Navigation::back()
{
    if (m_pages.isEmpty())
        return;
    m_pages.removeLast();
    Q_EMIT moved();
}

void Navigation::scan() { Q_EMIT scanWanted(); }

void Navigation::showShelf(const QString& verdict)
{
    goTo(Shelf);
    Q_EMIT shelfWanted(verdict);
}

} // namespace gw
