#include <QRandomGenerator>
#include <QTest>

#include "measure/number.h"
#include "measure/quoted.h"

using namespace gw;

/// Numbers at the start of what people type, and texts from outside quoted in sentences.
class TestNumber : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void number_isReadWithEitherMark();
    void thousandsMarks_areRefusedNotGuessed();
    void blanks_areTakenOff();
    void inQuotes_isAlwaysShortValidText();
    void words_roundAndLeaveZerosOff();
    void inQuotes_hidesControlsAndDirectionMarks();
};

void TestNumber::number_isReadWithEitherMark()
{
    const auto read = [](const char* text) { return leadingNumber(text); };
    QCOMPARE(read("12")->value, 12.0);
    QCOMPARE(read("12.5 kg")->value, 12.5);
    QCOMPARE(read("12,5 kg")->value, 12.5);
    QCOMPARE(read("12,5 kg")->rest, std::string_view("kg"));
    QCOMPARE(read("-3.5")->value, -3.5);
    QCOMPARE(read("\u22123.5")->value, -3.5);
    QCOMPARE(read("+3")->value, 3.0);
    QCOMPARE(read(".5")->value, 0.5);
    QCOMPARE(read("0,125")->value, 0.125);
    QCOMPARE(read("1.125")->value, 1.125);
    QCOMPARE(read("1234,125")->value, 1234.125);
    QCOMPARE(read("3 000")->rest, std::string_view("000"));
}

void TestNumber::thousandsMarks_areRefusedNotGuessed()
{
    for (const char* text :
        { "1.000,5", "1,000.5", "1,000", "12,345", "999,999", "1.000.000", "1,000,000", "1..5" }) {
        const auto number = leadingNumber(text);
        QVERIFY2(!number, text);
        QVERIFY(number.error().sentence.find("two ways") != std::string::npos);
    }
}

void TestNumber::blanks_areTakenOff()
{
    QCOMPARE(trimmed(" \t\u00A0a b\u202F\n"), std::string_view("a b"));
    QCOMPARE(trimmed("\u00A0"), std::string_view());
    QCOMPARE(trimmed(""), std::string_view());
}

void TestNumber::inQuotes_isAlwaysShortValidText()
{
    QRandomGenerator random(4);
    for (int i = 0; i < 20000; ++i) {
        std::string text(static_cast<std::size_t>(random.bounded(80)), ' ');
        for (char& c : text)
            c = static_cast<char>(random.bounded(256));
        const std::string shown = inQuotes(text);
        QVERIFY(shown.size() <= 200);
        // Qt's own decoder is the judge: nothing broken may be left.
        const QString decoded = QString::fromStdString(shown);
        QVERIFY(!decoded.contains(QChar(QChar::ReplacementCharacter)));
        QCOMPARE(decoded.toStdString(), shown);
        for (const QChar c : decoded)
            QVERIFY(c.category() != QChar::Other_Control);
    }
    QVERIFY(inQuotes(std::string(5'000'000, 'x')).size() < 60);
}

void TestNumber::words_roundAndLeaveZerosOff()
{
    QCOMPARE(numberWords(12.5, 2), std::string("12.5"));
    QCOMPARE(numberWords(0.126, 2), std::string("0.13"));
    QCOMPARE(numberWords(-0.001, 2), std::string("0"));
    QCOMPARE(numberWords(3, 2, 1), std::string("3.0"));
    QCOMPARE(numberWords(1e300, 0).size(), std::size_t(301));
    QCOMPARE(numberWords(std::nan(""), 2), std::string("not a number"));
}

void TestNumber::inQuotes_hidesControlsAndDirectionMarks()
{
    QCOMPARE(inQuotes("glue"), std::string("\"glue\""));
    QCOMPARE(inQuotes("hide glue \u00E9"), std::string("\"hide glue \u00E9\""));
    QCOMPARE(inQuotes("a\x1D\n"), std::string("\"a??\""));
    QCOMPARE(inQuotes("\u202Egnp"), std::string("\"?gnp\""));
    QCOMPARE(inQuotes("\u2067x\u0085"), std::string("\"?x?\""));
}

QTEST_APPLESS_MAIN(TestNumber)
#include "tst_number.moc"
