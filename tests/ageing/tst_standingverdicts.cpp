#include <algorithm>
#include <array>

#include <QtTest>

#include "ageing/randomshop.h"

using namespace gw;
using namespace gw::test;

class TestStandingVerdicts : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void whateverHappens_answersAsAFreshJudge()
    {
        std::size_t asked = 0;
        std::size_t judged = 0;
        std::size_t changes = 0;
        std::array<int, 4> seen {};
        for (unsigned seed = 0; seed < 60; ++seed) {
            RandomShop shop(seed);
            StandingVerdicts kept;
            for (std::size_t i = 0; i < shop.containers.size(); ++i)
                kept.put(i, shop.containers[i].history, shop.containers[i].figures);
            std::vector<Verdict> before;
            for (int step = 0; step < 60; ++step) {
                const auto verdicts = kept.asOf(*shop.climate, shop.now);
                QCOMPARE(verdicts.size(), shop.containers.size());
                for (std::size_t i = 0; i < verdicts.size(); ++i) {
                    const auto& [history, figures] = shop.containers[i];
                    const Verdict fresh = judge(history, *figures, *shop.climate, shop.now).verdict;
                    QVERIFY2(verdicts[i] == fresh,
                        qPrintable(QStringLiteral("shop %1, step %2, container %3: %4, but fresh %5")
                                .arg(seed)
                                .arg(step)
                                .arg(i)
                                .arg(QString::fromStdString(words(verdicts[i])),
                                    QString::fromStdString(words(fresh)))));
                    ++seen[static_cast<std::size_t>(fresh)];
                    changes += i < before.size() && before[i] != fresh ? 1 : 0;
                }
                asked += verdicts.size();
                judged += kept.judgedLast();
                before = verdicts;
                shop.somethingHappens(kept);
            }
        }
        // The shops are no quiet ones, and still most verdicts are kept.
        for (const int count : seen)
            QVERIFY(count > static_cast<int>(asked / 50));
        QVERIFY2(changes > 500, qPrintable(QString::number(changes)));
        QVERIFY2(judged < asked / 2, qPrintable(QStringLiteral("%1 of %2").arg(judged).arg(asked)));
    }

    void aUse_judgesOneContainer()
    {
        RandomShop shop(3);
        StandingVerdicts kept;
        for (std::size_t i = 0; i < shop.containers.size(); ++i)
            kept.put(i, shop.containers[i].history, shop.containers[i].figures);
        kept.asOf(*shop.climate, shop.now);
        QCOMPARE(kept.judgedLast(), shop.containers.size());
        kept.put(7, shop.containers[7].history, shop.containers[7].figures);
        kept.asOf(*shop.climate, shop.now);
        QVERIFY(kept.judgedLast() < shop.containers.size() / 2);
    }

    void anotherClimate_isJudgedAnew()
    {
        StandingVerdicts kept;
        LifeFigures figures = plainFigures();
        kept.put(0, fresh(), std::make_shared<LifeFigures>(figures));
        const Moment then = after(fresh().arrived, 350);
        const WatchedClimate cool = assumedClimate({ { steady, { { 15 }, { 20 } } } });
        const WatchedClimate hot = assumedClimate({ { steady, { { 35 }, { 40 } } } });
        QCOMPARE(kept.asOf(cool, then).front(), Verdict::Good);
        QCOMPARE(kept.asOf(hot, then).front(), Verdict::DoNotUse);
        QCOMPARE(kept.asOf(cool, then).front(), Verdict::Good);
    }
};

QTEST_APPLESS_MAIN(TestStandingVerdicts)
#include "tst_standingverdicts.moc"
