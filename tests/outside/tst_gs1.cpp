#include <QRegularExpression>
#include <QSet>
#include <QTest>

#include "codes/code.h"
#include "codes/elementmeaning.h"
#include "codes/gtin.h"
#include "codes/labeldate.h"
#include "support/csvrows.h"

using namespace gw;
using gw::test::CsvRow;

/// Every row of tests/data/gs1.csv: vectors from the public tests of the GS1 syntax engine and dictionary,
/// from the General Specifications, and some of our own confirmed by that engine. Each row names its source.
class TestGs1 : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void code_isReadAsTheRulesSay_data();
    void code_isReadAsTheRulesSay();
    void checkDigit_isRight_data();
    void checkDigit_isRight();
    void century_isPlaced_data();
    void century_isPlaced();
    void decimals_arePlaced_data();
    void decimals_arePlaced();

private:
    void rowsOf(const QStringList& channels);
    static QString read(const Code& code);

    QList<CsvRow> m_rows;
};

namespace {

const Date today = std::chrono::year { 2026 } / 7 / 1;

QString text(const std::string& bytes)
{
    return QString::fromUtf8(bytes.data(), static_cast<qsizetype>(bytes.size()));
}

} // namespace

void TestGs1::initTestCase()
{
    m_rows = test::readCheckTable(QStringLiteral("gs1.csv"));
    QSet<QString> ids;
    for (const CsvRow& row : m_rows)
        ids.insert(row.value(QStringLiteral("id")));
    QCOMPARE(m_rows.size(), 153);
    QCOMPARE(ids.size(), m_rows.size());
}

void TestGs1::rowsOf(const QStringList& channels)
{
    for (const char* column : { "input", "verdict", "expected", "kind", "requisite" })
        QTest::addColumn<QString>(column);
    for (const CsvRow& row : m_rows) {
        if (!channels.contains(row.value(QStringLiteral("channel"))))
            continue;
        QTest::newRow(qPrintable(row.value(QStringLiteral("id")) + u' ' + row.value(QStringLiteral("input"))))
            << row.value(QStringLiteral("input")) << row.value(QStringLiteral("verdict"))
            << row.value(QStringLiteral("expected_ais")) << row.value(QStringLiteral("error_kind"))
            << row.value(QStringLiteral("requisite_check"));
    }
}

/// What was read, in the table's own notation.
QString TestGs1::read(const Code& code)
{
    if (code.kind == CodeKind::Plain || code.kind == CodeKind::Gtin)
        return QStringLiteral("PLAIN ") + text(code.text);
    QStringList elements;
    for (const Element& element : code.elements)
        elements.append(text(element.ai) + u'=' + text(element.value));
    return elements.join(u'|');
}

void TestGs1::code_isReadAsTheRulesSay_data()
{
    rowsOf({ QStringLiteral("scan"), QStringLiteral("brk"), QStringLiteral("dl") });
}

void TestGs1::code_isReadAsTheRulesSay()
{
    QFETCH(QString, input);
    QFETCH(QString, verdict);
    QFETCH(QString, expected);
    QFETCH(QString, kind);
    QFETCH(QString, requisite);

    QString separated = input;
    separated.replace(QStringLiteral("<GS>"), QString(QChar(29)));
    for (const QString& form : { input, separated }) {
        const Code code = readCode(form.toStdString(), {}, today);
        if (verdict == QStringLiteral("accept")) {
            QVERIFY2(!code.error, code.error ? code.error->sentence.c_str() : "");
            QCOMPARE(read(code), expected);
        } else if (verdict == QStringLiteral("plain")) {
            QVERIFY(!code.error);
            QCOMPARE(code.kind, CodeKind::Plain);
            QCOMPARE(read(code), expected);
        } else if (kind == QStringLiteral("no symbology identifier")) {
            // A scanner must name the symbology, a person need not: typed, it is some text or other, and no
            // element string.
            QCOMPARE(code.kind, CodeKind::Plain);
            QVERIFY(code.elements.empty());
        } else if (requisite == QStringLiteral("on") && kind == QStringLiteral("needs another AI")) {
            // A shop warns of a missing item number and does not refuse the label.
            QVERIFY(!code.error);
            QCOMPARE(code.warnings.size(), 1U);
        } else {
            QVERIFY2(code.error, qPrintable(read(code)));
            QCOMPARE(text(code.error->kind), kind);
            const QString sentence = text(code.error->sentence);
            QVERIFY2(sentence.endsWith(u'.') && sentence.size() > 30 && sentence.size() < 400,
                qPrintable(sentence));
            QVERIFY(!code.gtin && code.lot.empty() && !code.useBy && code.amounts.empty());
        }
    }
}

