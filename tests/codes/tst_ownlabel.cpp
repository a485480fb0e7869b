#include <QRandomGenerator>
#include <QSet>
#include <QTest>

#include "codes/ownlabel.h"

using namespace gw;

/// The short codes on our own containers.
class TestOwnLabel : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void code_hasOneWrittenForm();
    void code_isReadHoweverItIsTyped();
    void differentNumbers_haveDifferentCodes();
    void everyWrongCharacter_isCaught();
    void everySwapOfNeighbours_isCaught();
    void checkScheme_catchesEveryPairInEveryPlace();
    void otherText_isNotOurs();
    void slip_stillLooksLikeOurs();
};

namespace {

const std::string alphabet = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

std::string randomCode(QRandomGenerator& random) { return ownLabelCode(random.generate64()); }

} // namespace

void TestOwnLabel::code_hasOneWrittenForm()
{
    QRandomGenerator random(20);
    for (int i = 0; i < 10000; ++i) {
        const std::string code = randomCode(random);
        QCOMPARE(code.size(), 9U);
        QVERIFY(code.starts_with("GW"));
        QVERIFY(code.find_first_not_of(alphabet, 2) == std::string::npos);
        QCOMPARE(parseOwnLabel(code), std::optional(code));
    }
    // Written down once, so that labels already printed stay readable for good. Worked out apart from the
    // code here, with the group as the turns and mirrorings of a 15-gon's corners.
    QCOMPARE(ownLabelCode(0), std::string("GW2222225"));
    QCOMPARE(ownLabelCode(123456789), std::string("GW74EG8B7"));
}

void TestOwnLabel::code_isReadHoweverItIsTyped()
{
    const std::string code = ownLabelCode(123456789);
    const QString text = QString::fromStdString(code);
    for (const QString& typed : { text.toLower(), QStringLiteral(" ") + text + QStringLiteral(" "),
             text.left(2) + QStringLiteral(" ") + text.mid(2, 3) + QStringLiteral("-")
                 + text.mid(5).toLower() })
        QCOMPARE(parseOwnLabel(typed.toStdString()), std::optional(code));
}

void TestOwnLabel::differentNumbers_haveDifferentCodes()
{
    QSet<QString> codes;
    for (std::uint64_t number = 0; number < 30000; ++number)
        codes.insert(QString::fromStdString(ownLabelCode(number)));
    QCOMPARE(codes.size(), 30000);
    QVERIFY(ownLabelCode(728'999'999) != ownLabelCode(728'999'998)); // the last two of 30^6
    QCOMPARE(ownLabelCode(729'000'000), ownLabelCode(0));
}

void TestOwnLabel::everyWrongCharacter_isCaught()
{
    QRandomGenerator random(21);
    for (int i = 0; i < 1000; ++i) {
        const std::string code = randomCode(random);
        for (std::size_t at = 0; at < code.size(); ++at) {
            for (const char other : alphabet) {
                std::string wrong = code;
                wrong[at] = other;
                QCOMPARE(parseOwnLabel(wrong).has_value(), wrong == code);
            }
        }
    }
}

void TestOwnLabel::everySwapOfNeighbours_isCaught()
{
    QRandomGenerator random(22);
    for (int i = 0; i < 5000; ++i) {
        const std::string code = randomCode(random);
        for (std::size_t at = 0; at + 1 < code.size(); ++at) {
            std::string swapped = code;
            std::swap(swapped[at], swapped[at + 1]);
            QCOMPARE(parseOwnLabel(swapped).has_value(), swapped == code);
        }
    }
}

void TestOwnLabel::checkScheme_catchesEveryPairInEveryPlace()
{
    // Exhaustive over what the scheme can see: every pair of characters in every pair of neighbouring places,
    // the check character's place among them, behind several beginnings.
    QRandomGenerator random(23);
    for (int round = 0; round < 2; ++round) {
        const std::string base = randomCode(random);
        for (std::size_t at = 2; at + 2 < base.size(); ++at) {
            for (const char first : alphabet) {
                for (const char second : alphabet) {
                    std::string code = base;
                    code[at] = first;
                    code[at + 1] = second;
                    for (const char check : alphabet) {
                        code.back() = check;
                        if (!parseOwnLabel(code))
                            continue;
                        for (const std::size_t swapAt : { at, base.size() - 2 }) {
                            std::string swapped = code;
                            std::swap(swapped[swapAt], swapped[swapAt + 1]);
                            QCOMPARE(parseOwnLabel(swapped).has_value(), swapped == code);
                        }
                    }
                }
            }
        }
    }
}

void TestOwnLabel::otherText_isNotOurs()
{
    for (const char* text : { "", "GW", "GW222222", "GW22222222", "XX222222X", "GW2222I2X", "GW2222O2X",
             "2112345678900", "glue" })
        QVERIFY2(!parseOwnLabel(text) && !looksLikeOwnLabel(text), text);
    QVERIFY(!parseOwnLabel(std::string(3'000'000, ' ') + ownLabelCode(1)));
}

void TestOwnLabel::slip_stillLooksLikeOurs()
{
    std::string code = ownLabelCode(123456789);
    QVERIFY(looksLikeOwnLabel(code));
    code[4] = code[4] == 'X' ? 'Y' : 'X';
    QVERIFY(looksLikeOwnLabel(code) && !parseOwnLabel(code));
}

QTEST_APPLESS_MAIN(TestOwnLabel)
#include "tst_ownlabel.moc"
