#include <QTest>

#include "scan/databartext.h"

using namespace gw;

class DataBarText : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // The pairs are what the symbol of tests/data/barcodes/gs1_databar_exp_a.png reads as in ZXing-C++ 1.4
    // and what it transmits, and the General Specifications' rule on separators (section 7.8, from memory)
    // for the rest.
    void text_becomesTheElementString_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("elements");
        const auto row = [](const char* name, const char* text, const char* elements) {
            QTest::newRow(name) << QString::fromLatin1(text) << QString::fromLatin1(elements);
        };
        row("separator after a lot", "(01)09520123456788(10)ABC123(17)261231",
            "010952012345678810ABC123\x1d"
            "17261231");
        row("none after the last", "(01)09520123456788(10)ABC123", "010952012345678810ABC123");
        row("none after a date or a weight", "(01)09520123456788(17)261231(3103)000750(10)A",
            "0109520123456788172612313103000750"
            "10A");
        row("a price is not of predefined length", "(01)09520123456788(3922)150(17)261231",
            "01095201234567883922150\x1d"
            "17261231");
        row("brackets inside a value stay", "(10)A(b)c(21)7",
            "10A(b)c\x1d"
            "217");
        row("a GTIN alone", "09520123456788", "0109520123456788");
        row("an element string already", "010952012345678810ABC123", "010952012345678810ABC123");
        row("nothing", "", "");
        row("an open bracket", "(", "(");
        row("an empty key", "()1", "()1");
        row("letters in the key", "(ab)1", "(ab)1");
    }

    void text_becomesTheElementString()
    {
        QFETCH(QString, text);
        QFETCH(QString, elements);
        QCOMPARE(dataBarElementString(text.toStdString()), elements.toStdString());
    }
};

QTEST_APPLESS_MAIN(DataBarText)
#include "tst_databartext.moc"
