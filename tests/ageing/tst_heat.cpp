#include <QTest>

#include "ageing/stock.h"
#include "ageing/watched.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

const Moment start = at("2025-07-01");
const PlaceId sill { "sill" };

/// Hourly readings of 20 C for ten days; on the third from 10 to 20 o'clock a peak, so high at 15 o'clock.
Trace sunny(double peak)
{
    std::vector<Reading> readings;
    for (int hour = 0; hour <= 240; ++hour) {
        const double share = std::max(0.0, 1 - std::abs(hour - 63) / 5.0);
        readings.push_back({ start + hour * 1h, { 20 + share * (peak - 20) }, {} });
    }
    return Trace(std::move(readings));
}

WatchedClimate climate(double peak, std::optional<Range<Celsius>> assumed = {})
{
    return WatchedClimate({ { sill, { sunny(peak), { assumed, {} }, {} } } });
}

/// Whether heat that was speaks, not heat to come.
bool saysHot(const Judgement& judgement)
{
    const Reason* heat = reason(judgement, "too_hot");
    return heat && heat->text.find("keep it between") != std::string::npos;
}

Judgement judged(const Climate& around, double fromDay, double toDay)
{
    History history = fresh();
    history.arrived = after(start, fromDay);
    history.made = dateOf(history.arrived);
    history.stays = { { sill, history.arrived } };
    LifeFigures figures = plainFigures();
    figures.keepBetween = Range<Celsius> { { 5 }, { 30 } };
    return judge(history, figures, around, after(start, toDay));
}

} // namespace

class TestHeat : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void watchedHeat_saysSinceWhenHowLongAndHowFar()
    {
        // From 20 to 40 and back in ten hours: above 30 for five, from 12:30 on.
        const Judgement j = judged(climate(40), 0, 9);
        const Reason* heat = reason(j, "too_hot");
        QVERIFY(heat);
        QCOMPARE(heat->verdict, Verdict::TestFirst);
        QCOMPARE(heat->when, std::optional(start + 60h + 30min));
        QCOMPARE(heat->text,
            std::string("Since 3 July 2025 it has been above 30 °C for 5 hours in all, up to 40 °C; keep it "
                        "between 5 and 30 °C. Test it first."));
    }

    void aLittleHeat_isLeftToTheClock()
    {
        QVERIFY(says(judged(climate(34), 0, 9), "too_hot", Verdict::Good));
        QVERIFY(!saysHot(judged(climate(30), 0, 9)));
    }

    void heatBeforeItCame_isNotItsOwn()
    {
        QVERIFY(!saysHot(judged(climate(40), 4, 9)));
        QVERIFY(!saysHot(judged(climate(40), 0, 2)));
    }

    void unwatchedHeat_isSaidApart()
    {
        const Judgement after_ = judged(climate(40, Range<Celsius> { { 10 }, { 45 } }), 0, 20);
        QVERIFY(
            reason(after_, "too_hot")->text.find("up to 40 °C, and while nobody watched perhaps up to 45 °C;")
            != std::string::npos);
        const Judgement only = judged(climate(20, Range<Celsius> { { 10 }, { 45 } }), 0, 20);
        QVERIFY(
            reason(only, "too_hot")->text.find("it may have been as warm as 45 °C;") != std::string::npos);
        QCOMPARE(reason(only, "too_hot")->when, std::optional(start));
    }

    void watchedMildness_beatsAnAssumedHeat()
    {
        // Nobody need fear what readings show did not happen.
        QVERIFY(!saysHot(judged(climate(28, Range<Celsius> { { 10 }, { 45 } }), 0, 9)));
    }

    void justCome_intoHeat()
    {
        const Judgement j = judged(climate(40), 63.0 / 24, 63.0 / 24);
        QVERIFY(says(j, "too_hot", Verdict::TestFirst));
        QVERIFY(reason(j, "too_hot")->text.find("it has been as warm as 40 °C") != std::string::npos);
    }
};

QTEST_APPLESS_MAIN(TestHeat)
#include "tst_heat.moc"