void TestGs1::checkDigit_isRight_data() { rowsOf({ QStringLiteral("checkdigit") }); }

void TestGs1::checkDigit_isRight()
{
    QFETCH(QString, input);
    QFETCH(QString, verdict);
    QFETCH(QString, expected);

    const std::string digits = input.toStdString();
    const int stated = digits.back() - '0';
    const auto right = checkDigit(std::string_view(digits).substr(0, digits.size() - 1));
    QVERIFY(right.has_value());
    QCOMPARE(stated == *right, verdict == QStringLiteral("accept"));
    if (expected.startsWith(QStringLiteral("correct digit")))
        QCOMPARE(QString::number(*right), expected.section(u' ', -1));
    if (expected == QStringLiteral("SSCC"))
        return;
    const auto gtin = parseGtin(digits);
    QCOMPARE(gtin.has_value(), verdict == QStringLiteral("accept"));
    if (gtin)
        QCOMPARE(QStringLiteral("GTIN-%1").arg(digits.size()), expected);
    else
        QVERIFY(text(gtin.error().sentence).contains(QStringLiteral("have to be %1").arg(*right)));
}

void TestGs1::century_isPlaced_data() { rowsOf({ QStringLiteral("century") }); }

void TestGs1::century_isPlaced()
{
    QFETCH(QString, input);
    QFETCH(QString, expected);

    const auto match = QRegularExpression(QStringLiteral("^current=(\\d+) YY=(\\d\\d)$")).match(input);
    QVERIFY(match.hasMatch());
    const int current = match.captured(1).toInt();
    QCOMPARE(fullYear(match.captured(2).toInt(), current), expected.toInt());

    // The same through the whole of readCode, on the last day of that year.
    const std::string label = "(01)09520123456788(17)" + match.captured(2).toStdString() + "0615";
    const Code code = readCode(label, {}, std::chrono::year { current } / 12 / 31);
    QVERIFY(code.useBy.has_value());
    QCOMPARE(text(formatDate(*code.useBy)), expected + QStringLiteral("-06-15"));
}

void TestGs1::decimals_arePlaced_data() { rowsOf({ QStringLiteral("decimal") }); }

void TestGs1::decimals_arePlaced()
{
    QFETCH(QString, input);
    QFETCH(QString, expected);

    // Exact unit factors: NIST SP 811, appendix B.8.
    const QHash<QString, QPair<double, Dimension>> units {
        { QStringLiteral("kg"), { 1000, Dimension::Mass } },
        { QStringLiteral("lb"), { 453.59237, Dimension::Mass } },
        { QStringLiteral("L"), { 1000, Dimension::Volume } },
        { QStringLiteral("m3"), { 1e6, Dimension::Volume } },
        { QStringLiteral("US fl oz"), { 29.5735295625, Dimension::Volume } },
        { QStringLiteral("m"), { 1, Dimension::Length } },
    };
    const QString unit = expected.section(u' ', 1);
    const Code code = readCode("(01)09520123456788" + input.toStdString(), {}, today);
    QVERIFY2(!code.error, code.error ? code.error->sentence.c_str() : "");
    if (!units.contains(unit)) {
        // Prices and areas are no amounts of a ledger.
        QVERIFY(code.amounts.empty());
        return;
    }
    QCOMPARE(code.amounts.size(), 1U);
    const double value = expected.section(u' ', 0, 0).toDouble() * units.value(unit).first;
    QCOMPARE(code.amounts.front().dimension, units.value(unit).second);
    QVERIFY(std::abs(code.amounts.front().value() - value) <= 0.000501);
}

QTEST_APPLESS_MAIN(TestGs1)
#include "tst_gs1.moc"
