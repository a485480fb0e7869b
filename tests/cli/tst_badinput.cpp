#include <QTest>

#include "cli/program.h"
#include "support/drawnsymbol.h"

using namespace gw::test;

/// What cannot be: one sentence on stderr, status 1 (2 for wrong usage), nothing on stdout that looks like an
/// answer, nothing written.
class BadInputTest : public QObject {
    Q_OBJECT

private:
    static qsizetype shelfSize(const Program& program)
    {
        return program({ QStringLiteral("shelf") }).json()[u"containers"].toArray().size();
    }

    static void refused(const Ran& ran)
    {
        QVERIFY2(ran.status == 1, ran.err.constData());
        const QByteArray said = ran.err.trimmed();
        QVERIFY2(said.size() > 20 && said.endsWith('.') && !said.contains('\n'), said.constData());
    }

private Q_SLOTS:
    void amountsThatCannotBe_data()
    {
        QTest::addColumn<QString>("amount");
        for (const char* amount : { "-5g", "-5 g", "5", "g", "five grams", "", "5 furlongs", "1e99 kg", "0 g",
                 "nan g", "5g; DROP TABLE entry" })
            QTest::newRow(amount) << QString::fromUtf8(amount);
    }
    void amountsThatCannotBe()
    {
        QFETCH(QString, amount);
        const Program program;
        refused(program({ QStringLiteral("arrive"), QStringLiteral("--material"), QStringLiteral("White PVA"),
            QStringLiteral("--class"), QStringLiteral("pva_white"), QStringLiteral("--amount=") + amount }));
        QCOMPARE(shelfSize(program), 0);
        const Ran arrived = program({ QStringLiteral("arrive"), QStringLiteral("--material"),
            QStringLiteral("White PVA"), QStringLiteral("--class"), QStringLiteral("pva_white"),
            QStringLiteral("--amount"), QStringLiteral("500g") });
        QCOMPARE(arrived.status, 0);
        const QString id = arrived.json()[u"containers"].toArray().first().toString();
        refused(program({ QStringLiteral("use"), id, amount }));
        const QJsonObject page = program({ QStringLiteral("show"), id }).json();
        QCOMPARE(page[u"entries"].toArray().size(), 1);
    }

    void codesThatAreWrong_data()
    {
        QTest::addColumn<QString>("code");
        QTest::newRow("check digit") << QStringLiteral("9520123456789");
        QTest::newRow("check digit in an element string") << QStringLiteral("(01)09520123456789");
        QTest::newRow("30 February") << QStringLiteral("(01)09520123456788(17)270230");
        QTest::newRow("month 13") << QStringLiteral("(01)09520123456788(17)271301");
    }
    void codesThatAreWrong()
    {
        QFETCH(QString, code);
        const Program program;
        refused(program({ QStringLiteral("code"), code }));
        refused(program({ QStringLiteral("arrive"), QStringLiteral("--code"), code,
            QStringLiteral("--material"), QStringLiteral("White PVA"), QStringLiteral("--class"),
            QStringLiteral("pva_white"), QStringLiteral("--amount"), QStringLiteral("500g") }));
        QCOMPARE(shelfSize(program), 0);
    }

    void datesThatCannotBe_data()
    {
        QTest::addColumn<QString>("date");
        for (const char* date :
            { "2026-02-30", "0201-01-01", "31.12.2026", "soon", "2026-13-01", "2026-1-1x" })
            QTest::newRow(date) << QString::fromUtf8(date);
    }
    void datesThatCannotBe()
    {
        QFETCH(QString, date);
        const Program program;
        for (const char* option : { "--made", "--label-date" }) {
            refused(program({ QStringLiteral("arrive"), QStringLiteral("--material"),
                QStringLiteral("White PVA"), QStringLiteral("--class"), QStringLiteral("pva_white"),
                QStringLiteral("--amount"), QStringLiteral("500g"), QString::fromUtf8(option), date }));
        }
        refused(program({ QStringLiteral("shelf"), QStringLiteral("--as-of"), date }));
        QCOMPARE(shelfSize(program), 0);
    }

