#include "ageing/verdict.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "ageing/clocks.h"
#include "ageing/frosts.h"
#include "ageing/judging.h"
#include "ageing/outlook.h"
#include "ageing/reasons.h"
#include "ageing/wording.h"

namespace gw {

namespace {

constexpr std::array words { std::pair { Verdict::Good, std::string_view("good") },
    std::pair { Verdict::TestFirst, std::string_view("test_first") },
    std::pair { Verdict::NotKnown, std::string_view("not_known") },
    std::pair { Verdict::DoNotUse, std::string_view("do_not_use") } };

Verdict worstOf(const std::vector<Reason>& reasons)
{
    Verdict verdict = Verdict::Good;
    for (const Reason& reason : reasons)
        verdict = worst(verdict, reason.verdict);
    return verdict;
}

void append(std::vector<Reason>& reasons, std::vector<Reason> more)
{
    reasons.insert(reasons.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

Verdict verdictByAge(const AgeCase& item)
{
    return worstOf(ageReasons(item, sealedClock(item), openedClock(item)));
}

struct Grant {
    const BenchTest* test;
    Moment until;
};

/// The one extension: of the first passed test whose time reaches past the moment the age stopped being good.
/// Tests that needed no extension leave it to a later one. asked says whether age is no longer good at some
/// moment up to asOf.
template <class Asked> std::optional<Grant> grantOf(const AgeCase& item, Asked asked)
{
    const Days length = grantLength(item.figures);
    if (!(length > Days { 0 }))
        return std::nullopt;
    for (const BenchTest& test : item.history.tests) {
        if (test.at > item.asOf || !test.passed || test.grainyAfterFrost)
            continue;
        const Grant grant { &test, later(test.at, length) };
        if (asked(grant.until))
            return grant;
    }
    return std::nullopt;
}

std::optional<Grant> grantUsed(const AgeCase& item)
{
    return grantOf(item, [&](Moment until) {
        const AgeCase then(
            item.history, item.figures, item.climate, std::min(until, item.asOf), Wording::None);
        return verdictByAge(then) != Verdict::Good;
    });
}

const Reason& worstReason(const std::vector<Reason>& reasons)
{
    return *std::max_element(reasons.begin(), reasons.end(),
        [](const Reason& a, const Reason& b) { return a.verdict < b.verdict; });
}

/// Puts the bench test's one extension over age reasons that are not good.
std::optional<Limit> applyGrant(const AgeCase& item, std::vector<Reason>& reasons)
{
    const auto grant = grantUsed(item);
    if (!grant) {
        if (const BenchTest* passed = item.lastPassed(); passed && grantLength(item.figures) <= Days { 0 })
            reasons.push_back({ "bench_test_passed", Verdict::Good, item.said([&] {
                                   return testWords(*passed)
                                       + ", which extends nothing, as no life is known to extend.";
                               }),
                passed->at });
        return std::nullopt;
    }
    if (item.asOf <= grant->until) {
        const std::string otherwise = worstReason(reasons).text;
        reasons.assign(1,
            { "bench_test_passed", Verdict::Good, item.said([&] {
                 return testWords(*grant->test)
                     + ", which extends it once. Without the test: " + uncapitalised(otherwise);
             }),
                grant->test->at });
        return Limit { grant->until, "bench_test_passed" };
    }
    if (item.wording == Wording::None)
        return std::nullopt;
    const std::string usedUp = " The one extension a bench test gives, after " + onDay(grant->test->at)
        + ", was used up on " + onDay(grant->until) + '.';
    for (Reason& reason : reasons) {
        if (reason.verdict == worstReason(reasons).verdict) {
            reason.text += usedUp;
            break;
        }
    }
    return std::nullopt;
}

/// While age is good: when it stops, a test already passed included.
std::optional<Limit> goodAgeLimit(
    const AgeCase& item, const Clock& sealed, const Clock& opened, std::vector<Reason>& reasons)
{
    auto limit = ageLimit(item, sealed, opened);
    if (!limit)
        return limit;
    const Moment ends = limit->at;
    if (const auto grant = grantOf(item, [&](Moment until) { return until > ends; })) {
        limit = Limit { grant->until, "bench_test_passed" };
        reasons.push_back({ limit->code, Verdict::Good, item.said([&] {
                               return testWords(*grant->test) + ", which extends it once, past " + onDay(ends)
                                   + '.';
                           }),
            grant->test->at });
    }
    return limit;
}

std::string coldOrHeatToCome(const AgeCase& item, const Limit& limit)
{
    const auto usual = item.climate.usual(item.placeNow(), limit.at);
    if (!usual)
        return "from then on the temperature where it stands is not known.";
    if (limit.code == "too_hot")
        return "from then on it may be as warm as " + formatTemperature(usual->high) + " where it stands.";
    return "from then on it may be as cold as " + formatTemperature(usual->low) + " where it stands.";
}

/// Puts what ends the good verdict first, with its date.
void sayUntil(const AgeCase& item, const Limit& limit, std::vector<Reason>& reasons)
{
    const std::string until = item.said([&] { return "Good until " + onDay(limit.at) + ": "; });
    const auto speaks = std::find_if(
        reasons.begin(), reasons.end(), [&](const Reason& reason) { return reason.code == limit.code; });
    if (speaks == reasons.end()) {
        reasons.insert(reasons.begin(),
            { limit.code, Verdict::Good, item.said([&] { return until + coldOrHeatToCome(item, limit); }),
                limit.at });
        return;
    }
    if (item.wording == Wording::Full) {
        if (limit.code == "printed_date" && limit.at < endOf(*item.history.printed))
            speaks->text += " Warmth where it stands may bring that forward.";
        speaks->text = until + uncapitalised(std::move(speaks->text));
    }
    std::rotate(reasons.begin(), speaks, std::next(speaks));
}

} // namespace

Days grantLength(const LifeFigures& figures)
{
    const Life& life = figures.opened.kind == Life::Kind::Ages ? figures.opened : figures.sealed;
    return life.kind == Life::Kind::Ages ? figures.testGrant * life.span.low : Days { 0 };
}

Verdict worst(Verdict a, Verdict b) { return std::max(a, b); }

std::string_view word(Verdict verdict)
{
    for (const auto& [known, text] : words) {
        if (known == verdict)
            return text;
    }
    return "not_known";
}

std::optional<Verdict> verdictOfWord(std::string_view text)
{
    for (const auto& [verdict, known] : words) {
        if (known == text)
            return verdict;
    }
    return std::nullopt;
}

Judgement judge(
    const History& history, const LifeFigures& figures, const Climate& climate, Moment asOf, Wording wording)
{
    return judge(AgeCase(history, figures, climate, asOf, wording));
}

Judgement judge(const AgeCase& item)
{
    const Clock sealed = sealedClock(item);
    const Clock opened = openedClock(item);

    std::vector<Reason> byAge = ageReasons(item, sealed, opened);
    const std::optional<Limit> ageEnds = worstOf(byAge) == Verdict::Good
        ? goodAgeLimit(item, sealed, opened, byAge)
        : applyGrant(item, byAge);

    Judgement judgement;
    judgement.sealed = sealed.use();
    judgement.opened = opened.use();
    judgement.reasons = standingReasons(item);
    append(judgement.reasons, std::move(byAge));
    Frosts frosts = frostsOf(item, ChillEnd::FrozenOnly);
    append(judgement.reasons, weatherReasons(item, frosts));
    judgement.frostEvents = frosts.count();
    judgement.frozenNow = frosts.frozenNow;
    judgement.frosts = std::move(frosts.events);
    judgement.verdict = worstOf(judgement.reasons);
    std::stable_sort(judgement.reasons.begin(), judgement.reasons.end(),
        [](const Reason& a, const Reason& b) { return a.verdict > b.verdict; });

    if (judgement.verdict == Verdict::Good) {
        if (const auto limit = earlier(ageEnds, weatherLimit(item))) {
            judgement.goodUntil = limit->at;
            sayUntil(item, *limit, judgement.reasons);
        }
    }
    return judgement;
}

std::optional<Moment> goodUntilIfOpened(
    const History& history, const LifeFigures& figures, const Climate& climate, Moment openedAt)
{
    History opened = history;
    if (!opened.opened || openedAt < *opened.opened)
        opened.opened = openedAt;
    return judge(opened, figures, climate, openedAt, Wording::None).goodUntil;
}

} // namespace gw
