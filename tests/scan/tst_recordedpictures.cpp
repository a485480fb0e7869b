// Pictures that others drew or published, with the text that two independent readers take from them
// (tests/data/barcodes/expected.csv: source and licence of each).
#include <QDir>
#include <QSet>
#include <QTest>

#include "codes/code.h"
#include "scan/finding.h"
#include "scan/picturefile.h"
#include "support/csvrows.h"

using namespace gw;
using namespace gw::test;

namespace {

std::string expectedText(const CsvRow& row)
{
    return QString(row[QStringLiteral("text")])
        .replace(QStringLiteral("<GS>"), QString(QChar(29)))
        .toStdString();
}

QString pictureFolder() { return QStringLiteral(GW_TEST_DATA "/barcodes/"); }

} // namespace

class RecordedPictures : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void picture_isReadExactly_data()
    {
        QTest::addColumn<CsvRow>("row");
        for (const CsvRow& row : readCheckTable(QStringLiteral("barcodes/expected.csv")))
            QTest::newRow(qPrintable(row[QStringLiteral("file")])) << row;
    }

    void picture_isReadExactly()
    {
        QFETCH(CsvRow, row);
        const auto symbols = readPicture(pictureFolder() + row[QStringLiteral("file")]);
        QVERIFY2(symbols, symbols ? "" : symbols.error().sentence.c_str());
        QCOMPARE(symbols->size(), std::size_t(1));
        const Symbol& symbol = symbols->front();
        QCOMPARE(symbol.text, expectedText(row));
        QCOMPARE(symbol.format, row[QStringLiteral("format")].toStdString());
        QCOMPARE(symbol.symbology, row[QStringLiteral("symbology")].toStdString());
        QVERIFY(QString::fromStdString(symbol.engine).contains(QStringLiteral("zxing-cpp")));
        QCOMPARE(symbol.outline.size(), 4);
    }

    void picture_isReadExactly_upsideDownAndAside_data() { picture_isReadExactly_data(); }

    void picture_isReadExactly_upsideDownAndAside()
    {
        QFETCH(CsvRow, row);
        const auto picture = loadPicture(pictureFolder() + row[QStringLiteral("file")]);
        QVERIFY(picture);
        const auto reader = makeReader();
        for (const int degrees : { 90, 180, 270 }) {
            const auto symbols = findSymbols(picture->transformed(QTransform().rotate(degrees)), *reader);
            QCOMPARE(symbols.size(), std::size_t(1));
            QCOMPARE(symbols.front().text, expectedText(row));
            QCOMPARE(symbols.front().symbology, row[QStringLiteral("symbology")].toStdString());
        }
    }

    void everyPictureInTheFolder_hasARow()
    {
        QSet<QString> named;
        for (const CsvRow& row : readCheckTable(QStringLiteral("barcodes/expected.csv")))
            named.insert(row[QStringLiteral("file")]);
        const auto files = QDir(pictureFolder()).entryList({ QStringLiteral("*.png") });
        QCOMPARE(named, QSet<QString>(files.begin(), files.end()));
    }

    // What is read must also be understood: the same item number whichever symbol carries it.
    void tradeItemSymbols_giveTheirItemNumber_data()
    {
        QTest::addColumn<QString>("file");
        QTest::addColumn<QString>("gtin");
        QTest::newRow("EAN-13") << "ean13_a.png" << "06291041500213";
        QTest::newRow("EAN-8") << "ean8_a.png" << "00000002345673";
        QTest::newRow("UPC-A") << "upca_a.png" << "00416000336108";
        QTest::newRow("ITF-14") << "itf14_a.png" << "24012345678905";
        QTest::newRow("GS1-128") << "gs1_128_b.png" << "09520123456788";
        QTest::newRow("GS1 DataMatrix") << "gs1_datamatrix_a.png" << "09520123456788";
        QTest::newRow("GS1 QR") << "gs1_qr_a.png" << "09520123456788";
        QTest::newRow("GS1 Digital Link in a QR") << "dl_qr_a.png" << "09520123456788";
        QTest::newRow("DataBar") << "examples-databar.png" << "98765432109879";
        QTest::newRow("DataBar Expanded") << "gs1_databar_exp_a.png" << "09520123456788";
    }

    void tradeItemSymbols_giveTheirItemNumber()
    {
        QFETCH(QString, file);
        QFETCH(QString, gtin);
        const auto symbols = readPicture(pictureFolder() + file);
        QVERIFY(symbols);
        using namespace std::chrono;
        const Code code = readCode(symbols->front().text, symbols->front().symbology, 2026y / July / 1);
        QVERIFY2(!code.error, code.error ? code.error->sentence.c_str() : "");
        QVERIFY(code.gtin);
        QCOMPARE(code.gtin->digits14, gtin.toStdString());
    }
};

QTEST_GUILESS_MAIN(RecordedPictures)
#include "tst_recordedpictures.moc"
