// Stock as a table in the window: out, a look, and in.
#include <QAbstractItemModelTester>
#include <QFile>
#include <QSignalSpy>
#include <QTest>

#include "app/stockfilecontroller.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

namespace {

struct Screen {
    explicit Screen(AppBench::Stock stock)
        : bench(stock)
    {
        stockFile.setServices(&bench.services);
    }
    void settle()
    {
        [this] { QTRY_VERIFY(!stockFile.busy()); }();
    }
    QUrl file(const QString& name, const QByteArray& text)
    {
        QFile out(bench.folder.filePath(name));
        if (!out.open(QIODevice::WriteOnly) || out.write(text) != text.size())
            qFatal("cannot write %s", qPrintable(name));
        return QUrl::fromLocalFile(out.fileName());
    }
    void look(const QUrl& url)
    {
        stockFile.look(url);
        settle();
    }
    std::size_t containers()
    {
        return bench.ask([](Shop& shop) { return shop.store().containers(); }).size();
    }

    AppBench bench;
    StockFileController stockFile;
};

} // namespace

class StockFileControllerTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void whatWasTakenOut_isHereAlready()
    {
        Screen screen(AppBench::Stock::Demo);
        const QUrl file = QUrl::fromLocalFile(screen.bench.folder.filePath(u"out.csv"_s));
        QSignalSpy said(&screen.bench.services, &AppServices::said);
        screen.stockFile.takeOut(file);
        QTRY_COMPARE(said.size(), 1);
        QVERIFY(said.last().first().toString().contains(u"out.csv"_s));
        screen.look(file);
        QCOMPARE(screen.stockFile.stage(), StockFileController::Looked);
        QVERIFY2(screen.stockFile.said().startsWith(u"0 containers would come in."_s),
            qPrintable(screen.stockFile.said()));
        QVERIFY(screen.stockFile.lines() > 20);
        for (const ShownRow& note : screen.stockFile.notes()->rows())
            QFAIL(qPrintable(note.values[0].toString() + u": "_s + note.values[1].toString()));
        QVERIFY(!screen.stockFile.canStart());
    }

    void look_writesNothing_andBringingIn_isOneActToUndo()
    {
        Screen screen(AppBench::Stock::Places);
        const QAbstractItemModelTester tester(
            screen.stockFile.notes(), QAbstractItemModelTester::FailureReportingMode::QtTest);
        QByteArray text = "material,class,capacity,place\n";
        for (int i = 0; i < 250; ++i)
            text += "Glue,pva_white," + QByteArray::number(100 + i) + " g,Bench\n";
        screen.look(screen.file(u"in.csv"_s, text));
        QVERIFY(screen.stockFile.canStart());
        QVERIFY(screen.stockFile.said().contains(u"New materials: Glue."_s));
        QCOMPARE(screen.containers(), std::size_t { 0 });

        QSignalSpy said(&screen.bench.services, &AppServices::said);
        screen.stockFile.start();
        QCOMPARE(screen.stockFile.stage(), StockFileController::Running);
        screen.settle();
        QCOMPARE(screen.stockFile.stage(), StockFileController::Done);
        QCOMPARE(screen.stockFile.said(), u"Brought in 250 containers from in.csv."_s);
        QCOMPARE(screen.containers(), std::size_t { 250 });
        const QString undoKey = said.last().at(1).toString();
        QVERIFY(!undoKey.isEmpty());
        screen.bench.services.undo(undoKey);
        QTRY_VERIFY(said.last().first().toString().startsWith(u"Undone"_s));
    }

    void linesThatCannotBe_areListed_andNothingCanStart()
    {
        Screen screen(AppBench::Stock::Places);
        QByteArray text = "material,class,capacity\nGlue,pva_white,500 g\n";
        for (int i = 0; i < 130; ++i)
            text += "Glue,,500\n";
        screen.look(screen.file(u"in.csv"_s, text));
        QVERIFY(screen.stockFile.refused() && !screen.stockFile.canStart());
        QCOMPARE(screen.stockFile.notes()->count(), 100);
        QCOMPARE(screen.stockFile.notListed(), 30);
        const ShownRow& first = screen.stockFile.notes()->rows().front();
        QCOMPARE(first.values[0].toString(), u"Line 3, capacity"_s);
        screen.stockFile.start();
        screen.settle();
        QCOMPARE(screen.containers(), std::size_t { 0 });
        screen.stockFile.reset();
        QCOMPARE(screen.stockFile.stage(), StockFileController::Choosing);
        QVERIFY(screen.stockFile.said().isEmpty());
    }

    void filesThatAreNone_areToldOf()
    {
        Screen screen(AppBench::Stock::Places);
        for (const QByteArray& text :
            { QByteArray(), QByteArray("\x00\x01\x02", 3), QByteArray("when,t\n1,2\n") }) {
            screen.look(screen.file(u"in.csv"_s, text));
            QCOMPARE(screen.stockFile.stage(), StockFileController::Choosing);
            QVERIFY2(
                screen.stockFile.errorText().contains(u"in.csv"_s), qPrintable(screen.stockFile.errorText()));
        }
        screen.look(QUrl::fromLocalFile(screen.bench.folder.filePath(u"missing.csv"_s)));
        QVERIFY(screen.stockFile.errorText().contains(u"missing.csv"_s));
    }
};

QTEST_MAIN(StockFileControllerTest)
#include "tst_stockfilecontroller.moc"
