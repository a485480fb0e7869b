#include <array>

#include <QtTest>

#include "ageing/firstlook.h"
#include "ageing/randomshop.h"

using namespace gw;
using namespace gw::test;

class TestFirstLook : public QObject {
    Q_OBJECT

private Q_SLOTS:
    /// Whatever it answers, judge() answers; and of stock without bench tests it answers most.
    void whatItSays_judgeSays()
    {
        std::size_t asked = 0;
        std::size_t answered = 0;
        std::array<int, 4> seen {};
        for (unsigned seed = 0; seed < 150; ++seed) {
            RandomShop shop(seed);
            Moment since = shop.now;
            for (const auto& stock : shop.containers)
                since = std::min(since, stock.history.stays.front().from);
            FirstLook look(*shop.climate, since, shop.now);
            for (std::size_t i = 0; i < shop.containers.size(); ++i) {
                const auto& [history, figures] = shop.containers[i];
                const AgeCase item(history, *figures, *shop.climate, shop.now, Wording::None);
                const auto said = look.look(item);
                asked += history.tests.empty() && !history.foundUndated ? 1 : 0;
                if (!said)
                    continue;
                answered += history.tests.empty() ? 1 : 0;
                const Verdict fresh = judge(history, *figures, *shop.climate, shop.now).verdict;
                QVERIFY2(said->verdict == fresh,
                    qPrintable(QStringLiteral("shop %1, container %2: %3, but judge() %4")
                            .arg(seed)
                            .arg(i)
                            .arg(QString::fromStdString(words(said->verdict)),
                                QString::fromStdString(words(fresh)))));
                ++seen[static_cast<std::size_t>(fresh)];
            }
        }
        for (const int count : seen)
            QVERIFY(count > static_cast<int>(answered / 50));
        QVERIFY2(answered > asked / 2, qPrintable(QStringLiteral("%1 of %2").arg(answered).arg(asked)));
    }

    /// Round a limit, minute by minute: where the bounds are not enough it says nothing.
    void nearALimit_itNeverErrs()
    {
        Weathermaker weather { std::mt19937(5) };
        std::map<PlaceId, WatchedPlace> places;
        places[bench].readings = Trace(weather.readings(start, 120));
        places[bench].assumed.year = Range<Celsius> { { 10 }, { 30 } };
        LifeFigures figures = plainFigures();
        figures.sealed = { Life::Kind::Ages, { Days { 40 }, Days { 60 } } };
        const WatchedClimate climate(std::move(places), { figures.rate });
        History history = fresh();
        history.made = dateOf(start);
        history.arrived = start;
        history.stays = { { bench, start } };
        std::optional<Verdict> before;
        int unanswered = 0;
        int changes = 0;
        for (Moment now = after(start, 20); now < after(start, 80); now += 30min) {
            FirstLook look(climate, start, now);
            const Verdict fresh = judge(history, figures, climate, now).verdict;
            const auto said = look.look(AgeCase(history, figures, climate, now, Wording::None));
            QVERIFY(!said || said->verdict == fresh);
            unanswered += said ? 0 : 1;
            changes += before && *before != fresh ? 1 : 0;
            before = fresh;
        }
        QCOMPARE(changes, 2);
        QVERIFY2(unanswered > 0 && unanswered < 200, qPrintable(QString::number(unanswered)));
    }

    void whatIsNotItsToSay_isNotAnswered()
    {
        const WatchedClimate climate = shopClimate();
        const LifeFigures figures = plainFigures();
        const Moment now = after(fresh().arrived, 30);
        FirstLook look(climate, fresh().arrived, now);
        const auto said = [&](const History& history) {
            return look.look(AgeCase(history, figures, climate, now, Wording::None)).has_value();
        };
        QVERIFY(said(fresh()));
        History history = fresh();
        history.stays = { { nowhere, history.arrived } };
        QVERIFY2(!said(history), "a place nothing is known of");
        history = fresh();
        history.stays.clear();
        QVERIFY2(!said(history), "no place on record");
        history = fresh();
        history.stays.front().from = after(history.arrived, -1);
        QVERIFY2(!said(history), "here before the first looked at");
        history = fresh();
        history.tests = { { after(history.arrived, 1), true, {}, false } };
        QVERIFY2(!said(history), "a passed bench test");
        history = fresh();
        history.foundUndated = true;
        QVERIFY2(!said(history), "found without a date");
    }
};

QTEST_APPLESS_MAIN(TestFirstLook)
#include "tst_firstlook.moc"
