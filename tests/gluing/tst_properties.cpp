#include <QTest>

#include <random>

#include "gluing/questions.h"

using namespace gw;
using namespace gw::test;

/// What must hold whatever is asked: questions drawn at random, the same ones every time.
class TestProperties : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void sayingLess_neverMakesItAGo();
    void moreStock_neverMakesItWorse();
    void use_takesOnlyGoodStockAndNoMoreThanIsThere();
    void go_meansNoStopAndNothingUnknownThatCouldStop();
    void morePieces_neverMakeItAGo();
};

namespace {

constexpr int howMany = 1'500;

class Draw {
public:
    bool chance(double p) { return std::bernoulli_distribution(p)(m_engine); }
    double number(double low, double high) { return std::uniform_real_distribution(low, high)(m_engine); }
    int whole(int low, int high) { return std::uniform_int_distribution(low, high)(m_engine); }

    StockItem stock(double most)
    {
        static constexpr Verdict verdicts[] { Verdict::Good, Verdict::Good, Verdict::Good, Verdict::TestFirst,
            Verdict::NotKnown, Verdict::DoNotUse };
        const auto until
            = chance(0.8) ? std::optional(today + std::chrono::hours { whole(-200, 9000) }) : std::nullopt;
        return item(
            "C" + std::to_string(++m_count), number(0, most), verdicts[whole(0, 5)], until, chance(0.5));
    }

    std::vector<StockItem> shelf(double most)
    {
        std::vector<StockItem> items;
        for (int i = whole(0, 3); i > 0; --i)
            items.push_back(stock(most));
        return items;
    }

    StockCandidate candidate(bool twoParts)
    {
        StockCandidate c = twoParts ? twoPart(shelf(40), shelf(16)) : granules(shelf(30));
        c.name += std::to_string(++m_count);
        c.typical = chance(0.5);
        if (twoParts && chance(0.1)) {
            c.parts.pop_back();
            c.partnerMissing = true;
        }
        return c;
    }

    GlueUpQuestion question()
    {
        const bool twoParts = chance(0.5);
        GlueUpQuestion q = twoParts ? rightLeg() : rightChair();
        q.pieces = whole(1, 3);
        // Mostly right, so that a go is common enough to be lost.
        if (chance(0.3))
            q.air = Celsius { number(5, 40) };
        if (chance(0.3))
            q.wood = Celsius { number(0, 50) };
        if (chance(0.3))
            q.humidity = number(10, 95);
        if (chance(0.3))
            q.woodMoisture = number(3, 18);
        if (chance(0.3))
            q.gapMm = number(0, 0.3);
        q.candidates.clear();
        for (int i = whole(0, 3); i > 0; --i)
            q.candidates.push_back(candidate(twoParts));
        if (chance(0.4))
            q.candidates.push_back(
                twoParts ? twoPart({ item("R", 200) }, { item("S", 90) }) : granules({ item("H", 90) }));
        return q;
    }

    /// The same question with something taken away that was said or known.
    GlueUpQuestion less(GlueUpQuestion q)
    {
        switch (whole(0, 6)) {
        case 0:
            q.air.reset();
            break;
        case 1:
            q.wood.reset();
            break;
        case 2:
            q.humidity.reset();
            break;
        case 3:
            q.woodMoisture.reset();
            break;
        case 4:
            q.gapMm.reset();
            break;
        case 5:
            q.job.areaCm2 = q.job.extra = q.job.fixedLoss = 0;
            break;
        default:
            for (StockCandidate& c : q.candidates) {
                for (StockPart& p : c.parts) {
                    for (StockItem& i : p.items) {
                        if (chance(0.5))
                            i.verdict = Verdict::NotKnown;
                        if (i.goodUntil && *i.goodUntil >= today) // a date that has passed is no date to lose
                            i.goodUntil.reset();
                    }
                }
            }
        }
        return q;
    }

    GlueUpQuestion more(GlueUpQuestion q)
    {
        if (q.candidates.empty() || chance(0.3)) {
            q.candidates.push_back(candidate(q.job.id.text == "leg_shatter"));
            return q;
        }
        StockCandidate& c
            = q.candidates[static_cast<std::size_t>(whole(0, static_cast<int>(q.candidates.size()) - 1))];
        StockPart& p = c.parts[static_cast<std::size_t>(whole(0, static_cast<int>(c.parts.size()) - 1))];
        p.items.push_back(stock(40));
        return q;
    }

private:
    std::mt19937 m_engine { 20260615 };
    int m_count = 0;
};

GlueUpAnswer ask(const GlueUpQuestion& question)
{
    const auto answer = checkGlueUp(question, today);
    if (!answer)
        qFatal("%s", answer.error().sentence.c_str());
    return *answer;
}

/// Something to fix and something to find out are both still in a person's hands.
int rank(GlueUpVerdict verdict)
{
    return verdict == GlueUpVerdict::Go ? 0 : verdict == GlueUpVerdict::Stop ? 2 : 1;
}

} // namespace

