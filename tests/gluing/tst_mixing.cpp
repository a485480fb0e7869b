#include <cmath>

#include <QTest>

#include "gluing/mixing.h"
#include "gluing/recipebook.h"

using namespace gw;
using gw::test::shippedRecipe;

/// What a batch refuses, what it warns of, and that its sizes add up.
class TestMixing : public QObject {
    Q_OBJECT

private:
    static Recipe hide() { return shippedRecipe(QStringLiteral("hot_hide")); }
    static Recipe epoxy()
    {
        return shippedRecipe(QStringLiteral("epoxy_thick"), QStringLiteral("epoxy_neat"));
    }

    static void refused(const auto& plan)
    {
        QVERIFY(!plan);
        QCOMPARE(plan.error().code, ErrorCode::BadInput);
        QVERIFY2(plan.error().sentence.size() > 20 && plan.error().sentence.ends_with('.'),
            plan.error().sentence.c_str());
    }

    static void stepsAreFilled(const MixPlan& plan)
    {
        QVERIFY(!plan.steps.empty());
        for (const std::string& step : plan.steps)
            QVERIFY2(step.find('{') == std::string::npos, step.c_str());
    }

private Q_SLOTS:
    void everyRecipe_fillsItsSteps_andAddsUp()
    {
        const auto sum = [](const MixPlan& plan) {
            double all = 0;
            for (const MixPart& part : plan.parts)
                all += part.amount.value();
            return all;
        };
        const auto glue = mixHideGlue({ grams(80) }, hide());
        QVERIFY(glue && std::abs(sum(*glue) - 80) < 0.11);
        stepsAreFilled(*glue);
        HideGlueWish thin { grams(80) };
        thin.extraWater = 0.5;
        const auto syringe = mixHideGlue(
            thin, shippedRecipe(QStringLiteral("hot_hide_syringe"), QStringLiteral("hot_hide")));
        QVERIFY(syringe && std::abs(sum(*syringe) - 80) < 0.16);
        QVERIFY(syringe->part("hot_water"));
        stepsAreFilled(*syringe);
        for (const char* id : { "casein", "uf" }) {
            const Recipe recipe = shippedRecipe(QString::fromLatin1(id));
            const auto powder
                = id[0] == 'c' ? mixCasein({ grams(80) }, recipe) : mixUreaResin({ grams(80) }, recipe);
            QVERIFY(powder && std::abs(sum(*powder) - 80) < 0.11);
            stepsAreFilled(*powder);
        }
        stepsAreFilled(*mixShellac({ millilitres(250) }, shippedRecipe(QStringLiteral("shellac"))));
        stepsAreFilled(*mixDye({ millilitres(60) }, shippedRecipe(QStringLiteral("dye_solution"))));
        EpoxyWish wish { grams(80) };
        wish.ratio.hardenerPer100 = 41.3;
        stepsAreFilled(*mixEpoxy(wish, shippedRecipe(QStringLiteral("epoxy_neat"))));
        wish.filler = Filler::WoodFlour;
        wish.dyePercent = 0.3;
        const auto filled = mixEpoxy(wish, epoxy());
        stepsAreFilled(*filled);
        QVERIFY(filled->part("filler") && filled->part("dye"));
    }

    void aStepWithoutItsSize_isLeftOut()
    {
        const auto plain = mixHideGlue({ grams(50) }, hide());
        HideGlueWish slower { grams(50) };
        slower.ureaShare = 0.1;
        const auto withUrea = mixHideGlue(slower, hide());
        QCOMPARE(withUrea->steps.size(), plain->steps.size() + 1);
        QVERIFY(!plain->part("urea") && withUrea->part("urea"));
    }

