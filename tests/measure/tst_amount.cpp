#include <QRandomGenerator>
#include <QTest>

#include "measure/amount.h"

using namespace gw;

/// Amounts as people type them, and as they are written out.
class TestAmount : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void typed_isRead_data();
    void typed_isRead();
    void badInput_isRefusedWithASentence_data();
    void badInput_isRefusedWithASentence();
    void sentence_namesWhatToType();
    void amount_isWrittenOut_data();
    void amount_isWrittenOut();
    void written_readsBackWithinWhatItShows();
    void somethingIsNeverWrittenAsNothing();
    void sums_areExact();
    void baseUnits_goThereAndBack();
    void conversion_needsADensity();
    void conversion_goesThereAndBack();
    void anyBytes_areReadOrRefused();
};

namespace {

std::string bytes(QRandomGenerator& random, int longest)
{
    std::string text(static_cast<std::size_t>(random.bounded(longest + 1)), ' ');
    for (char& c : text)
        c = static_cast<char>(random.bounded(256));
    return text;
}

} // namespace

void TestAmount::typed_isRead_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<double>("value");
    QTest::addColumn<int>("dimension");
    const auto row = [](const char* typed, double value, Dimension dimension) {
        QTest::newRow(typed) << QString::fromUtf8(typed) << value << static_cast<int>(dimension);
    };
    using enum Dimension;
    row("500g", 500, Mass);
    row("1.5 kg", 1500, Mass);
    row("0,125 kg", 125, Mass);
    row("1.125 kg", 1125, Mass);
    row("250 mg", 0.25, Mass);
    row(" 12,5\u00A0g ", 12.5, Mass);
    row("0 g", 0, Mass);
    row("2,5 l", 2500, Volume);
    row("70 cl", 700, Volume);
    row("750ML", 750, Volume);
    row("1000000 l", 1e9, Volume);
    row("12 each", 12, Count);
    row("12 pcs", 12, Count);
    row("1 piece", 1, Count);
    row("3 pr", 3, Count);
    row("2 pairs", 2, Count);
    row("0.5 m", 0.5, Length);
    row("40 mm", 0.04, Length);
    // Exact factors: NIST SP 811 (2008), appendix B.8; the pound and yard by the international agreement of
    // 1959, the US gallon as 231 cubic inches. Rounded here to the ledger's thousandth.
    row("1 lb", 453.592, Mass);
    row("1000 lb", 453592.37, Mass);
    row("8 oz", 226.796, Mass);
    row("16000 oz", 453592.37, Mass);
    row("8 fl oz", 236.588, Volume);
    row("8 Fl. Oz.", 236.588, Volume);
    row("1000 fluid ounces", 29573.530, Volume); // 29 573.529 562 5 ml, rounded
    row("1 pint", 473.176, Volume);
    row("2 qt", 1892.706, Volume);
    row("1 gal", 3785.412, Volume);
    row("1000 gallons", 3785411.784, Volume);
    row("10 ft", 3.048, Length);
    row("100 in", 2.54, Length);
    row("10 yd", 9.144, Length);
}

void TestAmount::typed_isRead()
{
    QFETCH(QString, typed);
    QFETCH(double, value);
    QFETCH(int, dimension);
    const auto amount = parseAmount(typed.toStdString());
    QVERIFY2(amount.has_value(), amount ? "" : amount.error().sentence.c_str());
    QCOMPARE(amount->milli, qRound64(value * 1000));
    QCOMPARE(static_cast<int>(amount->dimension), dimension);
}

void TestAmount::badInput_isRefusedWithASentence_data()
{
    QTest::addColumn<QString>("typed");
    for (const char* typed :
        { "", "   ", "500", "g", "five g", "500 stones", "-5 g", "-0.001 kg", "1.000,5 g", "1,000 g",
            "1.000.000 g", "1,000.5 g", "1 000 g", "1/2 gal", "1. g", ". g", ",g", "1e3 g", "nan g", "inf g",
            "0x10 g", "1000001 kg", "99999999999999999999999999 g", "0.0001 g", "2 boxes", "5 g of glue",
            "12 g 3", "\u0663 g", "1 gr", "5 lb 8 oz", "1\0002 g", "++5 g", "5 g;drop table entry" })
        QTest::newRow(typed) << QString::fromUtf8(typed);
}

