// Mixing, the pots and their alarms as the screens drive them, on a real store with the demonstration shop.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTest>

#include "app/mixcontroller.h"
#include "app/potalarms.h"
#include "app/potscontroller.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;
using namespace std::chrono_literals;

namespace {

struct Screens {
    explicit Screens(AppBench::Stock stock = AppBench::Stock::Demo)
        : bench(stock)
    {
        pots.setServices(&bench.services);
        mix.setServices(&bench.services);
        mix.look();
        [this] { QTRY_VERIFY(pots.loaded() && !mix.recipes().isEmpty()); }();
    }

    void choose(const QString& recipe, const QString& need)
    {
        mix.setRecipe(static_cast<int>(mix.recipes().indexOf(recipe)));
        mix.setProperty("need", need);
        settle();
    }
    void settle()
    {
        QTest::qWait(200); // the pause while a person types
        [this] { QTRY_VERIFY(!mix.busy()); }();
    }
    /// Mixes 50 g of hot glue and answers the key of its row.
    QString potOfGlue()
    {
        choose(u"Hot hide glue"_s, u"50"_s);
        mix.record();
        [this] { QTRY_COMPARE(pots.pots()->count(), 1); }();
        return pots.pots()->rows().front().key;
    }
    void pass(std::chrono::minutes minutes)
    {
        bench.now += minutes;
        bench.clock.look();
    }
    QVariant value(const QString& pot, const QByteArray& role) { return pots.pots()->value(pot, role); }
    QStringList acts(const QString& pot) { return value(pot, "acts").toStringList(); }

    AppBench bench;
    PotsController pots;
    MixController mix;
};

} // namespace

class PotsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // Worked example of the trade: 50 g at 1.8 : 1 is 17.9 g dry and 32.1 g of water.
    void mix_saysWhatToWeigh_andRecordsItInOneTap()
    {
        Screens screens;
        const QAbstractItemModelTester tester(screens.mix.parts());
        screens.choose(u"Hot hide glue"_s, u"50 g"_s);
        QVERIFY(screens.mix.canRecord());
        QCOMPARE(screens.mix.parts()->count(), 2);
        QVERIFY(screens.mix.parts()->value(u"granules"_s, "amount").toString().startsWith(u"17.9"));
        QVERIFY(screens.mix.parts()->value(u"granules"_s, "from").toString().contains(u"from "));
        QVERIFY(!screens.mix.steps().isEmpty() && !screens.mix.limits().isEmpty());
        screens.mix.setProperty("who", u"A. Tester"_s);
        QSignalSpy said(&screens.bench.services, &AppServices::said);
        screens.mix.record();
        QTRY_COMPARE(screens.pots.pots()->count(), 1);
        QCOMPARE(screens.pots.standing(), 1);
        QVERIFY(screens.value(screens.pots.pots()->rows().front().key, "parts")
                .toString()
                .contains(u"A. Tester"));
        // It is kept for the next mix, and the bar at the foot takes the whole back.
        QCOMPARE(screens.bench.settings.who(), u"A. Tester"_s);
        QTRY_COMPARE(said.count(), 1);
        screens.bench.services.undo(said.front().at(1).toString());
        QTRY_COMPARE(screens.pots.pots()->count(), 0);
    }

    void whatCannotBeMixed_isTold_andNotRecorded_data()
    {
        QTest::addColumn<QString>("recipe");
        QTest::addColumn<QString>("need");
        QTest::addColumn<QString>("ratio");
        QTest::newRow("3 mg") << u"Hot hide glue"_s << u"3 mg"_s << QString();
        QTest::newRow("no amount") << u"Hot hide glue"_s << u"much"_s << QString();
        QTest::newRow("0:1") << u"Epoxy, unfilled"_s << u"30"_s << u"0:1"_s;
        QTest::newRow("no ratio") << u"Epoxy, unfilled"_s << u"30"_s << u"two to one"_s;
    }
    void whatCannotBeMixed_isTold_andNotRecorded()
    {
        QFETCH(QString, recipe);
        QFETCH(QString, need);
        QFETCH(QString, ratio);
        Screens screens;
        screens.mix.setProperty("massRatio", ratio);
        screens.choose(recipe, need);
        QVERIFY(screens.mix.problem().size() > 20);
        QVERIFY(!screens.mix.canRecord());
        QCOMPARE(screens.mix.parts()->count(), 0);
        screens.mix.record();
        screens.settle();
        QCOMPARE(screens.pots.pots()->count(), 0);
        // More than there is: what to weigh is told, but it cannot be recorded.
        screens.mix.setProperty("massRatio", QString());
        screens.choose(u"Hot hide glue"_s, u"40 kg"_s);
        QCOMPARE(screens.mix.parts()->count(), 2);
        QVERIFY(!screens.mix.canRecord());
    }

    void aPot_offersWhatMayBeNoted()
    {
        Screens screens;
        const QAbstractItemModelTester tester(screens.pots.pots());
        const QString pot = screens.potOfGlue();
        QCOMPARE(screens.acts(pot).first(), u"soaked"_s);
        QVERIFY(!screens.value(pot, "hot").toBool());
        screens.pass(90min);
        screens.pots.noteTemperature(pot, u"heat_on"_s, 60);
        QTRY_VERIFY(screens.value(pot, "hot").toBool());
        QVERIFY(screens.acts(pot).contains(u"heat_off"_s));
        screens.pass(120min);
        QTRY_VERIFY(screens.value(pot, "heat").toString().contains(u"2 hours at 60"));
        QCOMPARE(screens.value(pot, "band").toString(), u"good"_s);
        QVERIFY(screens.value(pot, "standing").toString().contains(u"2 h"));
        screens.pots.noteAmount(pot, u"used"_s, u"20"_s, u"g"_s);
        QTRY_VERIFY(screens.value(pot, "amount").toString().startsWith(u"30"));
        QVERIFY(!screens.value(pot, "joints").toStringList().isEmpty());
        screens.pots.noteAmount(pot, u"used"_s, u"31"_s, u"g"_s); // more than is left
        QTRY_VERIFY(screens.pots.errorText().contains(u"only"));
        screens.pots.clearError();
        screens.pots.noteAmount(pot, u"weighed"_s, u"heavy"_s, u"g"_s);
        QVERIFY(screens.pots.errorText().size() > 10);
        // Used up: the joint is watched on until its full load, then the pot is gone.
        screens.pots.note(pot, u"used_up"_s);
        QTRY_COMPARE(screens.pots.standing(), 0);
        QCOMPARE(screens.pots.pots()->count(), 1);
        screens.pass(25h);
        QTRY_COMPARE(screens.pots.pots()->count(), 0);
    }

    void alarms_ringOnce_andStayAwayWhenPutAway()
    {
        Screens screens;
        screens.potOfGlue();
        PotAlarms alarms;
        QSignalSpy rang(&alarms, &PotAlarms::rang);
        QSignalSpy told(&alarms, &PotAlarms::told);
        alarms.setServices(&screens.bench.services);
        QTRY_COMPARE(told.count(), 1);
        QVERIFY(alarms.text().isEmpty());
        screens.pass(31min); // fine granules soak from half an hour
        QTRY_COMPARE(rang.count(), 1);
        QVERIFY(alarms.text().contains(u"Soaked"));
        screens.pass(1min);
        QTRY_COMPARE(told.count(), 3);
        QCOMPARE(rang.count(), 1); // told before
        alarms.putAway();
        QVERIFY(alarms.text().isEmpty());
        screens.pass(1min);
        QTRY_COMPARE(told.count(), 5);
        QVERIFY(alarms.text().isEmpty());
        // The program begins anew: put away is put away.
        PotAlarms later;
        QSignalSpy laterTold(&later, &PotAlarms::told);
        later.setServices(&screens.bench.services);
        QTRY_COMPARE(laterTold.count(), 1);
        QVERIFY(later.text().isEmpty());
    }

    // Closed, or asleep, while the cup went off: it is told as soon as the program looks again.
    void alarms_tellWhatFellDueMeanwhile()
    {
        Screens screens;
        screens.mix.setProperty("potLife", u"25"_s);
        screens.mix.room()->type(u"25"_s);
        screens.choose(u"Epoxy, unfilled"_s, u"30"_s);
        screens.mix.record();
        QTRY_COMPARE(screens.pots.pots()->count(), 1);
        screens.bench.now += 3h;
        PotAlarms alarms;
        QSignalSpy rang(&alarms, &PotAlarms::rang);
        alarms.setServices(&screens.bench.services);
        QTRY_COMPARE(rang.count(), 1);
        QVERIFY(alarms.text().contains(u"cup"));
        QTRY_COMPARE(
            screens.pots.pots()->value(screens.pots.pots()->rows().front().key, "verdict").toString(),
            u"good"_s); // as it was looked at last
        screens.bench.clock.look();
        QTRY_COMPARE(
            screens.pots.pots()->value(screens.pots.pots()->rows().front().key, "verdict").toString(),
            u"do_not_use"_s);
    }
};

QTEST_MAIN(PotsTest)
#include "tst_pots.moc"
