#include <QRandomGenerator>
#include <QTest>

#include "codes/gtin.h"

using namespace gw;

/// Item numbers and their check digits.
class TestGtin : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void checkDigit_matchesTheWorkedExample();
    void checkDigit_needsDigits();
    void everyWrongDigit_isCaught();
    void swaps_areCaughtUnlessTheyDifferByFive();
    void typed_isRead();
    void badNumber_isRefusedAndSaysWhy();
    void upcE_expands_data();
    void upcE_expands();
    void upcE_badFormsAreRefused();
    void upcE_agreesWithItsOwnCompression();
    void printedForm_isTheShortest();
};

namespace {

std::string randomDigits(QRandomGenerator& random, int count)
{
    std::string digits;
    for (int i = 0; i < count; ++i)
        digits += static_cast<char>('0' + random.bounded(10));
    return digits;
}

std::string withCheck(std::string digits) { return digits + static_cast<char>('0' + *checkDigit(digits)); }

} // namespace

void TestGtin::checkDigit_matchesTheWorkedExample()
{
    // GS1, how to calculate a check digit manually: 629104150021 sums to 57, the check digit is 3.
    QCOMPARE(checkDigit("629104150021"), std::optional(3));
    // Leading zeros change nothing.
    QCOMPARE(checkDigit("00629104150021"), std::optional(3));
    QCOMPARE(checkDigit("0"), std::optional(0));
    QCOMPARE(checkDigit("7"), std::optional(9));
}

void TestGtin::checkDigit_needsDigits()
{
    QVERIFY(!checkDigit(""));
    QVERIFY(!checkDigit("12a"));
    QVERIFY(!checkDigit("12 "));
    QVERIFY(!checkDigit("\xD9\xA3"));
}

void TestGtin::everyWrongDigit_isCaught()
{
    QRandomGenerator random(10);
    for (const int length : { 7, 11, 12, 13, 17 }) {
        for (int n = 0; n < 300; ++n) {
            const std::string right = withCheck(randomDigits(random, length));
            for (std::size_t at = 0; at < right.size(); ++at) {
                for (char other = '0'; other <= '9'; ++other) {
                    std::string wrong = right;
                    wrong[at] = other;
                    const auto digit = checkDigit(std::string_view(wrong).substr(0, wrong.size() - 1));
                    QCOMPARE(*digit == wrong.back() - '0', wrong == right);
                }
            }
        }
    }
}

void TestGtin::swaps_areCaughtUnlessTheyDifferByFive()
{
    // The known blind spot of the scheme: 3a + b and 3b + a agree modulo 10 when a - b is 5.
    QRandomGenerator random(11);
    for (int n = 0; n < 3000; ++n) {
        const std::string right = withCheck(randomDigits(random, 13));
        for (std::size_t at = 0; at + 1 < right.size(); ++at) {
            std::string swapped = right;
            std::swap(swapped[at], swapped[at + 1]);
            const int difference = std::abs(right[at] - right[at + 1]);
            QCOMPARE(parseGtin(swapped).has_value(), difference == 0 || difference == 5);
        }
    }
}

void TestGtin::typed_isRead()
{
    QCOMPARE(parseGtin("02345673")->digits14, std::string("00000002345673"));
    QCOMPARE(parseGtin("416000336108")->digits14, std::string("00416000336108"));
    QCOMPARE(parseGtin("2112345678900")->digits14, std::string("02112345678900"));
    QCOMPARE(parseGtin("24012345678905")->digits14, std::string("24012345678905"));
    QCOMPARE(parseGtin(" 2 112345 678900 ")->digits14, std::string("02112345678900"));
    QCOMPARE(parseGtin("4-16000-33610-8")->digits14, std::string("00416000336108"));
}

void TestGtin::badNumber_isRefusedAndSaysWhy()
{
    const auto sentence = [](std::string_view typed) {
        const auto gtin = parseGtin(typed);
        return gtin ? QString() : QString::fromStdString(gtin.error().sentence);
    };
    QVERIFY(sentence("2112345678901").contains(QStringLiteral("have to be 0")));
    QVERIFY(sentence("2112345678901").contains(QStringLiteral("label")));
    QVERIFY(sentence("123").contains(QStringLiteral("3 digits")));
    QVERIFY(sentence("").contains(QStringLiteral("not an item number")));
    QVERIFY(sentence("21123456789OO").contains(QStringLiteral("not an item number")));
    QVERIFY(sentence(std::string(3'000'000, '1')).contains(QStringLiteral("not an item number")));
    QVERIFY(sentence(std::string(3'000'000, '1')).size() < 300);
}

void TestGtin::upcE_expands_data()
{
    QTest::addColumn<QString>("full");
    const auto row
        = [](const char* typed, const char* full) { QTest::newRow(typed) << QString::fromUtf8(full); };
    // One for each rule of GS1 General Specifications 5.2.2.4, worked by hand.
    row("01234505", "012000003455"); // 12 345 0
    row("0123451", "012100003454"); // 12 345 1
    row("0123452", "012200003453"); // 12 345 2
    row("0123453", "012300000451"); // 123 45 3
    row("0123454", "012340000053"); // 1234 5 4
    row("0123455", "012345000058"); // 12345 5
    row("0123459", "012345000096"); // 12345 9
    row("123450", "012000003455");
    row("1123450", "112000003452");
}

void TestGtin::upcE_expands()
{
    QFETCH(QString, full);
    const auto expanded = expandUpcE(QTest::currentDataTag());
    QVERIFY2(expanded.has_value(), expanded ? "" : expanded.error().sentence.c_str());
    QCOMPARE(QString::fromStdString(*expanded), full);
    QVERIFY(parseGtin(*expanded).has_value());
}

void TestGtin::upcE_badFormsAreRefused()
{
    for (const char* typed : { "", "12345", "123456789", "21234505", "0123450x", "01234506" })
        QVERIFY2(!expandUpcE(typed), typed);
    QVERIFY(expandUpcE("01234506").error().sentence.find("have to be 5") != std::string::npos);
}

void TestGtin::upcE_agreesWithItsOwnCompression()
{
    // Compressed by the other reading of the rule: which of the full numbers have a short form, and which
    // one.
    int seen = 0;
    for (int manufacturer = 0; manufacturer < 100000; manufacturer += 7) {
        for (const int product : { 0, 5, 9, 10, 99, 100, 999, 2345 }) {
            const std::string m = QString::number(manufacturer).rightJustified(5, u'0').toStdString();
            const std::string p = QString::number(product).rightJustified(5, u'0').toStdString();
            std::string six;
            if (m.substr(3) == "00" && m[2] <= '2' && product <= 999)
                six = m.substr(0, 2) + p.substr(2) + m[2];
            else if (m.substr(3) == "00" && product <= 99)
                six = m.substr(0, 3) + p.substr(3) + '3';
            else if (m[4] == '0' && product <= 9)
                six = m.substr(0, 4) + p[4] + '4';
            else if (m[4] != '0' && product >= 5 && product <= 9)
                six = m + p[4];
            else
                continue;
            ++seen;
            QCOMPARE(*expandUpcE(six), withCheck('0' + m + p));
        }
    }
    QVERIFY(seen > 5000);
}

void TestGtin::printedForm_isTheShortest()
{
    for (const char* digits : { "02345673", "416000336108", "2112345678900", "24012345678905" })
        QCOMPARE(printedForm(*parseGtin(digits)), std::string(digits));
    QCOMPARE(printedForm(*parseGtin("02112345678900")), std::string("2112345678900"));
}

QTEST_APPLESS_MAIN(TestGtin)
#include "tst_gtin.moc"
