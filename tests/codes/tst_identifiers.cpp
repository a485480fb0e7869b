#include <QTest>

#include "codes/applicationidentifiers.h"

using namespace gw;

/// The table of application identifiers holds together.
class TestIdentifiers : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void predefinedLengths_areThoseOfTheSpecifications();
    void identifier_isFoundByItsBeginning();
    void unknown_isNotFound();
    void onlyTheLastPartVaries();
    void associations_nameIdentifiersThatExist();
    void linkKeys_andTheirQualifiersExist();
};

namespace {

std::string padded(int number, int digits)
{
    return QString::number(number).rightJustified(digits, u'0').toStdString();
}

/// Calls visit for every identifier there is, of any number of digits.
template <class Visit> void forEach(Visit visit)
{
    for (int digits = 2; digits <= 4; ++digits) {
        for (int number = 0; number < (digits == 2 ? 100 : digits == 3 ? 1000 : 10000); ++number) {
            const std::string ai = padded(number, digits);
            if (const Identifier* identifier = identifierNamed(ai))
                visit(ai, *identifier);
        }
    }
}

} // namespace

void TestIdentifiers::predefinedLengths_areThoseOfTheSpecifications()
{
    // GS1 General Specifications figure 7.8.5-2, the element strings with predefined length: first two digits
    // and the length of identifier and data together. (04, 14, 18 and 19 are kept for later and name
    // nothing.)
    const QHash<QString, int> lengths { { QStringLiteral("00"), 20 }, { QStringLiteral("01"), 16 },
        { QStringLiteral("02"), 16 }, { QStringLiteral("03"), 16 }, { QStringLiteral("11"), 8 },
        { QStringLiteral("12"), 8 }, { QStringLiteral("13"), 8 }, { QStringLiteral("15"), 8 },
        { QStringLiteral("16"), 8 }, { QStringLiteral("17"), 8 }, { QStringLiteral("20"), 4 },
        { QStringLiteral("31"), 10 }, { QStringLiteral("32"), 10 }, { QStringLiteral("33"), 10 },
        { QStringLiteral("34"), 10 }, { QStringLiteral("35"), 10 }, { QStringLiteral("36"), 10 },
        { QStringLiteral("41"), 16 } };
    int predefined = 0;
    forEach([&](const std::string& ai, const Identifier& identifier) {
        const QString prefix = QString::fromStdString(ai.substr(0, 2));
        QCOMPARE(identifier.predefinedLength, lengths.contains(prefix));
        if (!identifier.predefinedLength)
            return;
        ++predefined;
        QCOMPARE(identifier.shortest(), identifier.longest());
        QCOMPARE(ai.size() + identifier.longest(), static_cast<std::size_t>(lengths.value(prefix)));
    });
    // 11 of two digits, 8 locations, and the measures: 53 kinds of six decimals each, from the dictionary's
    // rows.
    QCOMPARE(predefined, 11 + 8 + 53 * 6);
}

void TestIdentifiers::identifier_isFoundByItsBeginning()
{
    forEach([](const std::string& ai, const Identifier& identifier) {
        QCOMPARE(identifierAtStart(ai + "123456"), &identifier);
        QVERIFY(!identifier.name.empty());
        QVERIFY(named(identifier, ai).starts_with('(' + ai + ") "));
    });
}

void TestIdentifiers::unknown_isNotFound()
{
    for (const char* text : { "", "0", "04", "14", "18", "19", "23", "234", "3106", "3170", "3180", "38",
             "418", "50", "60", "7099", "717", "8113", "82", "8201", "9", "x1", "1x",
             "3\xD9\xA3"
             "00" })
        QVERIFY2(!identifierAtStart(text), text);
    QVERIFY(!identifierNamed("010"));
    QVERIFY(!identifierNamed("12345"));
}

void TestIdentifiers::onlyTheLastPartVaries()
{
    forEach([](const std::string& ai, const Identifier& identifier) {
        const auto parts = identifier.usedParts();
        QVERIFY(!parts.empty() && !parts.front().optional);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            QVERIFY(parts[i].shortest >= 1 && parts[i].shortest <= parts[i].longest);
            if (i + 1 < parts.size()) {
                QVERIFY2(parts[i].shortest == parts[i].longest, ai.c_str());
                QVERIFY2(!parts[i].optional || parts[i + 1].optional, ai.c_str());
            }
        }
    });
}

void TestIdentifiers::associations_nameIdentifiersThatExist()
{
    forEach([](const std::string& ai, const Identifier& identifier) {
        QString text
            = QString::fromUtf8(identifier.needs.data(), static_cast<qsizetype>(identifier.needs.size()));
        if (!identifier.excludes.empty())
            text += u','
                + QString::fromUtf8(
                    identifier.excludes.data(), static_cast<qsizetype>(identifier.excludes.size()));
        for (QString other : text.replace(u';', u',').replace(u'+', u',').split(u',', Qt::SkipEmptyParts)) {
            const std::string named
                = other.replace(QStringLiteral("nn"), QStringLiteral("00")).replace(u'n', u'0').toStdString();
            QVERIFY2(identifierNamed(named), (ai + " names " + named).c_str());
        }
    });
}

void TestIdentifiers::linkKeys_andTheirQualifiersExist()
{
    int keys = 0;
    forEach([&](const std::string& ai, const Identifier&) {
        const LinkKey* key = linkKey(ai);
        if (!key)
            return;
        ++keys;
        for (const std::string_view qualifiers : key->qualifiers) {
            const QString text
                = QString::fromUtf8(qualifiers.data(), static_cast<qsizetype>(qualifiers.size()));
            for (const QString& other : text.split(u',', Qt::SkipEmptyParts))
                QVERIFY(identifierNamed(other.toStdString()));
        }
    });
    QCOMPARE(keys, 16);
}

QTEST_APPLESS_MAIN(TestIdentifiers)
#include "tst_identifiers.moc"