    void picturesThatShowNothing()
    {
        const Program program;
        const auto write = [&](const QString& name, const QByteArray& bytes) {
            QFile file(program.file(name));
            if (!file.open(QIODevice::WriteOnly))
                qFatal("cannot write");
            file.write(bytes);
            return program.file(name);
        };
        QImage blank(640, 480, QImage::Format_Grayscale8);
        blank.fill(200);
        const QString empty = program.file(QStringLiteral("blank.png"));
        QVERIFY(blank.save(empty));
        const QString broken
            = write(QStringLiteral("broken.png"), QByteArray("\x89PNG\r\n\x1a\n then nothing"));
        const QString text = write(QStringLiteral("text.png"), "not a picture");
        for (const QString& picture : { empty, broken, text, program.file(QStringLiteral("missing.png")) }) {
            refused(program.plain({ QStringLiteral("read"), picture }));
            refused(program({ QStringLiteral("arrive"), QStringLiteral("--picture"), picture }));
        }
    }

    void storesThatCannotBeUsed()
    {
        Program program;
        QFile foreign(program.file(QStringLiteral("letter.txt")));
        QVERIFY(foreign.open(QIODevice::WriteOnly));
        foreign.write("Dear reader, this is a letter and no store at all.\n");
        foreign.close();
        for (const QString& store :
            { foreign.fileName(), program.file(QStringLiteral("no/such/folder/shop.gluewright")),
                QStringLiteral("postgresql://nobody@127.0.0.1:1/nothing"),
                QStringLiteral("postgresql://[broken") }) {
            program.setStore(store);
            refused(program({ QStringLiteral("shelf") }));
            refused(program({ QStringLiteral("demo") }));
        }
        QVERIFY(foreign.open(QIODevice::ReadOnly));
        QVERIFY(foreign.readAll().startsWith("Dear reader"));
    }

    void wrongUsage_isStatusTwo_data()
    {
        QTest::addColumn<QStringList>("arguments");
        QTest::newRow("unknown command") << QStringList { QStringLiteral("glue") };
        QTest::newRow("missing argument") << QStringList { QStringLiteral("use") };
        QTest::newRow("unknown option")
            << QStringList { QStringLiteral("shelf"), QStringLiteral("--colour") };
        QTest::newRow("unknown verdict")
            << QStringList { QStringLiteral("shelf"), QStringLiteral("--verdict"), QStringLiteral("fine") };
        QTest::newRow("test without a result") << QStringList { QStringLiteral("test"), QStringLiteral("X") };
    }
    void wrongUsage_isStatusTwo()
    {
        QFETCH(QStringList, arguments);
        const Program program;
        const Ran ran = program(arguments);
        QCOMPARE(ran.status, 2);
        QVERIFY(ran.out.isEmpty());
        QVERIFY(!ran.err.isEmpty());
    }

    void figuresThatCannotBe_data()
    {
        QTest::addColumn<QStringList>("arguments");
        const auto check = [](const char* option, const char* value) {
            return QStringList { QStringLiteral("check"), QStringLiteral("panel_edge"),
                QString::fromUtf8(option), QString::fromUtf8(value) };
        };
        QTest::newRow("humidity 300") << check("--rh", "300");
        QTest::newRow("gap 40 mm") << check("--gap", "40");
        QTest::newRow("no pieces") << check("--pieces", "0");
        QTest::newRow("air without unit") << check("--air", "20");
        QTest::newRow("wood at 900 C") << check("--wood", "900C");
        QTest::newRow("a month past")
            << QStringList { QStringLiteral("order"), QStringLiteral("--month"), QStringLiteral("2001-01") };
        QTest::newRow("no month") << QStringList { QStringLiteral("order"), QStringLiteral("--month"),
            QStringLiteral("May") };
        QTest::newRow("service 100") << QStringList { QStringLiteral("order"), QStringLiteral("--service"),
            QStringLiteral("100") };
        QTest::newRow("restore of nothing")
            << QStringList { QStringLiteral("restore"), QStringLiteral("/no/such/file") };
        QTest::newRow("no such container")
            << QStringList { QStringLiteral("show"), QStringLiteral("nothing") };
        QTest::newRow("low above high") << QStringList { QStringLiteral("place"), QStringLiteral("Bench"),
            QStringLiteral("--low"), QStringLiteral("30C"), QStringLiteral("--high"), QStringLiteral("10C") };
    }
    void figuresThatCannotBe()
    {
        QFETCH(QStringList, arguments);
        refused(Program()(arguments));
    }
};

QTEST_GUILESS_MAIN(BadInputTest)
#include "tst_badinput.moc"
