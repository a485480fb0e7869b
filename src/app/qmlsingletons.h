#pragma once

#include <QQmlEngine>
#include <QtQmlIntegration/qqmlintegration.h>

#include "app/appservices.h"

namespace gw {

/// Gives QML the services that main() or a test made, by the name AppServices. The wrapped class itself
/// carries no QML macro: with one, qmllint of Qt 6.4 loses its properties.
struct AppServicesForQml {
    Q_GADGET
    QML_FOREIGN(gw::AppServices)
    QML_SINGLETON
    QML_NAMED_ELEMENT(AppServices)

public:
    /// Set before the engine loads anything; stays its owner's.
    inline static AppServices* instance = nullptr;

    static AppServices* create(QQmlEngine*, QJSEngine* engine)
    {
        Q_ASSERT(instance);
        Q_ASSERT(engine->thread() == instance->thread());
        QJSEngine::setObjectOwnership(instance, QJSEngine::CppOwnership);
        return instance;
    }
};

} // namespace gw
