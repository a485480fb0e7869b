// The whole way, in a real window: a video of a label plays before the camera, a person presses one button,
// and what arrived stands on the shelf, is what the check before a glue-up picks, and is off the order list.
#include <QGuiApplication>
#include <QProcess>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QSGRendererInterface>
#include <QTest>
#include <QtQml/QQmlExtensionPlugin>

#include "app/arrivalcontroller.h"
#include "app/glueupcontroller.h"
#include "app/ordercontroller.h"
#include "app/qmlsingletons.h"
#include "app/shelfmodel.h"
#include "end2end/windowdriver.h"
#include "shop/setup.h"
#include "shop/shelf.h"
#include "shop/work.h"
#include "support/appbench.h"
#include "support/drawnsymbol.h"

Q_IMPORT_QML_PLUGIN(Gluewright_BackendPlugin)
Q_IMPORT_QML_PLUGIN(Gluewright_UiPlugin)

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

// A slow machine draws in software, decodes and works the store on two cores: everything is waited for,
// nothing timed.
#define GW_WAIT(condition) QTRY_VERIFY_WITH_TIMEOUT(condition, 120'000)
#define GW_PRESS(name) QVERIFY2(driver.pressNamed(name), "no " #name " to press")

namespace {

/// 250 g of the polyurethane glue of the demonstration shop (db/demo/packs.csv, prefix 952 of GS1 for
/// demonstrations), made up as a maker's GS1 DataMatrix: item, lot, use by.
constexpr auto label = "[01]09520001465031[10]FS-E2E[17]280331";
const auto material = "Polyurethane glue";
const auto jobType = "turning_blank_pur";

Date nextMonth() { return std::chrono::year { 2026 } / std::chrono::month { 4 } / std::chrono::day { 1 }; }

/// What the shop itself answers, past every screen.
struct Answers {
    std::vector<ShelfItem> items; ///< of the material
    GlueUpAnswer check;
    std::optional<OrderLine> line; ///< of the material

    static Answers of(AppBench& bench)
    {
        return bench.ask([now = bench.now](Shop& shop) -> Result<Answers> {
            Answers answers;
            auto items = shelf(shop, { now });
            auto check = checkJob(shop, jobType, 1, {}, now);
            auto order = orderForMonth(shop, { nextMonth(), 95 }, now);
            if (!items || !check || !order)
                return fail(ErrorCode::StoreFailed, "The shop does not answer.");
            for (ShelfItem& item : *items) {
                if (item.materialName == material)
                    answers.items.push_back(std::move(item));
            }
            answers.check = std::move(*check);
            for (OrderLine& line : order->lines) {
                if (line.name == material)
                    answers.line = std::move(line);
            }
            return answers;
        });
    }
};

} // namespace

class LabelVideoTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir m_dir;

    QString labelVideo()
    {
        const QString picture = m_dir.filePath(u"label.png"_s), video = m_dir.filePath(u"label.webm"_s);
        if (!placed(drawSymbol(Symbology::Gs1DataMatrix, label, 4), QSize(640, 480), 240).save(picture))
            return {};
        const int made = QProcess::execute(
            QStringLiteral(GW_SOURCE_DIR "/tests/support/labelvideo.sh"), { picture, video });
        return made == 0 ? video : QString();
    }

