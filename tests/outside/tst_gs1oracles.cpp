// Ten thousand random codes, half of them spoiled, read here and by two programs that are not ours:
// python3-stdnum (Debian, LGPL) for check digits, dates, decimals and element strings, and Zint's own GS1
// checks (libzint). Where we differ a class of difference with its reason must explain it; anything else
// fails.
#include <QHash>
#include <QProcess>
#include <QRandomGenerator>
#include <QRegularExpression>
#include <QTest>

#include <zint.h>

#include "codes/applicationidentifiers.h"
#include "codes/code.h"
#include "codes/labeldate.h"

using namespace gw;

namespace {

constexpr int many = 10'000;
constexpr quint32 seed = 95'201'234;
const Date today = std::chrono::year { 2026 } / 11 / 20;

struct Sample {
    std::vector<Element> elements;
    std::string text; ///< as a symbol carries it
    bool spoiledText = false; ///< the text was changed after it was made of the elements
};

class Maker {
public:
    Sample next()
    {
        Sample sample;
        sample.elements.push_back({ "01", item() });
        for (int n = m_random.bounded(4); n > 0; --n) {
            Element element = any();
            if (std::ranges::find(sample.elements, element.ai, &Element::ai) == sample.elements.end())
                sample.elements.push_back(std::move(element));
        }
        const int fate = m_random.bounded(4);
        if (fate == 0)
            spoil(sample.elements[one(sample.elements.size())].value);
        for (std::size_t i = 0; i < sample.elements.size(); ++i) {
            const Element& element = sample.elements[i];
            sample.text += element.ai + element.value;
            if (!identifierNamed(element.ai)->predefinedLength && i + 1 < sample.elements.size())
                sample.text += '\x1d';
        }
        sample.spoiledText = fate == 1;
        if (sample.spoiledText)
            spoil(sample.text);
        return sample;
    }
    std::string digits(int length) { return from("0123456789", length); }
    int bounded(int low, int high) { return m_random.bounded(low, high); }

private:
    std::size_t one(std::size_t of)
    {
        return static_cast<std::size_t>(m_random.bounded(static_cast<int>(of)));
    }
    std::string from(std::string_view characters, int length)
    {
        std::string text;
        for (; length > 0; --length)
            text += characters[one(characters.size())];
        return text;
    }
    std::string item()
    {
        const std::string data = digits(13);
        return data + static_cast<char>('0' + *checkDigit(data));
    }
    std::string date(bool dayZero)
    {
        const int day = m_random.bounded(dayZero ? 0 : 1, 32);
        return QStringLiteral("%1%2%3")
            .arg(m_random.bounded(100), 2, 10, QChar(u'0'))
            .arg(m_random.bounded(1, 13), 2, 10, QChar(u'0'))
            .arg(day, 2, 10, QChar(u'0'))
            .toStdString();
    }
    std::string text(int longest)
    {
        return from("ABCDEFGHIJKLMNOPQRSTUVWXYZabcxyz0123456789-/.+_", m_random.bounded(1, longest + 1));
    }
    Element any()
    {
        constexpr std::array dates { "11", "12", "13", "15", "16", "17" };
        constexpr std::array texts { "10", "21", "240", "241" };
        constexpr std::array measures { "310", "311", "315", "316", "320", "321", "357", "360", "361" };
        switch (m_random.bounded(7)) {
        case 0:
        case 1:
            return { dates[one(dates.size())], date(true) };
        case 2:
        case 3: {
            const char* ai = texts[one(texts.size())];
            return { ai, text(ai[0] == '2' && ai[1] == '4' ? 30 : 20) };
        }
        case 4:
            return { measures[one(measures.size())] + std::to_string(m_random.bounded(6)), digits(6) };
        case 5:
            return { "30", digits(m_random.bounded(1, 9)) };
        default:
            return { "20", digits(2) };
        }
    }
    void spoil(std::string& text)
    {
        if (text.empty())
            return;
        const std::size_t at = one(text.size());
        switch (m_random.bounded(4)) {
        case 0:
            text[at] = from("0123456789ABCz -", 1)[0];
            break;
        case 1:
            text.erase(at, 1);
            break;
        case 2:
            text.insert(at, from("0123456789A\x1d", 1));
            break;
        default:
            std::swap(text[at], text[one(text.size())]);
        }
    }

