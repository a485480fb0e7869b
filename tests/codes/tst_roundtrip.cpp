#include <QRandomGenerator>
#include <QTest>

#include <ctime>

#include "codes/applicationidentifiers.h"
#include "codes/code.h"
#include "codes/elementcheck.h"

using namespace gw;

/// Random element strings come back as they were written, in every form; random bytes never do harm.
class TestRoundTrip : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void elementString_readsBack();
    void bracketed_readsBack();
    void digitalLink_readsBack();
    void wrongDigitInTheItemNumber_isAlwaysCaught();
    void everyDate_isReadOrRefusedLikeTheCalendar();
    void anyBytes_doNoHarm();
    void mutatedCodes_doNoHarm();
    void megabytes_areRefusedAtOnce();
};

namespace {

using Elements = std::vector<Element>;

const Date today = std::chrono::year { 2026 } / 7 / 1;

std::string randomFrom(QRandomGenerator& random, std::string_view characters, int length)
{
    std::string text;
    for (int i = 0; i < length; ++i)
        text += characters[static_cast<std::size_t>(random.bounded(static_cast<int>(characters.size())))];
    return text;
}

constexpr std::string_view numerals = "0123456789";
constexpr std::string_view lotCharacters
    = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789!\"%&'()*+,-./:;<=>?_";

std::string randomItem(QRandomGenerator& random)
{
    std::string digits = randomFrom(random, numerals, 13);
    return digits + static_cast<char>('0' + *checkDigit(digits));
}

std::string randomDate(QRandomGenerator& random)
{
    const int month = random.bounded(1, 13);
    return QStringLiteral("%1%2%3")
        .arg(random.bounded(100), 2, 10, QLatin1Char('0'))
        .arg(month, 2, 10, QLatin1Char('0'))
        .arg(random.bounded(0, 29), 2, 10, QLatin1Char('0'))
        .toStdString();
}

/// An item number and a random handful of what may stand beside it, in random order.
Elements randomElements(QRandomGenerator& random, std::string_view textCharacters)
{
    Elements elements { { "01", randomItem(random) } };
    const auto text
        = [&](int longest) { return randomFrom(random, textCharacters, random.bounded(1, longest + 1)); };
    const auto perhaps = [&](const char* ai, const std::string& value) {
        if (random.bounded(2) == 0)
            elements.push_back({ ai, value });
    };
    perhaps("10", text(20));
    perhaps("11", randomDate(random));
    perhaps("13", randomDate(random));
    perhaps("15", randomDate(random));
    perhaps("17", randomDate(random));
    perhaps("21", text(20));
    perhaps("240", text(30));
    perhaps("30", randomFrom(random, numerals, random.bounded(1, 9)));
    perhaps("3103", randomFrom(random, numerals, 6));
    perhaps("3152", randomFrom(random, numerals, 6));
    perhaps("98", text(90));
    for (std::size_t i = elements.size() - 1; i > 0; --i)
        std::swap(elements[i], elements[static_cast<std::size_t>(random.bounded(static_cast<int>(i + 1)))]);
    return elements;
}

std::string scanned(const Elements& elements)
{
    std::string text;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        text += elements[i].ai + elements[i].value;
        if (i + 1 < elements.size() && !identifierNamed(elements[i].ai)->predefinedLength)
            text += '\x1D';
    }
    return text;
}

std::string valueOf(const Elements& elements, std::string_view ai)
{
    for (const Element& element : elements) {
        if (element.ai == ai)
            return element.value;
    }
    return {};
}

} // namespace

void TestRoundTrip::elementString_readsBack()
{
    QRandomGenerator random(30);
    for (int i = 0; i < 2000; ++i) {
        const Elements elements = randomElements(random, lotCharacters);
        for (const char* symbology : { "]d2", "]C1", "]Q3", "]e0" }) {
            const Code code = readCode(scanned(elements), symbology, today);
            QVERIFY2(!code.error, code.error ? code.error->sentence.c_str() : "");
            QCOMPARE(code.elements, elements);
        }
        const Code code = readCode("]d2" + scanned(elements), {}, today);
        QCOMPARE(code.kind, CodeKind::Gs1);
        QCOMPARE(code.elements, elements);
        QCOMPARE(code.gtin->digits14, valueOf(elements, "01"));
        QCOMPARE(code.lot, valueOf(elements, "10"));
        QCOMPARE(code.serial, valueOf(elements, "21"));
        QCOMPARE(code.useBy.has_value(), !valueOf(elements, "17").empty());
        QVERIFY(code.warnings.size() <= 1); // a count or weight of nothing
    }
}