private Q_SLOTS:
    void label_isBookedInByOnePress_andChangesEveryAnswer()
    {
        AppBench bench(AppBench::Stock::Demo);
        const QString video = labelVideo();
        QVERIFY2(!video.isEmpty(), "gst-launch-1.0 and the good plugins are needed");
        bench.scanner.setCameraFile(video);
        AppServicesForQml::instance = &bench.services;

        QQmlApplicationEngine engine;
        engine.addImportPath(u"qrc:/qt/qml"_s);
        engine.load(QUrl(u"qrc:/qt/qml/Gluewright/Ui/Main.qml"_s));
        QVERIFY(!engine.rootObjects().isEmpty());
        auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().constFirst());
        QVERIFY(window);
        bench.scanner.wedge().watch(window);
        QVERIFY(QTest::qWaitForWindowExposed(window, 120'000));
        QCOMPARE(QGuiApplication::platformName(), u"xcb"_s);
        QCOMPARE(window->rendererInterface()->graphicsApi(), QSGRendererInterface::OpenGL);
        const WindowDriver driver(*window);
        const auto go = [&](const QString& where) {
            return driver.press([&] { return driver.withText("RailButton", "text", where); });
        };
        // Where the material stands on the order list; -1: it is not on it; none: the list is still being
        // made.
        const auto onOrder = [&]() -> std::optional<int> {
            auto* order = window->findChild<OrderController*>(u"orderController"_s);
            if (!order || !order->loaded() || order->busy() || !driver.named(u"orderList"_s))
                return std::nullopt;
            const auto& rows = order->lines()->rows();
            const auto row = std::find_if(rows.begin(), rows.end(), [&](const ShownRow& each) {
                return order->lines()->value(each.key, "name") == QLatin1String(material);
            });
            return row == rows.end() ? -1 : static_cast<int>(row - rows.begin());
        };

        // Before: none of it is good, so the check has nothing to use and the order list wants a pack.
        const Answers before = Answers::of(bench);
        QVERIFY(before.check.use.empty());
        QVERIFY(before.line && !before.line->packs.empty());
        QVERIFY(go(u"Order"_s));
        GW_WAIT(onOrder().value_or(-1) >= 0);
        QMetaObject::invokeMethod(
            driver.named(u"orderList"_s), "positionViewAtIndex", Q_ARG(int, *onOrder()), Q_ARG(int, 0));
        GW_WAIT(driver.withText("OrderLineRow", "name", QLatin1String(material)));

        // The camera sees the label, and its picture is on the screen: paper beside the symbol.
        QVERIFY(go(u"Arrivals"_s));
        GW_WAIT(driver.named(u"viewfinder"_s));
        GW_WAIT(bench.scanner.camera()->state() == Camera::Looking
            || bench.scanner.camera()->state() == Camera::Held);
        const QQuickItem* viewfinder = driver.named(u"viewfinder"_s);
        GW_WAIT(driver.colourAt(*viewfinder, 0.2, 0.3).lightness() > 200);
        GW_WAIT(bench.scanner.camera()->outline().size() == 4);

        // It was read, and one press books it in.
        GW_WAIT(driver.named(u"headName"_s));
        QCOMPARE(driver.named(u"headName"_s)->property("text").toString(), QLatin1String(material));
        QCOMPARE(driver.named(u"headAmount"_s)->property("text").toString(), u"250\u00a0g"_s);
        QCOMPARE(Answers::of(bench).items.size(), before.items.size());
        GW_PRESS(u"bookIn"_s);
        GW_WAIT(driver.named(u"newLabel"_s));
        const QString code = driver.named(u"newLabel"_s)->property("text").toString();

        // After: the shop's own answers.
        const Answers after = Answers::of(bench);
        QCOMPARE(after.items.size(), before.items.size() + 1);
        const auto arrived = std::find_if(after.items.begin(), after.items.end(),
            [&](const ShelfItem& item) { return QString::fromStdString(item.label) == code; });
        QVERIFY(arrived != after.items.end());
        QCOMPARE(arrived->lot, std::string("FS-E2E"));
        QCOMPARE(formatDate(arrived->printed.value_or(Date {})), std::string("2028-03-31"));
        QVERIFY(arrived->printedIsUseBy);
        QCOMPARE(arrived->left, grams(250));
        QCOMPARE(arrived->judgement.verdict, Verdict::Good);
        QCOMPARE(after.check.use.size(), std::size_t(1));
        QCOMPARE(QString::fromStdString(after.check.use.front().label), code);
        QVERIFY(!after.line);

        // The shelf shows it; looked up by what is written on it.
        QVERIFY(go(u"Shelf"_s));
        QVERIFY(driver.press([&] {
            return driver.find([](const QQuickItem& item) {
                return QByteArray(item.metaObject()->className()).startsWith("SearchField");
            });
        }));
        driver.type(code);
        const QString id = QString::fromStdString(arrived->id.text);
        GW_WAIT(driver.withText("ShelfCell", "key", id));
        const QQuickItem* cell = driver.withText("ShelfCell", "key", id);
        QCOMPARE(cell->property("verdict").toString(), u"good"_s);
        QCOMPARE(cell->property("name").toString(), QLatin1String(material));

        // The check before a glue-up takes that one.
        QVERIFY(go(u"Glue-up"_s));
        const auto work = bench.ask([](Shop& shop) { return findJobType(shop, jobType); });
        GW_PRESS(u"jobTypePicker"_s);
        GW_PRESS(u"jobTypeSearch"_s);
        driver.type(u"polyurethane"_s);
        QVERIFY(driver.press(
            [&] { return driver.withText("PickerRow", "text", QString::fromStdString(work.name)); }));
        const auto inUse = [&] { return driver.withText("GlueUpUseRow", "label", code); };
        GW_WAIT(inUse());
        QCOMPARE(inUse()->property("name").toString().contains(QLatin1String(material)), true);

        // The order list no longer wants any.
        QVERIFY(go(u"Order"_s));
        GW_WAIT(onOrder() == -1);
        QVERIFY(driver.find([](const QQuickItem& item) {
            return QByteArray(item.metaObject()->className()).startsWith("OrderLineRow");
        }));
    }
};

QTEST_MAIN(LabelVideoTest)
#include "tst_labelvideo.moc"
