#include <QTest>

#include "scan/sightings.h"

using namespace gw;
using namespace std::chrono_literals;

namespace {

Symbol symbol(std::string text, std::string format = "Data Matrix", std::string symbology = "]d2")
{
    return { std::move(text), std::move(format), std::move(symbology), "test", {} };
}

constexpr Sightings::Time start {};

} // namespace

class SightingsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void heldInView_isNewOnce()
    {
        Sightings sightings;
        int fresh = 0;
        for (int i = 0; i < 300; ++i) // ten seconds, thirty frames in each
            fresh += int(sightings.update({ symbol("A") }, start + i * 33ms).size());
        QCOMPARE(fresh, 1);
    }

    void missedInAFewFrames_isNotNewAgain()
    {
        Sightings sightings;
        QCOMPARE(sightings.update({ symbol("A") }, start).size(), std::size_t(1));
        for (int i = 1; i < 20; ++i)
            QCOMPARE(sightings.update({}, start + i * 33ms).size(), std::size_t(0));
        QCOMPARE(sightings.update({ symbol("A") }, start + 700ms).size(), std::size_t(0));
    }

    void takenAwayAndShownAgain_isNew()
    {
        Sightings sightings;
        sightings.update({ symbol("A") }, start);
        for (int i = 1; i <= 10; ++i)
            sightings.update({}, start + i * 100ms);
        QCOMPARE(sightings.update({ symbol("A") }, start + 1100ms).size(), std::size_t(1));
    }

    void fewFramesInALongTime_areNotAnAbsence()
    {
        Sightings sightings;
        sightings.update({ symbol("A") }, start);
        sightings.update({}, start + 1000ms);
        QCOMPARE(sightings.update({ symbol("A") }, start + 1900ms).size(), std::size_t(0));
    }

    void unseenForTwoSeconds_isNew()
    {
        Sightings sightings;
        sightings.update({ symbol("A") }, start);
        QCOMPARE(sightings.update({ symbol("A") }, start + 2s).size(), std::size_t(1));
    }

    void anotherSymbol_isNewBesideTheFirst()
    {
        Sightings sightings;
        sightings.update({ symbol("A") }, start);
        const auto fresh = sightings.update({ symbol("A"), symbol("B") }, start + 33ms);
        QCOMPARE(fresh.size(), std::size_t(1));
        QCOMPARE(fresh.front().text, std::string("B"));
    }

    void sameTextInAnotherSymbology_isAnotherSymbol()
    {
        Sightings sightings;
        sightings.update({ symbol("0109520123456788") }, start);
        QCOMPARE(sightings.update({ symbol("0109520123456788", "Code 128", "]C1") }, start + 33ms).size(),
            std::size_t(1));
    }

    void sameLabelTwiceInOneFrame_isOneReading()
    {
        Sightings sightings;
        QCOMPARE(sightings.update({ symbol("A"), symbol("A") }, start).size(), std::size_t(1));
    }

    void weakSymbologies_wantASecondLook_data()
    {
        QTest::addColumn<QString>("format");
        QTest::addColumn<int>("looks");
        QTest::newRow("EAN-8") << "EAN-8" << 2;
        QTest::newRow("UPC-E") << "UPC-E" << 2;
        QTest::newRow("ITF") << "ITF" << 2;
        QTest::newRow("EAN-13") << "EAN-13" << 1;
        QTest::newRow("Code 128") << "Code 128" << 1;
        QTest::newRow("QR Code") << "QR Code" << 1;
    }

    void weakSymbologies_wantASecondLook()
    {
        QFETCH(QString, format);
        QFETCH(int, looks);
        Sightings sightings;
        int firstAt = 0;
        for (int i = 1; i <= 4; ++i)
            if (!sightings.update({ symbol("1234", format.toStdString(), "]x") }, start + i * 33ms).empty()
                && firstAt == 0)
                firstAt = i;
        QCOMPARE(firstAt, looks);
    }

    void twoWeakReadingsThatDiffer_confirmNeither()
    {
        Sightings sightings;
        QVERIFY(sightings.update({ symbol("11111111", "EAN-8", "]E4") }, start).empty());
        QVERIFY(sightings.update({ symbol("22222222", "EAN-8", "]E4") }, start + 33ms).empty());
    }

    void forget_makesWhatIsInViewNew()
    {
        Sightings sightings;
        sightings.update({ symbol("A") }, start);
        sightings.forget();
        QCOMPARE(sightings.update({ symbol("A") }, start + 33ms).size(), std::size_t(1));
    }
};

QTEST_APPLESS_MAIN(SightingsTest)
#include "tst_sightings.moc"
