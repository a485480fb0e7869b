#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QTest>

#include <random>

#include "exchange/csv.h"

using namespace gw;

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Header and rows, as one list.
Rows everything(const CsvTable& table)
{
    Rows all { table.columns };
    all.insert(all.end(), table.rows.begin(), table.rows.end());
    return all;
}

QByteArray shown(const Rows& rows)
{
    QByteArray text;
    for (const auto& row : rows) {
        for (const auto& cell : row)
            text += '[' + QByteArray::fromStdString(cell).toPercentEncoding(" ,;.") + ']';
        text += '\n';
    }
    return text;
}

} // namespace

class Csv : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void text_isReadAsTheStandardSays_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QByteArray>("expected");
        const Rows plain { { "aaa", "bbb", "ccc" }, { "zzz", "yyy", "xxx" } };
        // RFC 4180 section 2, the examples of its rules (first line taken as the header).
        QTest::newRow("rule 1: each record on its line")
            << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") << shown(plain);
        QTest::newRow("rule 2: the last line may lack its end")
            << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx") << shown(plain);
        QTest::newRow("rule 4: spaces are part of a field")
            << QByteArray("a, b ,c\r\n 1 ,2, 3\r\n") << shown({ { "a", " b ", "c" }, { " 1 ", "2", " 3" } });
        QTest::newRow("rule 5: quoted and not")
            << QByteArray("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") << shown(plain);
        QTest::newRow("rule 6: a line break in a field")
            << QByteArray("aaa,bbb,ccc\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx")
            << shown({ { "aaa", "bbb", "ccc" }, { "aaa", "b\r\nbb", "ccc" }, { "zzz", "yyy", "xxx" } });
        QTest::newRow("rule 7: a quote in a field") << QByteArray(
            "a,b,c\n\"aaa\",\"b\"\"bb\",\"ccc\"") << shown({ { "a", "b", "c" }, { "aaa", "b\"bb", "ccc" } });
        // Beyond the standard, met in practice.
        QTest::newRow("line feeds alone") << QByteArray("aaa,bbb,ccc\nzzz,yyy,xxx\n") << shown(plain);
        QTest::newRow("carriage returns alone") << QByteArray("aaa,bbb,ccc\rzzz,yyy,xxx\r") << shown(plain);
        QTest::newRow("empty lines") << QByteArray("\naaa,bbb,ccc\n\n\nzzz,yyy,xxx\n\n") << shown(plain);
        QTest::newRow("byte order mark") << QByteArray("\xEF\xBB\xBF"
                                                       "aaa,bbb,ccc\nzzz,yyy,xxx\n")
                                         << shown(plain);
        QTest::newRow("semicolons") << QByteArray("aaa;bbb;ccc\nzzz;yyy;xxx\n") << shown(plain);
        QTest::newRow("semicolons and decimal commas")
            << QByteArray("time;temperature\n2026-01-01;18,5\n")
            << shown({ { "time", "temperature" }, { "2026-01-01", "18,5" } });
        QTest::newRow("tabs") << QByteArray("aaa\tbbb\tccc\nzzz\tyyy\txxx\n") << shown(plain);
        QTest::newRow("a semicolon in a quoted name")
            << QByteArray("\"a;b\",c\n1,2\n") << shown({ { "a;b", "c" }, { "1", "2" } });
        QTest::newRow("empty cells") << QByteArray("a,b,c\n,,\n")
                                     << shown({ { "a", "b", "c" }, { "", "", "" } });
        QTest::newRow("a header alone") << QByteArray("a,b\n") << shown({ { "a", "b" } });
        QTest::newRow("one column") << QByteArray("a\n1\n2\n") << shown({ { "a" }, { "1" }, { "2" } });
        QTest::newRow("ISO 8859-1") << QByteArray("time,\xB0"
                                                  "C\n1,2\n")
                                    << shown({ { "time",
                                                   "\xC2\xB0"
                                                   "C" },
                                           { "1", "2" } });
    }

    void text_isReadAsTheStandardSays()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QByteArray, expected);
        const auto table = readCsv(bytes.toStdString(), "test.csv");
        QVERIFY2(table, table ? "" : table.error().sentence.c_str());
        QCOMPARE(shown(everything(*table)), expected);
        QCOMPARE(table->lines.size(), table->rows.size());
    }

    // Outside check: tables that Python's csv module wrote and read back
    // (tests/data/exchange/python_csv.json).
    void tablesOfAnotherImplementation_areReadAlike()
    {
        QFile file(QStringLiteral(GW_TEST_DATA "/exchange/python_csv.json"));
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QJsonArray cases = QJsonDocument::fromJson(file.readAll())[QStringLiteral("cases")].toArray();
        QVERIFY(cases.size() >= 100);
        for (const auto& item : cases) {
            const QByteArray bytes
                = QByteArray::fromBase64(item[QStringLiteral("bytes")].toString().toLatin1());
            Rows rows;
            for (const auto& row : item[QStringLiteral("rows")].toArray()) {
                rows.emplace_back();
                for (const auto& cell : row.toArray())
                    rows.back().push_back(cell.toString().toStdString());
            }
            const auto table = readCsv(bytes.toStdString(), "test.csv");
            QVERIFY2(table, bytes);
            QCOMPARE(shown(everything(*table)), shown(rows));
        }
    }

    void fault_isToldWithItsLine_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QByteArray>("says");
        QTest::newRow("nothing") << QByteArray() << QByteArray("empty");
        QTest::newRow("empty lines alone") << QByteArray("\n\r\n\n") << QByteArray("empty");
        QTest::newRow("too few cells")
            << QByteArray("a,b\n1,2\n3\n") << QByteArray("line 3: 1 cells where the header has 2");
        QTest::newRow("too many cells") << QByteArray("a,b\n1,2,3\n") << QByteArray("line 2: 3 cells");
        QTest::newRow("counted over line breaks in cells")
            << QByteArray("a,b\n\"1\n\n1\",2\n\n\n3\n") << QByteArray("line 7: 1 cells");
        QTest::newRow("quote inside a bare cell")
            << QByteArray("a,b\n1,2\n3\",4\n") << QByteArray("line 3: a quotation mark");
        QTest::newRow("text after a quoted cell")
            << QByteArray("a,b\n\"1\"x,2\n") << QByteArray("line 2: a quotation mark");
        QTest::newRow("quote never closed")
            << QByteArray("a,b\n1,2\n\"3,4\n5,6\n") << QByteArray("line 3: a quotation mark is never closed");
        QTest::newRow("column without name")
            << QByteArray("a,,c\n1,2,3\n") << QByteArray("line 1: a column has no name");
        QTest::newRow("column named twice")
            << QByteArray("\na,b,a\n1,2,3\n") << QByteArray("line 2: two columns are named \"a\"");
        QTest::newRow("UTF-16") << QByteArray("\xFF\xFE"
                                              "a\0,\0b\0\n\0",
            10) << QByteArray("not plain text");
        QTest::newRow("a picture") << QByteArray("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16)
                                   << QByteArray("not plain text");
    }

    void fault_isToldWithItsLine()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QByteArray, says);
        const auto table = readCsv(bytes.toStdString(), "test.csv");
        QVERIFY(!table);
        QCOMPARE(int(table.error().code), int(ErrorCode::BadInput));
        const QByteArray sentence = QByteArray::fromStdString(table.error().sentence);
        QVERIFY2(
            sentence.startsWith("test.csv") && sentence.contains(says) && sentence.endsWith('.'), sentence);
    }

    void lineOfARow_isWhereItStarts()
    {
        const auto table = readCsv("a,b\n1,\"2\n2\"\n\n3,4\n\"\n5\",6\n", "test.csv");
        QVERIFY(table);
        QCOMPARE(table->lines, (std::vector<int> { 2, 5, 6 }));
    }

    void latin1_isSaid()
    {
        QVERIFY(readCsv("a\n\xB0\n", "t")->assumedLatin1);
        QVERIFY(!readCsv("a\n\xC2\xB0\n", "t")->assumedLatin1);
        QVERIFY(!readCsv("a\nx\n", "t")->assumedLatin1);
    }

    void cell_isFoundByItsColumn()
    {
        const auto table = readCsv("a,b\n1,2\n", "t");
        QVERIFY(table);
        QCOMPARE(table->cell(0, "b"), std::string("2"));
        QCOMPARE(table->cell(0, "c"), std::string());
        QCOMPARE(table->column("a"), std::optional<std::size_t>(0));
        QVERIFY(!table->column("A"));
    }

    void formulaInACell_isDefused_data()
    {
        QTest::addColumn<QByteArray>("cell");
        QTest::addColumn<QByteArray>("written");
        // The signs at which spreadsheets start a formula: common practice, as security guides for web forms
        // list them.
        QTest::newRow("equals") << QByteArray("=1+2") << QByteArray("'=1+2");
        QTest::newRow("plus") << QByteArray("+cmd") << QByteArray("'+cmd");
        QTest::newRow("minus") << QByteArray("-cmd") << QByteArray("'-cmd");
        QTest::newRow("at") << QByteArray("@SUM(A1)") << QByteArray("'@SUM(A1)");
        QTest::newRow("tab") << QByteArray("\t=1") << QByteArray("'\t=1");
        QTest::newRow("line break") << QByteArray("\r=1") << QByteArray("\"'\r=1\"");
        QTest::newRow("quotes besides") << QByteArray("=A(\"x\",1)") << QByteArray("\"'=A(\"\"x\"\",1)\"");
        QTest::newRow("a negative number stays") << QByteArray("-12.50") << QByteArray("-12.50");
        QTest::newRow("a signed number stays") << QByteArray("+3") << QByteArray("+3");
        QTest::newRow("a minus alone") << QByteArray("-") << QByteArray("'-");
        QTest::newRow("two points are no number") << QByteArray("-1.2.3") << QByteArray("'-1.2.3");
        QTest::newRow("inside stays") << QByteArray("a=b") << QByteArray("a=b");
        QTest::newRow("words stay") << QByteArray("Hide glue, 5 kg") << QByteArray("\"Hide glue, 5 kg\"");
    }

    void formulaInACell_isDefused()
    {
        QFETCH(QByteArray, cell);
        QFETCH(QByteArray, written);
        CsvTable table;
        table.columns = { "c" };
        table.rows = { { cell.toStdString() } };
        QCOMPARE(QByteArray::fromStdString(writeCsv(table)), "c\r\n" + written + "\r\n");
    }

    void guardOfAFormula_comesOffAgain()
    {
        std::mt19937 engine(1305);
        const std::string_view signs = "'='+-@\t\r a1.";
        for (int round = 0; round < 5000; ++round) {
            std::string cell;
            for (std::size_t k = engine() % 6; k > 0; --k)
                cell += signs[engine() % signs.size()];
            CsvTable table;
            table.columns = { "c", "d" };
            table.rows = { { cell, "x" } };
            const auto back = readCsv(writeCsv(table), "test.csv");
            QVERIFY(back);
            const std::string& written = back->rows.at(0).at(0);
            QCOMPARE(std::string(withoutGuard(written)), cell);
            const bool runs = !written.empty()
                && std::string_view("=@\t\r").find(written.front()) != std::string_view::npos;
            QVERIFY2(!runs, written.c_str());
        }
    }

    void whatIsWritten_isReadBack()
    {
        std::mt19937 engine(4180);
        const std::vector<std::string> bits { "a", "7", ",", "\"", "\n", "\r\n", " ", "\xC3\xA9", ";", "\t",
            "" };
        for (int round = 0; round < 500; ++round) {
            CsvTable table;
            const std::size_t width = 1 + engine() % 4;
            for (std::size_t c = 0; c < width; ++c)
                table.columns.push_back("c" + std::to_string(c));
            for (std::size_t r = engine() % 5; r > 0; --r) {
                std::vector<std::string> row;
                for (std::size_t c = 0; c < width; ++c) {
                    std::string cell = "x"; // so that no cell looks like a formula, and no line is empty
                    for (std::size_t k = engine() % 6; k > 0; --k)
                        cell += bits[engine() % bits.size()];
                    row.push_back(cell);
                }
                table.rows.push_back(row);
            }
            const auto back = readCsv(writeCsv(table), "test.csv");
            QVERIFY2(back, writeCsv(table).c_str());
            QCOMPARE(shown(everything(*back)), shown(everything(table)));
        }
    }

    void file_isReadUnderItsName()
    {
        QTemporaryDir dir;
        QFile file(dir.filePath(QStringLiteral("shelf.csv")));
        QVERIFY(file.open(QIODevice::WriteOnly) && file.write("a,b\n1,2\n3\n") > 0);
        file.close();
        const auto table = readCsvFile(file.fileName());
        QVERIFY(!table);
        QVERIFY(QByteArray::fromStdString(table.error().sentence).startsWith("shelf.csv line 3:"));
    }

    void fileThatIsNone_isUnreadable()
    {
        QTemporaryDir dir;
        for (const QString& path : { dir.filePath(QStringLiteral("missing.csv")), dir.path(), QString() }) {
            const auto table = readCsvFile(path);
            QVERIFY(!table);
            QCOMPARE(int(table.error().code), int(ErrorCode::FileUnreadable));
        }
    }

    void yearOfReadings_takesLittleTime()
    {
        // One a minute: half a million rows, what a logger leaves behind in a year.
        std::string bytes = "time,temperature,humidity\n";
        for (int i = 0; i < 525'600; ++i)
            bytes += "2026-01-01T00:00:00Z,18.25,51\n";
        QElapsedTimer timer;
        timer.start();
        const auto table = readCsv(bytes, "readings.csv");
        QVERIFY(table);
        QCOMPARE(table->rows.size(), std::size_t(525'600));
        qInfo("half a million rows in %lld ms", static_cast<long long>(timer.elapsed()));
    }
};

QTEST_APPLESS_MAIN(Csv)
#include "tst_csv.moc"
