#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QtQml/QQmlExtensionPlugin>

#include "app/plurals.h"
#include "app/qmlsingletons.h"
#include "cli/commandline.h"

Q_IMPORT_QML_PLUGIN(Gluewright_BackendPlugin)
Q_IMPORT_QML_PLUGIN(Gluewright_UiPlugin)

namespace {

bool hasDisplay()
{
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY")
        || qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

/// The value of --store, before there is an application that could parse it properly.
std::string storeOption(int argc, char** argv)
{
    for (int i = 1; i < argc; ++i) {
        const std::string_view argument(argv[i]);
        if (argument == "--store" && i + 1 < argc)
            return argv[i + 1];
        if (argument.substr(0, 8) == "--store=")
            return std::string(argument.substr(8));
    }
    return {};
}

int showWindow(int argc, char** argv)
{
    // The charts are drawn by widgets' painting, which needs this kind of application.
    QApplication application(argc, argv);
    QGuiApplication::setDesktopFileName(QStringLiteral("gluewright"));
    QGuiApplication::setWindowIcon(QIcon(QStringLiteral(":/qt/qml/Gluewright/Ui/icons/gluewright.svg")));

    gw::Plurals plurals;
    QCoreApplication::installTranslator(&plurals);

    QCommandLineParser options;
    const QCommandLineOption store(QStringLiteral("store"), {}, QStringLiteral("where"));
    const QCommandLineOption camera(QStringLiteral("camera"), {}, QStringLiteral("file"));
    const QCommandLineOption theme(QStringLiteral("theme"), {}, QStringLiteral("light|dark"));
    options.addOptions({ store, camera, theme });
    options.process(application);

    gw::Settings settings;
    if (options.isSet(theme))
        settings.overrideTheme(options.value(theme));
    gw::Clock clock;
    gw::ShopThread shop(clock);
    gw::Scanner scanner;
    scanner.setCameraFile(options.value(camera));
    gw::Navigation navigation;
    gw::AppServices services(clock, shop, settings, scanner, navigation);
    gw::AppServicesForQml::instance = &services;

    std::string where = options.value(store).toStdString();
    if (where.empty())
        where = settings.store().toStdString();
    shop.open({ where.empty() ? gw::defaultStore() : where });

    QQmlApplicationEngine engine;
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
    QObject::connect(
        &engine, &QQmlApplicationEngine::objectCreationFailed, &application,
        [] { QCoreApplication::exit(1); }, Qt::QueuedConnection);
    engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Gluewright/Ui/Main.qml")));
    if (!engine.rootObjects().isEmpty())
        scanner.wedge().watch(qobject_cast<QQuickWindow*>(engine.rootObjects().constFirst()));
    return QGuiApplication::exec();
}

} // namespace

int main(int argc, char** argv)
{
    QCoreApplication::setApplicationName(QStringLiteral("gluewright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(GW_VERSION));
    if (gw::isCommand(argc, argv))
        return gw::runCommand(argc, argv);
    if (!hasDisplay())
        return gw::runWithoutDisplay(storeOption(argc, argv));
    return showWindow(argc, argv);
}