void TestRoundTrip::bracketed_readsBack()
{
    QRandomGenerator random(31);
    for (int i = 0; i < 2000; ++i) {
        const Elements elements = randomElements(random, lotCharacters);
        std::string typed;
        for (const Element& element : elements) {
            typed += '(' + element.ai + ')';
            for (const char c : element.value)
                typed += c == '(' ? std::string("\\(") : std::string(1, c);
        }
        const Code code = readCode(typed, {}, today);
        QVERIFY2(!code.error, code.error ? code.error->sentence.c_str() : "");
        QCOMPARE(code.elements, elements);
    }
}

void TestRoundTrip::digitalLink_readsBack()
{
    QRandomGenerator random(32);
    for (int i = 0; i < 2000; ++i) {
        const Elements elements = randomElements(random, lotCharacters);
        // Qt's own encoder writes the link, so that reading is not checked against its own mirror.
        const auto encoded = [](const std::string& value) {
            return QByteArray::fromStdString(value).toPercentEncoding().toStdString();
        };
        std::string link = "https://example.com/a/stem/01/" + valueOf(elements, "01");
        Elements expected { { "01", valueOf(elements, "01") } };
        for (const char* ai : { "10", "21" }) {
            const std::string value = valueOf(elements, ai);
            if (value.empty())
                continue;
            link += '/' + std::string(ai) + '/' + encoded(value);
            expected.push_back({ ai, value });
        }
        char mark = '?';
        for (const Element& element : elements) {
            if (element.ai == "01" || element.ai == "10" || element.ai == "21")
                continue;
            link += mark + element.ai + '=' + encoded(element.value);
            mark = '&';
            expected.push_back(element);
        }
        const Code code = readCode(link, i % 2 == 0 ? "]Q1" : "", today);
        QVERIFY2(!code.error, (link + ' ' + (code.error ? code.error->sentence : "")).c_str());
        QCOMPARE(code.kind, CodeKind::DigitalLink);
        QCOMPARE(code.elements, expected);
    }
}

void TestRoundTrip::wrongDigitInTheItemNumber_isAlwaysCaught()
{
    QRandomGenerator random(33);
    for (int i = 0; i < 300; ++i) {
        const Elements elements { { "01", randomItem(random) }, { "17", "261231" }, { "10", "ABC123" } };
        for (std::size_t at = 0; at < 14; ++at) {
            for (const char other : numerals) {
                Elements wrong = elements;
                wrong[0].value[at] = other;
                const Code code = readCode(scanned(wrong), "]d2", today);
                QCOMPARE(code.error.has_value(), wrong != elements);
                if (code.error) {
                    QCOMPARE(code.error->kind, std::string("check digit"));
                    QVERIFY(!code.gtin && !code.useBy && code.lot.empty());
                }
            }
        }
    }
}

void TestRoundTrip::everyDate_isReadOrRefusedLikeTheCalendar()
{
    // Qt's calendar is the outside judge; the century window of 2026 runs from 1977 to 2076.
    for (int year = 1977; year <= 2076; ++year) {
        for (int month = 0; month <= 13; ++month) {
            for (const int day : { 0, 1, 15, 28, 29, 30, 31, 32 }) {
                const QString digits = QStringLiteral("%1%2%3")
                                           .arg(year % 100, 2, 10, QLatin1Char('0'))
                                           .arg(month, 2, 10, QLatin1Char('0'))
                                           .arg(day, 2, 10, QLatin1Char('0'));
                const Code code = readCode(
                    "010952012345678817" + digits.toStdString() + "11" + digits.toStdString(), "]d2", today);
                const QDate first(year, month, 1);
                const QDate end
                    = day == 0 ? QDate(year, month, first.daysInMonth()) : QDate(year, month, day);
                QCOMPARE(code.error.has_value(), !first.isValid() || !end.isValid());
                if (code.error) {
                    QCOMPARE(code.error->kind, std::string(first.isValid() ? "day" : "month"));
                    continue;
                }
                QCOMPARE(formatDate(*code.useBy), end.toString(Qt::ISODate).toStdString());
                QCOMPARE(
                    formatDate(*code.made), (day == 0 ? first : end).toString(Qt::ISODate).toStdString());
            }
        }
    }
}

