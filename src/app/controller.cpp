#include "app/controller.h"

namespace gw {

Controller::Controller(QObject* parent)
    : QObject(parent)
{
}

void Controller::setServices(AppServices* services)
{
    if (services == m_services)
        return;
    if (m_services)
        m_services->disconnect(this);
    m_services = services;
    Q_EMIT servicesChanged();
    if (m_services)
        begin();
}

void Controller::setError(const QString& sentence)
{
    if (sentence == m_errorText)
        return;
    m_errorText = sentence;
    Q_EMIT errorTextChanged();
}

void Controller::started()
{
    if (++m_pending == 1)
        Q_EMIT busyChanged();
}

void Controller::ended()
{
    if (--m_pending == 0)
        Q_EMIT busyChanged();
}

} // namespace gw