void TestProperties::sayingLess_neverMakesItAGo()
{
    Draw draw;
    int wereGo = 0, becameOther = 0, wereOther = 0;
    for (int i = 0; i < howMany; ++i) {
        const GlueUpQuestion q = draw.question();
        GlueUpQuestion less = draw.less(q);
        if (draw.chance(0.5))
            less = draw.less(less);
        const bool wasGo = ask(q).answer == GlueUpVerdict::Go;
        const bool isGo = ask(less).answer == GlueUpVerdict::Go;
        wereGo += wasGo;
        wereOther += !wasGo;
        becameOther += wasGo && !isGo;
        QVERIFY(wasGo || !isGo);
    }
    // The draws must reach both sides, or the property says nothing.
    QVERIFY(wereGo > howMany / 20);
    QVERIFY(wereOther > howMany / 20);
    QVERIFY(becameOther > howMany / 50);
}

void TestProperties::moreStock_neverMakesItWorse()
{
    Draw draw;
    int better = 0;
    for (int i = 0; i < howMany; ++i) {
        const GlueUpQuestion q = draw.question();
        const GlueUpAnswer before = ask(q);
        const GlueUpAnswer after = ask(draw.more(q));
        QVERIFY(rank(after.answer) <= rank(before.answer));
        if (!before.shortBy)
            QVERIFY(!after.shortBy);
        better += rank(after.answer) < rank(before.answer);
    }
    QVERIFY(better > howMany / 50);
}

void TestProperties::use_takesOnlyGoodStockAndNoMoreThanIsThere()
{
    Draw draw;
    int full = 0;
    for (int i = 0; i < howMany; ++i) {
        const GlueUpQuestion q = draw.question();
        const GlueUpAnswer answer = ask(q);
        std::int64_t taken = 0;
        for (const Take& take : answer.use) {
            const StockItem* found = nullptr;
            for (const StockCandidate& c : q.candidates) {
                if (c.name != answer.stockName)
                    continue;
                for (const StockPart& p : c.parts) {
                    for (const StockItem& s : p.items) {
                        if (s.container == take.container)
                            found = &s;
                    }
                }
            }
            QVERIFY(found);
            QCOMPARE(found->verdict, Verdict::Good);
            QVERIFY(take.amount.milli > 0 && take.amount.milli <= found->left.milli);
            taken += take.amount.milli;
        }
        if (answer.answer == GlueUpVerdict::Go) {
            const double wanted
                = static_cast<double>(answer.need.milli) * (q.job.id.text == "leg_shatter" ? 1 : 1 / 2.8);
            QVERIFY(std::abs(static_cast<double>(taken) - wanted) <= 1.01);
            ++full;
        }
    }
    QVERIFY(full > howMany / 20);
}

void TestProperties::go_meansNoStopAndNothingUnknownThatCouldStop()
{
    Draw draw;
    for (int i = 0; i < howMany; ++i) {
        const GlueUpAnswer answer = ask(draw.question());
        bool clean = true;
        for (const Gate& g : answer.gates) {
            QVERIFY(!g.text.empty());
            // An advisory gate is a warning at worst, and warnings alone are a go.
            clean = clean && g.result != GateResult::Stop && (g.advisory || g.result != GateResult::Unknown);
        }
        QCOMPARE(answer.answer == GlueUpVerdict::Go, clean);
        QCOMPARE(answer.firstFix.empty(), clean);
        QVERIFY(!clean || !answer.shortBy);
    }
}

void TestProperties::morePieces_neverMakeItAGo()
{
    Draw draw;
    for (int i = 0; i < howMany; ++i) {
        GlueUpQuestion q = draw.question();
        const bool wasGo = ask(q).answer == GlueUpVerdict::Go;
        ++q.pieces;
        QVERIFY(wasGo || ask(q).answer != GlueUpVerdict::Go);
    }
}

QTEST_APPLESS_MAIN(TestProperties)
#include "tst_properties.moc"