void TestRoundTrip::anyBytes_doNoHarm()
{
    QRandomGenerator random(34);
    const std::string_view marks = "0123456789()<GS>]d2C1Q3E0/?&=%|\\^-. \x1D\x80\xFFhttps://GWgw";
    for (int i = 0; i < 20000; ++i) {
        std::string text(static_cast<std::size_t>(random.bounded(64)), ' ');
        for (char& c : text)
            c = i % 2 == 0 ? static_cast<char>(random.bounded(256))
                           : marks[static_cast<std::size_t>(random.bounded(static_cast<int>(marks.size())))];
        const char* symbologies[] = { "", "]d2", "]E0", "]Q1", "]E4", "]I1", "]E3" };
        const Code code = readCode(text, symbologies[random.bounded(7)], today);
        for (const Element& element : code.elements) {
            const Identifier* identifier = identifierNamed(element.ai);
            QVERIFY(identifier && !checkValue(*identifier, element.ai, element.value, 2026));
        }
        if (code.error) {
            QVERIFY(code.error->sentence.size() < 500 && code.error->sentence.ends_with('.'));
            QVERIFY(!code.gtin && code.amounts.empty());
        }
    }
}

void TestRoundTrip::mutatedCodes_doNoHarm()
{
    QRandomGenerator random(35);
    for (int i = 0; i < 15000; ++i) {
        std::string text = scanned(randomElements(random, lotCharacters));
        for (int n = random.bounded(1, 4); n > 0; --n) {
            const auto at = static_cast<std::size_t>(random.bounded(static_cast<int>(text.size())));
            switch (random.bounded(3)) {
            case 0:
                text[at] = static_cast<char>(random.bounded(256));
                break;
            case 1:
                text.erase(at, 1);
                break;
            default:
                text.insert(at, 1, text[text.size() - at - 1]);
            }
        }
        const Code code = readCode(text, "]d2", today);
        // Whatever came in: an item number that is told holds, and what is told stands in the text.
        if (code.gtin)
            QVERIFY(parseGtin(code.gtin->digits14).has_value());
        QVERIFY(text.find(code.lot) != std::string::npos);
    }
}

void TestRoundTrip::megabytes_areRefusedAtOnce()
{
    const std::clock_t start = std::clock();
    for (const std::string& piece : { std::string("<GS>"), std::string("(10)A"), std::string("9"),
             std::string("https://a/01/"), std::string("&99=A"), std::string("(") }) {
        std::string text;
        while (text.size() < 5'000'000)
            text += piece;
        const Code code = readCode(text, {}, today);
        QVERIFY(code.error.has_value());
        QCOMPARE(code.error->kind, std::string("too long"));
        QVERIFY(code.text.size() <= 8192);
    }
    // The longest that is read, in the shapes that cost most.
    for (const std::string& piece :
        { std::string("90A\x1D"), std::string("<GS>"), std::string("30") + "1\x1D", std::string("&&") }) {
        std::string text = piece == "&&" ? "https://a/01/09520123456788?" : "0109520123456788";
        while (text.size() + piece.size() <= 8192)
            text += piece;
        (void)readCode(text, piece == "&&" ? "" : "]d2", today);
    }
    // Processor time, so that a busy machine does not count.
    QVERIFY(static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC < 10);
}

QTEST_APPLESS_MAIN(TestRoundTrip)
#include "tst_roundtrip.moc"
