// When what engines say of one symbol is believed. Our own rule: a wrong read is worse than none.
#include <QTest>

#include "scan/ballot.h"

using namespace gw;

namespace {

Symbol said(const char* text, const char* format, const char* engine)
{
    Symbol symbol;
    symbol.text = text;
    symbol.format = format;
    symbol.symbology = std::string("]") + format;
    symbol.engine = engine;
    return symbol;
}

} // namespace

class BallotTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void squareCode_isBelievedAtOnce()
    {
        Ballot ballot;
        ballot.add({ said("A", "QR Code", "one") });
        QVERIFY(ballot.believed());
        QCOMPARE(ballot.believed()->text, std::string("A"));
    }

    void barCode_wantsTwoEngines_orThreeLooks()
    {
        Ballot two;
        two.add({ said("9520123456788", "EAN-13", "one") });
        QVERIFY(!two.believed());
        two.add({ said("9520123456788", "EAN-13", "two") });
        QVERIFY(two.believed());

        Ballot three;
        for (int look = 0; look < 2; ++look) {
            three.add({ said("9520123456788", "EAN-13", "one") });
            QVERIFY(!three.believed());
        }
        three.add({ said("9520123456788", "EAN-13", "one") });
        QVERIFY(three.believed());
    }

    void weakBarCode_wantsTwoEnginesInTwoLooks()
    {
        for (const char* format : { "EAN-8", "UPC-E", "ITF" }) {
            Ballot ballot;
            for (int look = 0; look < 5; ++look)
                ballot.add({ said("95212340", format, "one") });
            QVERIFY(!ballot.believed());
            ballot.add({ said("95212340", format, "two") });
            QVERIFY(ballot.believed());

            Ballot once;
            once.add({ said("95212340", format, "one"), said("95212340", format, "two") });
            QVERIFY(!once.believed());
        }
    }

    void anotherTextSaidHalfAsOften_holdsItUp()
    {
        Ballot ballot;
        ballot.add({ said("9520123456788", "EAN-13", "one"), said("9520123456788", "EAN-13", "two") });
        QVERIFY(ballot.believed());
        ballot.add({ said("9520123456795", "EAN-13", "one") });
        QVERIFY(!ballot.believed());
        ballot.add({ said("9520123456788", "EAN-13", "one") });
        QVERIFY(ballot.believed());
        QCOMPARE(ballot.believed()->text, std::string("9520123456788"));
    }

    void sameDigitsOfAnotherSymbology_areAnotherWord()
    {
        Ballot ballot;
        ballot.add({ said("95212340", "EAN-8", "one") });
        ballot.add({ said("95212340", "ITF", "two") });
        ballot.add({ said("95212340", "EAN-8", "one") });
        QVERIFY(!ballot.believed());
    }

    void nothingSaid_isNothing() { QVERIFY(!Ballot().believed()); }
};

QTEST_GUILESS_MAIN(BallotTest)
#include "tst_ballot.moc"
