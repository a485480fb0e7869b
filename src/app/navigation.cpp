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
    m_containers.clear();
    Q_EMIT moved();
}

void Navigation::openContainer(const QString& idOrLabel)
{
    if (idOrLabel.isEmpty() || idOrLabel == container())
        return;
    m_containers.append(idOrLabel);
    Q_EMIT moved();
}

void Navigation::back()
{
    if (m_containers.isEmpty())
        return;
    m_containers.removeLast();
    Q_EMIT moved();
}

void Navigation::scan() { Q_EMIT scanWanted(); }

void Navigation::showShelf(const QString& verdict)
{
    goTo(Shelf);
    Q_EMIT shelfWanted(verdict);
}

} // namespace gw
