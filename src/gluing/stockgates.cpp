#include "gluing/stockgates.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

#include "gluing/heldagainst.h"
#include "gluing/sentences.h"
#include "gluing/weighing.h"

namespace gw {

namespace {

struct Option {
    HeldAgainst held;
    StockAnswer answer;
};

/// How far a candidate is from being used. Testing what is there comes before finding out about it, and that
/// before getting more. Adding a container only ever lowers this, which is why more stock never makes the
/// answer worse.
int distance(const StockAnswer& answer)
{
    std::vector<const Gate*> gates { &answer.age, &answer.amount };
    if (answer.partner)
        gates.push_back(&*answer.partner);
    const auto any = [&gates](auto&& condition) {
        return std::any_of(gates.begin(), gates.end(), [&](const Gate* gate) { return condition(*gate); });
    };
    if (any([](const Gate& g) { return g.result == GateResult::Stop && g.fix.empty(); }))
        return 4;
    if (answer.amount.result == GateResult::Stop)
        return 3;
    if (any([](const Gate& g) { return g.result == GateResult::Unknown; }))
        return 2;
    return any([](const Gate& g) { return g.result == GateResult::Stop; }) ? 1 : 0;
}

Moment firstToGoOff(const HeldAgainst& held)
{
    Moment first = Moment::max();
    for (const PartStock& stock : held.parts) {
        if (!stock.good.empty())
            first = std::min(first, stock.good.front()->goodUntil.value_or(Moment::max()));
    }
    return first;
}

/// A typical glue past its life must not hide another that is good, so the typical class comes second.
bool betterThan(const Option& a, const Option& b)
{
    const auto key = [](const Option& option) {
        return std::tuple(distance(option.answer), !option.held.candidate->typical,
            option.held.shortBy().milli, firstToGoOff(option.held), option.held.candidate->name);
    };
    return key(a) < key(b);
}

Option optionOf(const GlueUpQuestion& question, const StockCandidate& candidate, Amount need, Moment now)
{
    Option option { holdAgainst(candidate, need, now), {} };
    StockAnswer& answer = option.answer;
    answer.name = candidate.name;
    if (option.held.isTwoPart())
        answer.partner = partnerGate(option.held);
    answer.age = ageGate(question, option.held, now);
    answer.amount = amountGate(question, option.held);
    if (need.milli <= 0)
        return option;
    if (const Amount shortBy = option.held.shortBy(); shortBy.milli > 0)
        answer.shortBy = shortBy;
    if (candidate.partnerMissing)
        return option;
    for (const PartStock& stock : option.held.parts) {
        const std::vector<Take> takes = takesOf(stock);
        answer.use.insert(answer.use.end(), takes.begin(), takes.end());
        answer.weighOut.push_back(
            { stock.part->name, weighable(need.value() * stock.part->sharePerUnit, stock.part->dimension) });
    }
    if (candidate.waterPerUnit > 0)
        answer.weighOut.push_back(
            { "Cold water", weighable(need.value() * candidate.waterPerUnit, Dimension::Mass) });
    return option;
}

} // namespace

PartState HeldAgainst::worst() const
{
    PartState worst = parts.empty() ? PartState::None : PartState::Covered;
    for (const PartStock& stock : parts)
        worst = std::max(worst, stock.state());
    return worst;
}

Amount HeldAgainst::shortBy() const
{
    if (candidate->partnerMissing || parts.empty())
        return need;
    double missing = 0;
    for (const PartStock& stock : parts)
        missing
            = std::max(missing, std::ceil(static_cast<double>(stock.shortfall()) / stock.part->sharePerUnit));
    return { std::min(need.milli, static_cast<std::int64_t>(missing)), need.dimension };
}

HeldAgainst holdAgainst(const StockCandidate& candidate, Amount need, Moment now)
{
    HeldAgainst held { &candidate, need, {} };
    for (const StockPart& part : candidate.parts)
        held.parts.push_back(sortPart(part, need, now));
    return held;
}

StockAnswer answerFromStock(const GlueUpQuestion& question, Amount need, Moment now)
{
    std::optional<Option> best;
    for (const StockCandidate& candidate : question.candidates) {
        Option option = optionOf(question, candidate, need, now);
        if (!best || betterThan(option, *best))
            best = std::move(option);
    }
    if (best)
        return best->answer;
    // A candidate without parts: the same gates say that nothing is there.
    const std::string& family = question.family.name;
    const StockCandidate nothing { .name = inSentence(family.empty() ? "Material of this kind" : family),
        .typical = true,
        .partnerMissing = false,
        .parts = {},
        .waterPerUnit = 0 };
    StockAnswer answer = optionOf(question, nothing, need, now).answer;
    answer.name.clear();
    return answer;
}

} // namespace gw
