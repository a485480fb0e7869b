#include <QTest>

#include "codes/code.h"
#include "codes/ownlabel.h"

using namespace gw;

/// What scanned and typed texts say.
class TestCode : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void plainText_staysPlain_data();
    void plainText_staysPlain();
    void bareNumber_isAnItem();
    void wrongCheckDigit_isSaidClearly();
    void shortNumber_expandsWhenOnlyThatHolds();
    void readerAndScanner_giveUpcInTheirOwnLengths();
    void shippingCase_isAnItemNumber();
    void addOn_isLeftOff();
    void compositeSymbol_givesItemAndLot();
    void dataBar_mayComeBracketed();
    void keyboardScanner_needsNoSymbology();
    void bothSeparatorForms_areTheSame();
    void lostSeparator_isNotRepaired();
    void dayZero_isReadCautiously();
    void dateWithTime_standsInWhereThereIsNoOther();
    void contents_giveTheirItem();
    void amounts_areTheLedgers_data();
    void amounts_areTheLedgers();
    void amountOfNothing_isWarnedOf();
    void missingItem_isWarnedOf();
    void contradiction_isRefused();
    void ownLabel_isKnownInAnySymbol();
    void ownLabelSlip_isSaid();
    void linkWithAnEmptyPart_isRefused();
    void link_isReadNotOpened_data();
    void link_isReadNotOpened();
    void ordinaryAddress_isPlain_data();
    void ordinaryAddress_isPlain();
};

namespace {

const Date today = std::chrono::year { 2026 } / 7 / 1;

Code read(std::string_view text, std::string_view symbology = {}) { return readCode(text, symbology, today); }

std::string kindOf(const Code& code) { return code.error ? code.error->kind : std::string(); }

} // namespace

void TestCode::plainText_staysPlain_data()
{
    QTest::addColumn<QString>("symbology");
    const auto row = [](const char* text, const char* symbology) {
        QTest::newRow(text) << QString::fromUtf8(symbology);
    };
    row("", "");
    row("hide glue", "");
    row("BOX-0042", "]C0");
    row("2112345678901", "]C0"); // Code 128 says nothing of check digits
    row("9876543210", "]I0");
    row("'; drop table entry; --", "");
    row("<script>alert(1)</script>", "]Q1");
    row("(see over)", "");
    row("()", "");
    row("WIFI:S:shop;T:WPA;P:secret;;", "]Q1");
    row("]", "");
    row("]d", "");
    row("123456", "");
    row("1234567890", "");
    row("555-123-4567", "");
}

void TestCode::plainText_staysPlain()
{
    QFETCH(QString, symbology);
    const Code code = read(QTest::currentDataTag(), symbology.toStdString());
    QCOMPARE(code.kind, CodeKind::Plain);
    QVERIFY(!code.error);
    QVERIFY(code.elements.empty() && !code.gtin);
    QCOMPARE(code.text, std::string(QTest::currentDataTag()));
}

void TestCode::bareNumber_isAnItem()
{
    for (const char* digits : { "02345673", "416000336108", "2112345678900", "24012345678905",
             " 2112345678900\n", "2 112345 678900" }) {
        const Code code = read(digits);
        QCOMPARE(code.kind, CodeKind::Gtin);
        QVERIFY(!code.error && code.gtin);
    }
    QCOMPARE(read("2112345678900").gtin->digits14, std::string("02112345678900"));
}

void TestCode::wrongCheckDigit_isSaidClearly()
{
    for (const char* digits : { "22345674", "416000336109", "2112345678901", "24012345678909" }) {
        const Code code = read(digits);
        QCOMPARE(code.kind, CodeKind::Gtin);
        QCOMPARE(kindOf(code), std::string("check digit"));
        QVERIFY(!code.gtin);
        QVERIFY(code.error->sentence.find("would have to be") != std::string::npos);
    }
}

void TestCode::shortNumber_expandsWhenOnlyThatHolds()
{
    // 0 123450 5 is UPC-E for 0 12000 00345 5; as an EAN-8 its last digit would have to be 8.
    const Code code = read("01234505");
    QVERIFY(!code.error);
    QCOMPARE(code.gtin->digits14, std::string("00012000003455"));
    QCOMPARE(read("01234505", "]E0").gtin->digits14, std::string("00012000003455"));
    QCOMPARE(kindOf(read("01234505", "]E4")), std::string("check digit"));
    // A number that holds as an EAN-8 is one.
    QCOMPARE(read("02345673").gtin->digits14, std::string("00000002345673"));
}

