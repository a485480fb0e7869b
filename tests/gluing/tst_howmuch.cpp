#include <QTest>

#include "gluing/howmuch.h"

using namespace gw;

/// From typed joints to grams on one pot.
class TestHowMuch : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void joints_areReadAsTheyAreTyped_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("count");
        QTest::addColumn<QString>("words");
        QTest::newRow("plain") << QStringLiteral("8 tenon 30x40x10") << 8
                               << QStringLiteral("8 x tenon 30 x 40 x 10 mm");
        QTest::newRow("with x") << QStringLiteral(" 6 x Dowels 16 x 22 mm") << 6
                                << QStringLiteral("6 x dowel 16 x 22 mm");
        QTest::newRow("one") << QStringLiteral("edge 900x22") << 1 << QStringLiteral("edge 900 x 22 mm");
        QTest::newRow("comma") << QStringLiteral("2 round 9,5x25") << 2
                               << QStringLiteral("2 x dowel 9.5 x 25 mm");
    }
    void joints_areReadAsTheyAreTyped()
    {
        QFETCH(QString, text);
        QFETCH(int, count);
        QFETCH(QString, words);
        const auto work = parseJointWork(text.toStdString());
        QVERIFY(work);
        QCOMPARE(work->count, count);
        QCOMPARE(QString::fromStdString(work->words()), words);
    }

    void whatIsNoJoint_isRefused_data()
    {
        QTest::addColumn<QString>("text");
        for (const char* text : { "", "8", "tenon", "tenon 30x40", "0 tenon 30x40x10", "tenon 30x40x0",
                 "tenon -1x2x3", "break 45x200x9", "scarf 10x20", "edge 900x22x", "99999999 edge 1x1",
                 "edge 900*22", "face 20000x2" })
            QTest::newRow(text) << QString::fromLatin1(text);
    }
    void whatIsNoJoint_isRefused()
    {
        QFETCH(QString, text);
        const auto work = parseJointWork(text.toStdString());
        QVERIFY(!work);
        QVERIFY2(work.error().sentence.ends_with('.'), work.error().sentence.c_str());
    }

    void onePot_losesOnce()
    {
        const PotWork chair { "Chair", 492.8, 350, 0.3, 0, 1 };
        const PotWork drawer { "Drawer", 257.8, 350, 0.3, 0, 1 };
        const auto together = needOnOnePot({ chair, drawer }, 15);
        const double alone = needOnOnePot({ chair }, 15)->whole + needOnOnePot({ drawer }, 15)->whole;
        QVERIFY(std::abs(together->whole - (alone - 15)) < 1e-9);
        QVERIFY(std::abs(together->saved - 15) < 1e-9);
        double shares = 0;
        for (const PotShare& share : together->shares) {
            QVERIFY(share.whole < share.alone);
            shares += share.whole;
        }
        QVERIFY(std::abs(shares - together->whole) < 1e-9);
        QVERIFY(!together->fixedIsMost);
    }

    // usage figures of common practice: 1.4 g reach a 50 x 80 mm patch out of 17 g from a hot pot.
    void aPatch_leavesMostInThePot()
    {
        const auto need = needOnOnePot({ { "Patch", 40, 350, 0.3, 0, 1 } }, 15);
        QVERIFY(need->fixedIsMost);
        QVERIFY(std::abs(need->net - 1.4) < 1e-9);
    }

    void noWorkAndNoPieces_areRefused()
    {
        QVERIFY(!needOnOnePot({}, 15));
        QVERIFY(!needOnOnePot({ { "Chair", 492.8, 350, 0.3, 0, 0 } }, 15));
        QVERIFY(!needOnOnePot({ { "Nothing", 0, 350, 0.3, 0, 1 } }, 15));
    }
};

QTEST_APPLESS_MAIN(TestHowMuch)
#include "tst_howmuch.moc"