void TestAmount::badInput_isRefusedWithASentence()
{
    QFETCH(QString, typed);
    const auto amount = parseAmount(typed.toStdString());
    QVERIFY(!amount.has_value());
    QCOMPARE(amount.error().code, ErrorCode::BadInput);
    const QString sentence = QString::fromStdString(amount.error().sentence);
    QVERIFY2(sentence.endsWith(u'.') && sentence.size() > 20 && sentence.size() < 300, qPrintable(sentence));
}

void TestAmount::sentence_namesWhatToType()
{
    const auto sentenceFor
        = [](const char* typed) { return QString::fromStdString(parseAmount(typed).error().sentence); };
    QVERIFY(sentenceFor("500").contains(QStringLiteral("no unit")));
    QVERIFY(sentenceFor("500").contains(QStringLiteral("500g")));
    QVERIFY(sentenceFor("1.000,5 g").contains(QStringLiteral("two ways")));
    QVERIFY(sentenceFor("1,000 g").contains(QStringLiteral("two ways")));
    QVERIFY(sentenceFor("1/2 gal").contains(QStringLiteral("0.5")));
    QVERIFY(sentenceFor("-5 g").contains(QStringLiteral("minus")));
    QVERIFY(sentenceFor("5 stones").contains(QStringLiteral("\"stones\"")));
    QVERIFY(sentenceFor("1000001 kg").contains(QStringLiteral("more than any shop holds")));
}

void TestAmount::amount_isWrittenOut_data()
{
    QTest::addColumn<double>("value");
    QTest::addColumn<int>("dimension");
    QTest::addColumn<int>("system");
    QTest::addColumn<QString>("written");
    const auto row = [](double value, Dimension dimension, UnitSystem system, const char* written) {
        QTest::addRow("%g %d %s", value, static_cast<int>(system), written)
            << value << static_cast<int>(dimension) << static_cast<int>(system) << QString::fromUtf8(written);
    };
    using enum Dimension;
    using enum UnitSystem;
    row(500, Mass, Metric, "500 g");
    row(1500, Mass, Metric, "1.5 kg");
    row(1125, Mass, Metric, "1.125 kg");
    row(999.7, Mass, Metric, "1 kg");
    row(99.97, Mass, Metric, "100 g");
    row(9.996, Mass, Metric, "10 g");
    row(12.34, Mass, Metric, "12.3 g");
    row(0.001, Mass, Metric, "0.001 g");
    row(0, Mass, Metric, "0 g");
    row(-40, Mass, Metric, "-40 g");
    row(236.588, Volume, Metric, "237 ml");
    row(2500, Volume, Metric, "2.5 l");
    row(12, Count, Metric, "12 pieces");
    row(1, Count, Metric, "1 piece");
    row(0.5, Count, Metric, "0.5 pieces");
    row(12, Count, Us, "12 pieces");
    row(0.5, Length, Metric, "0.5 m");
    row(236.588, Volume, Us, "8.0 fl oz");
    row(946.353, Volume, Us, "1.0 qt");
    row(3785.412, Volume, Us, "1.0 gal");
    row(7570.824, Volume, Us, "2.0 gal");
    row(453.592, Mass, Us, "1.0 lb");
    row(226.796, Mass, Us, "8.0 oz");
    row(3.5, Mass, Us, "0.12 oz");
    row(0.001, Mass, Us, "0.000035 oz");
    row(0, Volume, Us, "0.0 fl oz");
    row(3.048, Length, Us, "10.0 ft");
    row(0.254, Length, Us, "10.0 in");
}

void TestAmount::amount_isWrittenOut()
{
    QFETCH(double, value);
    QFETCH(int, dimension);
    QFETCH(int, system);
    QFETCH(QString, written);
    const Amount amount = amountOf(value, static_cast<Dimension>(dimension));
    QCOMPARE(QString::fromStdString(formatAmount(amount, static_cast<UnitSystem>(system))), written);
}