    QRandomGenerator m_random { seed };
};

/// What stdnum answers to all lines; empty when it is not here.
QStringList stdnumAnswers(const QByteArray& questions)
{
    // The system's Python has the distribution's packages; another one first in the path need not.
    for (const QString& python : { QStringLiteral("/usr/bin/python3"), QStringLiteral("python3") }) {
        QProcess process;
        process.start(python, { QFINDTESTDATA("stdnum_oracle.py") });
        process.write(questions);
        process.closeWriteChannel();
        if (process.waitForFinished(90'000) && process.exitCode() == 0)
            return QString::fromLatin1(process.readAllStandardOutput()).split(u'\n', Qt::SkipEmptyParts);
    }
    return {};
}

/// Our elements in stdnum's words: dates as dates, measures with their decimals, counts as numbers.
QString inWords(const std::vector<Element>& elements)
{
    QStringList words;
    for (const Element& element : elements) {
        const std::string& ai = element.ai;
        QString value = QString::fromStdString(element.value);
        if (ai.size() == 2 && ai[0] == '1' && ai != "10") {
            const auto date = labelDate(element.value, DayZero::LastOfMonth, 2026);
            value = date ? QString::fromStdString(formatDate(*date)) : QStringLiteral("?");
        } else if (ai.size() == 4 && ai[0] == '3') {
            value.insert(value.size() - (ai[3] - '0'), ai[3] == '0' ? QString() : QStringLiteral("."));
            while (value.size() > 1 && value[0] == u'0' && value[1] != u'.')
                value.remove(0, 1);
        } else if (ai == "30") {
            value = QString::number(value.toUInt());
        }
        // stdnum names a measure without the digit that says its decimals.
        words.append(
            QString::fromStdString(ai.size() == 4 && ai[0] == '3' ? ai.substr(0, 3) : ai) + u'=' + value);
    }
    words.sort();
    return words.join(u'|');
}

/// stdnum reads years 69 to 99 as 1969 to 1999; the General Specifications (7.12) look 50 years ahead of
/// 2026.
QString withCenturyOfSpecifications(QString words)
{
    for (int year = 1969; year <= 1976; ++year)
        words.replace(u'=' + QString::number(year) + u'-', u'=' + QString::number(year + 100) + u'-');
    return words;
}

} // namespace

class Gs1OraclesTest : public QObject {
    Q_OBJECT

private:
    QHash<QString, int> m_explained;
    void tell(const char* oracle, int agreed) const
    {
        QStringList lines {
            QStringLiteral("%1: agreed on %2 of %3").arg(QLatin1String(oracle)).arg(agreed).arg(many)
        };
        for (auto it = m_explained.begin(); it != m_explained.end(); ++it)
            lines.append(QStringLiteral("  %1: %2").arg(it.key()).arg(it.value()));
        lines.sort();
        qInfo("%s", qPrintable(lines.join(u'\n')));
    }

    /// Why stdnum and we differ on a text; empty when nothing known explains it.
    static QString whyStdnum(const Sample& sample, const Code& ours, const QString& theirs);
    static QString whyZint(const Sample& sample, const Code& ours, const QString& words);

private Q_SLOTS:
    void init() { m_explained.clear(); }

    void itemNumbers_areJudgedAsByStdnum()
    {
        Maker maker;
        QByteArray questions;
        std::vector<std::string> numbers;
        constexpr std::array lengths { 8, 12, 13, 14 };
        for (int i = 0; i < many; ++i) {
            std::string number = maker.digits(lengths[static_cast<std::size_t>(i % 4)]);
            // Half of them hold.
            if (i % 8 < 4)
                number.back() = static_cast<char>(
                    '0' + *checkDigit(std::string_view(number).substr(0, number.size() - 1)));
            questions += 'N' + QByteArray::fromStdString(number) + '\n';
            numbers.push_back(std::move(number));
        }
        const QStringList answers = stdnumAnswers(questions);
        if (answers.isEmpty())
            QSKIP("python3-stdnum is not installed here");
        QCOMPARE(answers.size(), many);
        int held = 0;
        for (int i = 0; i < many; ++i) {
            const bool ours = parseGtin(numbers[static_cast<std::size_t>(i)]).has_value();
            QVERIFY2(
                ours == (answers[i] == QLatin1String("ok")), numbers[static_cast<std::size_t>(i)].c_str());
            held += ours;
        }
        QVERIFY2(held > many / 2 && held < many * 6 / 10, qPrintable(QString::number(held)));
    }

    void elementStrings_areReadAsByStdnum()
    {
        Maker maker;
        QByteArray questions;
        std::vector<Sample> samples;
        for (int i = 0; i < many; ++i) {
            samples.push_back(maker.next());
            questions += 'E' + QByteArray::fromStdString(samples.back().text).toHex() + '\n';
        }
        const QStringList answers = stdnumAnswers(questions);
        if (answers.isEmpty())
            QSKIP("python3-stdnum is not installed here");
        QCOMPARE(answers.size(), many);
        int agreed = 0, unexplained = 0;
        for (int i = 0; i < many; ++i) {
            const Sample& sample = samples[static_cast<std::size_t>(i)];
            const Code ours = readCode(sample.text, "]d2", today);
            const QString mine
                = ours.error ? QStringLiteral("no") : QStringLiteral("ok ") + inWords(ours.elements);
            if (mine == withCenturyOfSpecifications(answers[i])) {
                ++agreed;
                continue;
            }
            const QString why = whyStdnum(sample, ours, answers[i]);
            if (!why.isEmpty()) {
                ++m_explained[why];
                continue;
            }
            if (++unexplained <= 10)
                qWarning("%s\n  ours:   %s (%s)\n  stdnum: %s",
                    QByteArray::fromStdString(sample.text).replace('\x1d', '^').constData(), qPrintable(mine),
                    ours.error ? ours.error->kind.c_str() : "", qPrintable(answers[i]));
        }
        tell("stdnum", agreed);
        QCOMPARE(unexplained, 0);
        QVERIFY(agreed > many * 7 / 10);
    }

    void bracketed_areJudgedAsByZint()
    {
        Maker maker;
        int agreed = 0, unexplained = 0;
        for (int i = 0; i < many; ++i) {
            const Sample sample = maker.next();
            std::string brackets, squares;
            for (const Element& element : sample.elements) {
                brackets += '(' + element.ai + ')' + element.value;
                squares += '[' + element.ai + ']' + element.value;
            }
            const Code ours = readCode(brackets, {}, today);
            zint_symbol* symbol = ZBarcode_Create();
            symbol->symbology = BARCODE_DATAMATRIX;
            symbol->input_mode = GS1_MODE;
            const int said = ZBarcode_Encode(symbol, reinterpret_cast<const unsigned char*>(squares.data()),
                static_cast<int>(squares.size()));
            const QString words = QString::fromLatin1(symbol->errtxt);
            ZBarcode_Delete(symbol);
            if ((said == 0) == !ours.error) {
                ++agreed;
                continue;
            }
            const QString why = whyZint(sample, ours, words);
            if (!why.isEmpty()) {
                ++m_explained[why];
                continue;
            }
            if (++unexplained <= 10)
                qWarning("%s\n  ours: %s\n  zint: %d %s", brackets.c_str(),
                    ours.error ? ours.error->kind.c_str() : "accepted", said, qPrintable(words));
        }
        tell("zint", agreed);
        QCOMPARE(unexplained, 0);
        QVERIFY(agreed > many * 8 / 10);
    }
};

QString Gs1OraclesTest::whyStdnum(const Sample& sample, const Code& ours, const QString& theirs)
{
    // gs1_128.info(): cuts values by the longest length and converts them, and checks no characters or
    // lengths.
    static const QHash<QString, QString> unchecked {
        { QStringLiteral("non-digit"), QStringLiteral("it lets other characters stand where digits belong") },
        { QStringLiteral("value too short"), QStringLiteral("it takes a value that is cut off as it is") },
        { QStringLiteral("value too long"), QStringLiteral("it cuts a value that is too long and reads on") },
        { QStringLiteral("character set 82"), QStringLiteral("it checks no character set") },
        { QStringLiteral("empty value"), QStringLiteral("it takes nothing for a value") },
        { QStringLiteral("AIs exclude each other"), QStringLiteral("it knows no rules of association") },
        { QStringLiteral("duplicate AI"),
            QStringLiteral("it keeps the last of two values of one identifier") },
    };
    if (!ours.error && std::ranges::find(ours.elements, "03", &Element::ai) != ours.elements.end())
        return QStringLiteral("its table of 2022 lacks 03, made-to-order items");
    if (!ours.error || !theirs.startsWith(QLatin1String("ok")))
        return {};
    const QString sentence = QString::fromStdString(ours.error->sentence);
    if (ours.error->kind == "no such AI") {
        if (sample.text.starts_with('\x1d') || sample.text.find("\x1d\x1d") != std::string::npos)
            return QStringLiteral("it skips a separator with nothing before it");
        static const QRegularExpression decimals(QStringLiteral("begins \"3[1-6]\\d[6-9]\""));
        return decimals.match(sentence).hasMatch()
            ? QStringLiteral("it takes any digit for a number of decimals")
            : QString();
    }
    if (ours.error->kind == "check digit" && !sentence.startsWith(QLatin1String("(01)"))
        && !sentence.startsWith(QLatin1String("(02)")))
        return QStringLiteral("it checks the digits of 01 and 02 only");
    return unchecked.value(QString::fromStdString(ours.error->kind));
}

QString Gs1OraclesTest::whyZint(const Sample& sample, const Code& ours, const QString& words)
{
    if (!ours.error && sample.elements.back().value.ends_with(' ') && words.contains(QLatin1String("' '")))
        return QStringLiteral("a blank typed behind the last element is nothing to us");
    if (ours.error && ours.error->kind == "AIs exclude each other")
        return QStringLiteral("Zint knows no rules of association");
    return {};
}

QTEST_GUILESS_MAIN(Gs1OraclesTest)
#include "tst_gs1oracles.moc"
