// Runs the Qt Quick Tests of this folder on a store of their own, filled with the demonstration shop.
#include <QtCore/QObject>
#include <QtQml/QQmlEngine>
#include <QtQml/qqmlextensionplugin.h>
#include <QtQuickTest/quicktest.h>
#include <QtWidgets/QApplication>

#include <optional>

#include "app/qmlsingletons.h"
#include "support/appbench.h"

Q_IMPORT_QML_PLUGIN(Gluewright_BackendPlugin)
Q_IMPORT_QML_PLUGIN(Gluewright_UiPlugin)

class Setup : public QObject {
    Q_OBJECT

public Q_SLOTS:
    void applicationAvailable()
    {
        m_bench.emplace(gw::test::AppBench::Stock::Demo);
        // Whether the machine has a camera must not matter; one that is not there must be told of.
        m_bench->scanner.setCameraFile(m_bench->folder.filePath(QStringLiteral("nothing.png")));
        gw::AppServicesForQml::instance = &m_bench->services;
    }
    void qmlEngineAvailable(QQmlEngine* engine) { engine->addImportPath(QStringLiteral("qrc:/qt/qml")); }
    void cleanupTestCase() { m_bench.reset(); }

private:
    std::optional<gw::test::AppBench> m_bench;
};

int main(int argc, char** argv)
{
    // The charts need this kind of application; the usual main of a Quick Test makes a lesser one.
    const QApplication application(argc, argv);
    Setup setup;
    return quick_test_main_with_setup(argc, argv, "screens", QUICK_TEST_SOURCE_DIR, &setup);
}

#include "tst_screens.moc"