void TestAmount::written_readsBackWithinWhatItShows()
{
    QRandomGenerator random(1);
    for (int i = 0; i < 20000; ++i) {
        const auto milli = static_cast<std::int64_t>(std::pow(10.0, random.bounded(11.5)));
        const auto dimension = static_cast<Dimension>(random.bounded(4));
        const Amount amount { milli, dimension };
        for (const UnitSystem system : { UnitSystem::Metric, UnitSystem::Us }) {
            const std::string written = formatAmount(amount, system);
            const auto back = parseAmount(written);
            QVERIFY2(back.has_value(), written.c_str());
            QCOMPARE(back->dimension, dimension);
            // US forms show one decimal of a unit, at worst 0.95 of it; metric forms half a step in a
            // hundred.
            const double slack = system == UnitSystem::Us ? 0.055 : 0.0051;
            QVERIFY2(std::abs(static_cast<double>(back->milli - milli))
                    <= slack * static_cast<double>(milli) + 0.5,
                written.c_str());
        }
    }
}

void TestAmount::somethingIsNeverWrittenAsNothing()
{
    for (std::int64_t milli = 1; milli < 3000; ++milli) {
        for (const UnitSystem system : { UnitSystem::Metric, UnitSystem::Us }) {
            for (const Dimension dimension :
                { Dimension::Mass, Dimension::Volume, Dimension::Count, Dimension::Length }) {
                const std::string written = formatAmount({ milli, dimension }, system);
                QVERIFY2(written.find_first_of("123456789") != std::string::npos, written.c_str());
            }
        }
    }
}

void TestAmount::sums_areExact()
{
    Amount sum = grams(0);
    for (int i = 0; i < 10000; ++i)
        sum = sum + grams(0.1);
    QCOMPARE(sum.milli, 1'000'000);
    for (int i = 0; i < 10000; ++i)
        sum = sum - grams(0.1);
    QCOMPARE(sum.milli, 0);
}

void TestAmount::baseUnits_goThereAndBack()
{
    for (const Dimension dimension :
        { Dimension::Mass, Dimension::Volume, Dimension::Count, Dimension::Length })
        QCOMPARE(dimensionOfUnit(baseUnit(dimension)), std::optional(dimension));
    QVERIFY(!dimensionOfUnit("kg"));
    QVERIFY(!dimensionOfUnit(""));
}

void TestAmount::conversion_needsADensity()
{
    QCOMPARE(convert(grams(5), Dimension::Mass, {})->milli, 5000);
    QVERIFY(!convert(grams(5), Dimension::Volume, {}));
    QVERIFY(!convert(grams(5), Dimension::Volume, GramsPerMillilitre { 0 }));
    QVERIFY(!convert(grams(5), Dimension::Volume, GramsPerMillilitre { -1 }));
    QVERIFY(!convert(grams(5), Dimension::Volume, GramsPerMillilitre { qQNaN() }));
    QVERIFY(!convert(pieces(5), Dimension::Mass, GramsPerMillilitre { 1 }));
    QVERIFY(!convert(grams(5), Dimension::Length, GramsPerMillilitre { 1 }));
    // Ethanol, 0.789 g/ml at 20 C (common handbook figure).
    QCOMPARE(convert(millilitres(1000), Dimension::Mass, GramsPerMillilitre { 0.789 })->milli, 789'000);
    QCOMPARE(convert(grams(789), Dimension::Volume, GramsPerMillilitre { 0.789 })->milli, 1'000'000);
}

void TestAmount::conversion_goesThereAndBack()
{
    QRandomGenerator random(2);
    for (int i = 0; i < 10000; ++i) {
        const Amount amount { random.bounded(1, 100'000'000), Dimension::Mass };
        const GramsPerMillilitre density { 0.1 + random.bounded(9.9) };
        const auto back = convert(*convert(amount, Dimension::Volume, density), Dimension::Mass, density);
        QVERIFY(std::abs(static_cast<double>(back->milli - amount.milli)) <= density.value / 2 + 1);
    }
}

void TestAmount::anyBytes_areReadOrRefused()
{
    QRandomGenerator random(3);
    for (int i = 0; i < 50000; ++i) {
        const auto amount = parseAmount(bytes(random, 12));
        if (amount)
            QVERIFY(amount->milli >= 0 && amount->milli <= 1'000'000'000'000);
        else
            QVERIFY(amount.error().sentence.size() < 400);
    }
    QVERIFY(!parseAmount(std::string(4'000'000, '7')));
    QVERIFY(!parseAmount("1 " + std::string(4'000'000, 'g')));
}

QTEST_APPLESS_MAIN(TestAmount)
#include "tst_amount.moc"
