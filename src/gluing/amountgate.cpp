#include "gluing/heldagainst.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "gluing/mix.h"
#include "gluing/sentences.h"
#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr double margin = 1.1; // common practice: less than a tenth over leaves nothing for a spill
constexpr double scaleStep = 0.1; // grams, the usual shop scale
constexpr double hardenerTolerance = 0.02; // common practice; 5 % off is still fine, 10 % noticeably softer

bool isPlain(const StockCandidate& candidate)
{
    return candidate.parts.size() == 1 && candidate.waterPerUnit == 0 && candidate.parts[0].sharePerUnit == 1;
}

std::string needText(const HeldAgainst& held, UnitSystem units)
{
    const auto write = [units](std::int64_t milli, Dimension dimension) {
        return formatAmount({ milli, dimension }, units);
    };
    const auto good = [&](const PartStock& stock) {
        return stock.goodLeft == 0 ? "none good" : write(stock.goodLeft, stock.part->dimension) + " good";
    };
    const std::string whole = "Needs " + formatAmount(held.need, units);
    if (held.parts.empty())
        return whole + ", none here.";
    if (isPlain(*held.candidate))
        return whole + ", " + good(held.parts[0]) + " here.";
    std::vector<std::string> each;
    each.reserve(held.parts.size());
    for (const PartStock& stock : held.parts)
        each.push_back(write(stock.wanted, stock.part->dimension) + " of " + stock.part->name + " ("
            + good(stock) + ")");
    return whole + " ready to use: " + listWords(each) + ".";
}

std::string shortFix(const GlueUpQuestion& question, const HeldAgainst& held)
{
    const Amount shortBy = held.shortBy();
    std::string fix = "Short by " + formatAmount(shortBy, question.units);
    if (held.candidate->partnerMissing) {
        fix += " ready to use: get its other half";
    } else if (held.parts.empty() || isPlain(*held.candidate)) {
        fix += ": get more";
    } else {
        std::vector<std::string> more;
        for (const PartStock& stock : held.parts) {
            if (stock.shortfall() > 0)
                more.push_back(formatAmount({ stock.shortfall(), stock.part->dimension }, question.units)
                    + " more of " + stock.part->name);
        }
        fix += " ready to use: get " + listWords(more);
    }
    int enoughFor = question.pieces - 1;
    while (enoughFor > 0 && needFor(question.job, enoughFor).milli > held.need.milli - shortBy.milli)
        --enoughFor;
    if (enoughFor > 0)
        fix += ", or do " + std::to_string(enoughFor) + " of the " + std::to_string(question.pieces)
            + " pieces";
    return fix + ".";
}

/// Which part a common scale cannot weigh closely enough in so small a mix; empty when there is none.
std::string smallMixText(const HeldAgainst& held, UnitSystem units)
{
    const auto& parts = held.candidate->parts;
    if (parts.size() < 2 || held.need.dimension != Dimension::Mass)
        return {};
    const auto least = std::min_element(parts.begin(), parts.end(),
        [](const StockPart& a, const StockPart& b) { return a.sharePerUnit < b.sharePerUnit; });
    const double smallest = smallestBatchGrams(least->sharePerUnit, scaleStep, hardenerTolerance);
    if (least->dimension != Dimension::Mass || held.need.value() >= smallest)
        return {};
    return "On a scale that reads " + numberWords(scaleStep, 1) + " g the " + inSentence(least->name)
        + " may be out by more than 2 %: mix " + formatAmount(grams(std::ceil(smallest)), units)
        + " or more, or weigh on a finer scale.";
}

bool hasMargin(const PartStock& stock)
{
    return static_cast<double>(stock.goodLeft) >= margin * static_cast<double>(stock.wanted);
}

} // namespace

Gate amountGate(const GlueUpQuestion& question, const HeldAgainst& held)
{
    Gate gate { "amount", "Amount", GateResult::Pass, {}, {} };
    if (held.need.milli <= 0) {
        gate.result = GateResult::Unknown;
        gate.text = "How much " + inQuotes(question.job.name) + " takes is not known.";
        gate.fix = "Give the job type its estimate: the area to glue and the spread.";
        return gate;
    }
    gate.text = needText(held, question.units);
    if (held.candidate->partnerMissing || held.worst() >= PartState::Short) {
        gate.result = GateResult::Stop;
        gate.fix = shortFix(question, held);
    } else if (held.worst() == PartState::CoveredPerhaps) {
        gate.result = GateResult::Unknown;
        gate.text = sentencesTogether(
            gate.text, "Whether there is enough hangs on stock of which too little is known.");
        gate.fix = "Find out about that stock, or get more.";
    } else if (held.worst() == PartState::CoveredOnceTested) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(gate.text, "There is enough only with stock to be tested first.");
    } else if (!std::all_of(held.parts.begin(), held.parts.end(), hasMargin)) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(gate.text, "That is less than a tenth over.");
        gate.fix = "Have more at hand.";
    }
    if (const std::string small = smallMixText(held, question.units); !small.empty()) {
        gate.text = sentencesTogether(gate.text, small);
        if (gate.result == GateResult::Pass)
            gate.result = GateResult::Warn;
    }
    return gate;
}

} // namespace gw
