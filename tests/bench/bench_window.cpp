// From the start of the program to its first frame on Today with the demonstration shop, against an empty Qt
// Quick Controls window, in turns in one run. Needs a display; tests/end2end/inwindow.sh gives one that
// nobody sees.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include <QApplication>
#include <QProcess>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QtQml/QQmlExtensionPlugin>

#include "app/qmlsingletons.h"
#include "shop/care.h"
#include "support/appbench.h"

Q_IMPORT_QML_PLUGIN(Gluewright_BackendPlugin)
Q_IMPORT_QML_PLUGIN(Gluewright_UiPlugin)

namespace {

constexpr int rounds = 5;

qint64 nanoseconds() { return std::chrono::steady_clock::now().time_since_epoch().count(); }

/// Says when the first frame was on the screen, and ends.
void endWithFirstFrame(QQmlApplicationEngine& engine)
{
    auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().value(0));
    if (!window)
        std::exit(1);
    QObject::connect(
        window, &QQuickWindow::frameSwapped, window,
        [] {
            std::printf("%lld\n", static_cast<long long>(nanoseconds()));
            std::fflush(stdout);
            QCoreApplication::exit(0);
        },
        Qt::SingleShotConnection);
}

int showEmpty(int argc, char** argv)
{
    const QGuiApplication application(argc, argv);
    QQmlApplicationEngine engine;
    engine.loadData(
        "import QtQuick.Controls.Basic\nApplicationWindow { width: 1280; height: 800; visible: true }");
    endWithFirstFrame(engine);
    return QGuiApplication::exec();
}

int showShop(int argc, char** argv, const QString& store)
{
    const QApplication application(argc, argv);
    gw::Clock clock;
    gw::ShopThread shop(clock);
    gw::Settings settings;
    gw::Scanner scanner;
    gw::Navigation navigation;
    gw::AppServices services(clock, shop, settings, scanner, navigation);
    gw::AppServicesForQml::instance = &services;
    shop.open({ store.toStdString() });
    QQmlApplicationEngine engine;
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
    engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Gluewright/Ui/Main.qml")));
    endWithFirstFrame(engine);
    return QGuiApplication::exec();
}

/// Milliseconds from starting a copy of this program to its first frame.
double timed(const QString& program, const QStringList& arguments)
{
    QProcess process;
    const qint64 begin = nanoseconds();
    process.start(program, arguments);
    process.waitForFinished(60000);
    const qint64 end = process.readAllStandardOutput().trimmed().toLongLong();
    if (end == 0) {
        std::fprintf(stderr, "%s\n", process.readAllStandardError().constData());
        std::exit(1);
    }
    return static_cast<double>(end - begin) / 1e6;
}

double median(std::vector<double> values)
{
    std::nth_element(values.begin(), values.begin() + rounds / 2, values.end());
    return values.at(rounds / 2);
}

} // namespace

int main(int argc, char** argv)
{
    if (argc > 1 && qstrcmp(argv[1], "empty") == 0)
        return showEmpty(argc, argv);
    if (argc > 2 && qstrcmp(argv[1], "shop") == 0)
        return showShop(argc, argv, QString::fromLocal8Bit(argv[2]));

    const QCoreApplication application(argc, argv);
    QString store;
    gw::test::AppBench bench(gw::test::AppBench::Stock::Demo);
    store = QString::fromStdString(bench.storeFile());
    bench.ask([](gw::Shop& shop) { return gw::isEmpty(shop); });
    const QString program = QCoreApplication::applicationFilePath();
    std::vector<double> ours, empty;
    timed(program, { QStringLiteral("empty") });
    timed(program, { QStringLiteral("shop"), store });
    for (int i = 0; i < rounds; ++i) {
        empty.push_back(timed(program, { QStringLiteral("empty") }));
        ours.push_back(timed(program, { QStringLiteral("shop"), store }));
    }
    std::printf("first frame: %.0f ms; empty window: %.0f ms; ratio %.2f\n", median(ours), median(empty),
        median(ours) / median(empty));
    return 0;
}