void TestCode::readerAndScanner_giveUpcInTheirOwnLengths()
{
    QCOMPARE(read("416000336108", "]E0").gtin->digits14, std::string("00416000336108"));
    QCOMPARE(read("]E00416000336108").gtin->digits14, std::string("00416000336108"));
    QCOMPARE(kindOf(read("]E0416000336108")), std::string("wrong length"));
    QCOMPARE(kindOf(read("]E4416000336108")), std::string("wrong length"));
}

void TestCode::shippingCase_isAnItemNumber()
{
    QCOMPARE(read("24012345678905", "]I1").gtin->digits14, std::string("24012345678905"));
    QCOMPARE(kindOf(read("24012345678909", "]I1")), std::string("check digit"));
    QCOMPARE(read("1234", "]I1").kind, CodeKind::Plain);
}

void TestCode::addOn_isLeftOff()
{
    QCOMPARE(read("]E3211234567890012").gtin->digits14, std::string("02112345678900"));
    QCOMPARE(read("211234567890012345", "]E3").gtin->digits14, std::string("02112345678900"));
}

void TestCode::compositeSymbol_givesItemAndLot()
{
    const Code code = read("]E02112345678900|]e01726123110ABC");
    QVERIFY(!code.error);
    QCOMPARE(code.kind, CodeKind::Gs1);
    QCOMPARE(code.gtin->digits14, std::string("02112345678900"));
    QCOMPARE(code.lot, std::string("ABC"));
    QVERIFY(code.warnings.empty());
    const Code bad = read("]E02112345678900|]e01726133110ABC");
    QCOMPARE(kindOf(bad), std::string("month"));
    QVERIFY(!bad.gtin);
}

void TestCode::dataBar_mayComeBracketed()
{
    const Code code = read("(01)09520123456788(10)ABC123(17)261231", "]e0");
    QVERIFY(!code.error);
    QCOMPARE(code.lot, std::string("ABC123"));
}

void TestCode::keyboardScanner_needsNoSymbology()
{
    QCOMPARE(read("01095201234567881726123110ABC123").lot, std::string("ABC123"));
    QCOMPARE(read("10ABC123\x1D"
                  "3012")
                 .lot,
        std::string("ABC123"));
    QCOMPARE(read("0109520123456788").kind, CodeKind::Gs1);
    QCOMPARE(kindOf(read("010952012345678817261331")), std::string("month"));
    // In a symbol that says it carries none, the same digits are some text or other.
    QCOMPARE(read("01095201234567881726123110ABC123", "]C0").kind, CodeKind::Plain);
}

void TestCode::bothSeparatorForms_areTheSame()
{
    const Code written = read("]d2010952012345678810ABC<GS>17261231");
    const Code bytes = read("]d2010952012345678810ABC\x1D"
                            "17261231");
    QCOMPARE(written.elements, bytes.elements);
    QCOMPARE(written.text, bytes.text);
    QCOMPARE(written.text,
        std::string("010952012345678810ABC\x1D"
                    "17261231"));
}

void TestCode::lostSeparator_isNotRepaired()
{
    const Code code = read("]d2010952012345678810ABC12317261231");
    QCOMPARE(code.lot, std::string("ABC12317261231"));
    QVERIFY(!code.useBy);
}

void TestCode::dayZero_isReadCautiously()
{
    // Last day of the month: General Specifications 3.4.6 and 3.4.8 examples 130200 and 160200, from memory.
    QCOMPARE(formatDate(*read("(01)09520123456788(17)130200").useBy), std::string("2013-02-28"));
    QCOMPARE(formatDate(*read("(01)09520123456788(17)160200").useBy), std::string("2016-02-29"));
    QCOMPARE(formatDate(*read("(01)09520123456788(15)270200").bestBefore), std::string("2027-02-28"));
    QCOMPARE(formatDate(*read("(01)09520123456788(15)280200").bestBefore), std::string("2028-02-29"));
    QCOMPARE(formatDate(*read("(01)09520123456788(17)261200").useBy), std::string("2026-12-31"));
    // The first for what starts a life clock: older rather than younger.
    QCOMPARE(formatDate(*read("(01)09520123456788(11)260200").made), std::string("2026-02-01"));
    QCOMPARE(formatDate(*read("(01)09520123456788(13)260200").packed), std::string("2026-02-01"));
}