    void whatCannotBeMixed_isRefused()
    {
        refused(mixHideGlue({ grams(0.003) }, hide())); // 3 mg
        refused(mixHideGlue({ grams(60'000) }, hide()));
        refused(mixHideGlue({ millilitres(50) }, hide()));
        refused(mixHideGlue({ grams(50), 500 }, hide())); // no such grade
        HideGlueWish wish { grams(50) };
        wish.waterRatio = 0.0;
        refused(mixHideGlue(wish, hide()));
        wish.waterRatio = std::nan("");
        refused(mixHideGlue(wish, hide()));
        refused(mixShellac({ millilitres(100), 0 }, shippedRecipe(QStringLiteral("shellac"))));
        refused(mixShellac({ millilitres(100), 40 }, shippedRecipe(QStringLiteral("shellac"))));
        refused(mixDye({ millilitres(100), -1.0 }, shippedRecipe(QStringLiteral("dye_solution"))));
        refused(mixCasein({ grams(50), 9.0 }, shippedRecipe(QStringLiteral("casein"))));
    }

    void ratiosThatCannotBe_areRefused()
    {
        const Recipe recipe = epoxy();
        EpoxyWish wish { grams(50) };
        refused(mixEpoxy(wish, recipe)); // none said
        wish.ratio = { "", {}, 0, 1, { 1.15 }, { 0.95 } }; // 0 : 1
        refused(mixEpoxy(wish, recipe));
        wish.ratio = { "", {}, 2, 1, { 0 }, { 0 } }; // volumes without densities
        refused(mixEpoxy(wish, recipe));
        wish.ratio = { "", 0.0, 0, 0, { 0 }, { 0 } };
        refused(mixEpoxy(wish, recipe));
    }

    void dyeOverItsCeiling_isRefused_andOverTheUsualWarned()
    {
        EpoxyWish wish { grams(50) };
        wish.ratio.hardenerPer100 = 41.3;
        wish.dyePercent = 3;
        refused(mixEpoxy(wish, epoxy()));
        wish.dyePercent = 1.5;
        const auto much = mixEpoxy(wish, epoxy());
        QVERIFY(much);
        wish.dyePercent = 0.3;
        QCOMPARE(mixEpoxy(wish, epoxy())->warnings.size() + 1, much->warnings.size());
        wish.alcohol = 1;
        refused(mixEpoxy(wish, epoxy()));
    }

    void tooLittleForTheScale_isWarnedOf()
    {
        EpoxyWish wish { grams(10) };
        wish.ratio.hardenerPer100 = 41.3;
        wish.potLifeMinutes = 25;
        const auto coarse = mixEpoxy(wish, epoxy());
        wish.scaleStep = 0.01;
        const auto fine = mixEpoxy(wish, epoxy());
        QCOMPARE(coarse->warnings.size(), fine->warnings.size() + 1);
    }

    void moreThanACup_isSplit()
    {
        EpoxyWish wish { grams(250) };
        wish.ratio.hardenerPer100 = 41.3;
        const auto plan = mixEpoxy(wish, epoxy());
        QVERIFY(std::any_of(plan->warnings.begin(), plan->warnings.end(),
            [](const std::string& w) { return w.find("3 cups") != std::string::npos; }));
    }

    void warmerOrMore_neverLastsLonger()
    {
        const Recipe recipe = epoxy();
        double before = 1e9;
        for (const double t : { 5.0, 15.0, 25.0, 35.0 }) {
            double middle = 0;
            const auto life = potLifeMinutes({ 25 }, 100, { t }, recipe, &middle);
            QVERIFY(life && life->low <= middle && middle <= life->high && middle < before);
            before = middle;
        }
        double small = 0, large = 0;
        QVERIFY(potLifeMinutes({ 25 }, 25, { 25 }, recipe, &small));
        QVERIFY(potLifeMinutes({ 25 }, 400, { 25 }, recipe, &large));
        QVERIFY(small > large);
        refused(potLifeMinutes({ 0 }, 100, { 25 }, recipe));
    }

    void thinningBackAndForth_keepsTheFlakes()
    {
        const Recipe recipe = shippedRecipe(QStringLiteral("shellac"));
        const auto thinner = thinShellac({ millilitres(300), 2, 1 }, recipe);
        const auto thicker = thinShellac({ millilitres(300), 1, 2 }, recipe);
        QVERIFY(thinner->part("alcohol") && !thinner->part("flakes"));
        QVERIFY(thicker->part("flakes") && !thicker->part("alcohol"));
        QVERIFY(thinShellac({ millilitres(300), 2, 2 }, recipe)->parts.empty());
    }
};

QTEST_APPLESS_MAIN(TestMixing)
#include "tst_mixing.moc"
