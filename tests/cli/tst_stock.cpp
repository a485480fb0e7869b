// Stock as a table, labels and materials in the terminal.
#include <QTest>

#include "cli/program.h"

using namespace gw::test;
using namespace Qt::StringLiterals;

class StockCommands : public QObject {
    Q_OBJECT

    static void write(const QString& path, const QByteArray& text)
    {
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
    }

private Q_SLOTS:
    void whatIsTakenOut_isBroughtIntoAnotherStore()
    {
        Program program;
        QCOMPARE(program({ u"demo"_s }).status, 0);
        const QString table = program.file(u"stock.csv"_s);
        const Ran out = program({ u"stock"_s, u"export"_s, table });
        QCOMPARE(out.status, 0);
        const int containers = out.json()[u"containers"].toInt();
        QVERIFY(containers > 20);

        const QJsonObject same = program({ u"stock"_s, u"import"_s, table, u"--look"_s }).json();
        QCOMPARE(same[u"coming"].toInt(), 0);
        QCOMPARE(same[u"here"].toInt(), containers);
        const Ran again = program({ u"stock"_s, u"import"_s, table });
        QCOMPARE(again.status, 1);
        QVERIFY(again.err.contains("here already"));

        program.setStore(program.file(u"other.gluewright"_s));
        const QJsonObject look = program({ u"stock"_s, u"import"_s, table, u"--look"_s }).json();
        QCOMPARE(look[u"coming"].toInt(), containers);
        QVERIFY(look[u"refused"].toArray().isEmpty());
        QVERIFY(!look[u"new_materials"].toArray().isEmpty());
        QCOMPARE(program({ u"shelf"_s }).json()[u"containers"].toArray().size(), 0);
        const Ran in = program({ u"stock"_s, u"import"_s, table });
        QCOMPARE(in.status, 0);
        QCOMPARE(in.json()[u"containers"].toInt(), containers);
        QCOMPARE(program({ u"verify"_s }).status, 0);
        const QString second = program.file(u"second.csv"_s);
        QCOMPARE(program({ u"stock"_s, u"export"_s, second }).status, 0);
        QFile before(table), after(second);
        QVERIFY(before.open(QIODevice::ReadOnly) && after.open(QIODevice::ReadOnly));
        QCOMPARE(after.readAll(), before.readAll());
    }

    void badTables_areRefused_withLineAndColumn()
    {
        const Program program;
        const QString table = program.file(u"stock.csv"_s);
        write(table, "material,class,capacity\nGlue,pva_white,500 g\nGlue,pva_white,500\n");
        const Ran in = program({ u"stock"_s, u"import"_s, table });
        QCOMPARE(in.status, 1);
        QVERIFY2(in.err.contains("stock.csv line 3, capacity"), in.err.constData());
        QVERIFY(program({ u"shelf"_s }).json()[u"containers"].toArray().isEmpty());
        write(table, "a,b\n");
        QVERIFY(program({ u"stock"_s, u"import"_s, table, u"--look"_s }).err.contains("no column"));
        QVERIFY(program({ u"stock"_s, u"import"_s, program.file(u"none.csv"_s) }).err.contains("none.csv"));
        QCOMPARE(program({ u"stock"_s, u"export"_s, program.file(u"no/such/folder.csv"_s) }).status, 1);
    }

    void labels_goToAFileOrAPrinter_neverToNeither()
    {
        const Program program;
        QCOMPARE(program({ u"demo"_s }).status, 0);
        const Ran nowhere = program({ u"label"_s, u"--shelf"_s });
        QVERIFY(nowhere.status != 0);
        const Ran noPrinter
            = program({ u"label"_s, u"--shelf"_s, u"--printer"_s, u"No printer of that name"_s });
        QCOMPARE(noPrinter.status, 1);
        QVERIFY2(noPrinter.err.contains("There is no printer"), noPrinter.err.constData());
        const QString pdf = program.file(u"labels.pdf"_s);
        const Ran written = program({ u"label"_s, u"--shelf"_s, u"--pdf"_s, pdf, u"--size"_s,
            u"63,5 x 38,1"_s, u"--sheet"_s, u"A4"_s, u"--columns"_s, u"3"_s, u"--rows"_s, u"7"_s });
        QCOMPARE(written.status, 0);
        QVERIFY(QFile::exists(pdf));
        const int labels = written.json()[u"labels"].toInt();
        QCOMPARE(written.json()[u"pages"].toInt(), (labels + 20) / 21);
    }
};

QTEST_MAIN(StockCommands)
#include "tst_stock.moc"