void TestCode::dateWithTime_standsInWhereThereIsNoOther()
{
    QCOMPARE(formatDate(*read("(01)09520123456788(7003)2612312359").useBy), std::string("2026-12-31"));
    QCOMPARE(formatDate(*read("(01)09520123456788(8008)26030114").made), std::string("2026-03-01"));
    const Code both = read("(01)09520123456788(7003)2612312359(17)261130");
    QCOMPARE(formatDate(*both.useBy), std::string("2026-11-30"));
}

void TestCode::contents_giveTheirItem()
{
    const Code code = read("(00)952012345678912345(02)09520123456788(37)12(10)L7");
    QVERIFY(!code.error && code.warnings.empty());
    QCOMPARE(code.gtin->digits14, std::string("09520123456788"));
    QCOMPARE(code.amounts, std::vector { pieces(12) });
    QCOMPARE(read("(8006)095201234567880102").gtin->digits14, std::string("09520123456788"));
    QCOMPARE(kindOf(read("(8006)095201234567880302")), std::string("value"));
}

void TestCode::amounts_areTheLedgers_data()
{
    QTest::addColumn<qint64>("milli");
    QTest::addColumn<int>("dimension");
    const auto row = [](const char* elements, qint64 milli, Dimension dimension) {
        QTest::newRow(elements) << milli << static_cast<int>(dimension);
    };
    using enum Dimension;
    // Exact unit factors: NIST SP 811, appendix B.8; decimals: GS1 General Specifications 3.6.2.
    row("(3103)000195", 195'000, Mass);
    row("(3100)000025", 25'000'000, Mass);
    row("(3105)123456", 1'234'560, Mass);
    row("(3201)000010", 453'592, Mass);
    row("(3562)000100", 31'103, Mass); // one troy ounce
    row("(3153)000750", 750'000, Volume);
    row("(3165)000001", 10'000, Volume); // 0.00001 m3
    row("(3570)000008", 236'588, Volume);
    row("(3600)000002", 1'892'706, Volume);
    row("(3611)000005", 1'892'706, Volume);
    row("(3640)000231", 3'785'412, Volume); // 231 in3 are a gallon
    row("(3650)000001", 28'316'847, Volume);
    row("(3112)001250", 12'500, Length);
    row("(3210)000100", 2'540, Length);
    row("(3220)000010", 3'048, Length);
    row("(3230)000010", 9'144, Length);
    row("(30)12", 12'000, Count);
}

void TestCode::amounts_areTheLedgers()
{
    QFETCH(qint64, milli);
    QFETCH(int, dimension);
    const Code code = read(std::string("(01)09520123456788") + QTest::currentDataTag());
    QVERIFY(!code.error);
    QCOMPARE(code.amounts.size(), 1U);
    QCOMPARE(code.amounts.front().milli, milli);
    QCOMPARE(static_cast<int>(code.amounts.front().dimension), dimension);
}

void TestCode::amountOfNothing_isWarnedOf()
{
    const Code code = read("(01)09520123456788(3103)000000");
    QVERIFY(!code.error && code.amounts.empty());
    QCOMPARE(code.warnings.size(), 1U);
    // Gross weights and areas are no amounts of stock.
    QVERIFY(read("(01)09520123456788(3303)000195").amounts.empty());
    QVERIFY(read("(01)09520123456788(3142)000350").amounts.empty());
}

void TestCode::missingItem_isWarnedOf()
{
    const Code code = read("(10)L7(17)261231");
    QVERIFY(!code.error);
    QCOMPARE(code.lot, std::string("L7"));
    QCOMPARE(code.warnings.size(), 2U);
    QVERIFY(code.warnings.front().find("pick the material") != std::string::npos);
    QVERIFY(read("(01)09520123456788(10)L7").warnings.empty());
    QCOMPARE(read("(02)09520123456788").warnings.size(), 1U);
}

void TestCode::contradiction_isRefused()
{
    QCOMPARE(kindOf(read("(01)09520123456788(10)A(10)B")), std::string("duplicate AI"));
    QCOMPARE(kindOf(read("(01)09520123456788(02)09520123456788")), std::string("AIs exclude each other"));
    QCOMPARE(
        kindOf(read("(01)09520123456788(3102)001234(3103)000195")), std::string("AIs exclude each other"));
    QVERIFY(!read("(01)09520123456788(3103)000195(3153)000200").error);
}

void TestCode::ownLabel_isKnownInAnySymbol()
{
    const std::string label = ownLabelCode(42);
    for (const char* symbology : { "", "]C0", "]Q1", "]d1" }) {
        const Code code = read(label, symbology);
        QCOMPARE(code.kind, CodeKind::OwnLabel);
        QVERIFY(!code.error);
        QCOMPARE(code.text, label);
    }
    QCOMPARE(read("]Q1" + label).kind, CodeKind::OwnLabel);
    QCOMPARE(read(QString::fromStdString(label).toLower().toStdString()).kind, CodeKind::OwnLabel);
}

void TestCode::ownLabelSlip_isSaid()
{
    std::string label = ownLabelCode(42);
    std::swap(label[6], label[7]);
    const Code code = read(label);
    QCOMPARE(code.kind, CodeKind::OwnLabel);
    QCOMPARE(kindOf(code), std::string("check character"));
}

// Found by the fuzzer: a key without qualifiers and a doubled slash behind it.
void TestCode::linkWithAnEmptyPart_isRefused()
{
    for (const char* text :
        { "https://example.com/401/05275810//x", "https://example.com/00/095201234567891235//5" }) {
        const Code code = readCode(text, {}, today);
        QCOMPARE(code.kind, CodeKind::DigitalLink);
        QVERIFY(code.error.has_value());
        QCOMPARE(code.error->kind, std::string("bad key-qualifier sequence"));
    }
}

void TestCode::link_isReadNotOpened_data()
{
    QTest::addColumn<QString>("kind");
    const auto row
        = [](const char* link, const char* kind) { QTest::newRow(link) << QString::fromUtf8(kind); };
    row("https://example.com/01/09520123456788", "");
    row("HTTPS://EXAMPLE.COM/01/09520123456788/10/ABC", "");
    row("http://example.com:8080/shop/en/01/09520123456788/22/2A/10/L7/21/S1?17=261231&lang=en#top", "");
    row("https://example.com/01/09520123456788/235/XYZ", "");
    row("https://example.com/01/09520123456788/10/8010/21/ABC", "");
    row("https://example.com/8004/9520614141123456789", "");
    row("https://example.com/01/09520123456788?12=9&17=261231", "value too short");
    row("https://example.com/01/09520123456788/21/S1/10/L7", "bad key-qualifier sequence");
    row("https://example.com/01/09520123456788/22/2A/235/XYZ", "bad key-qualifier sequence");
    row("https://example.com/01/09520123456788/10", "bad key-qualifier sequence");
    row("https://example.com/01/09520123456788?10=ABC", "qualifier in query");
    row("https://example.com/01/09520123456788?21=ABC", "qualifier in query");
    row("https://example.com/01/09520123456788?17=261331", "month");
    row("https://example.com/01/09520123456788/10/A%00B", "character set 82");
    row("https://example.com/01/09520123456788/10/A%20B", "character set 82");
    row("https://example.com/01/09520123456788/10/A?99=A+B", "character set 82");
    row("https://example.com/01/9520123456788", "GTIN must have 14 digits");
    row("https://example.com/01/09520123456788?37=5", "AIs exclude each other");
}

void TestCode::link_isReadNotOpened()
{
    QFETCH(QString, kind);
    const Code code = read(QTest::currentDataTag());
    QCOMPARE(code.kind, CodeKind::DigitalLink);
    QCOMPARE(QString::fromStdString(kindOf(code)), kind);
    QCOMPARE(code.text, std::string(QTest::currentDataTag()));
}

void TestCode::ordinaryAddress_isPlain_data()
{
    QTest::addColumn<int>("unused");
    for (const char* text :
        { "https://example.com", "https://example.com/", "https://example.com/glue?10=ABC",
            "https://example.com/2026/01/15/news", "https://example.com/01/", "https://example.com/401/page",
            "https://example.com/8004/list", "https://01/09520123456788", "https:///01/09520123456788",
            "https://example.com?x=/01/09520123456788", "ftp://example.com/01/09520123456788",
            "Https://example.com/01/09520123456788", "mailto:shop@example.com", "javascript:alert(1)",
            "https://example.com/#/01/09520123456788" })
        QTest::newRow(text) << 0;
}

void TestCode::ordinaryAddress_isPlain()
{
    const Code code = read(QTest::currentDataTag(), "]Q1");
    QCOMPARE(code.kind, CodeKind::Plain);
    QVERIFY(!code.error);
}

QTEST_APPLESS_MAIN(TestCode)
#include "tst_code.moc"
