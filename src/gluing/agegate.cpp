#include "gluing/heldagainst.h"

#include <chrono>
#include <string>
#include <tuple>

#include "gluing/sentences.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr auto soon = std::chrono::days { 14 };

std::string daysLeft(std::chrono::milliseconds left)
{
    const auto days = std::chrono::floor<std::chrono::days>(left).count();
    if (days <= 0)
        return "less than a day from now";
    return days == 1 ? "one day from now" : std::to_string(days) + " days from now";
}

std::string goodText(const PartStock& stock, Moment now)
{
    const StockItem& first = *stock.good.front();
    std::string text = stock.part->name + ": " + first.label + " is good";
    if (first.goodUntil) {
        text += " until " + spokenDate(dateOf(*first.goodUntil));
        if (*first.goodUntil - now <= soon)
            text += ", " + daysLeft(*first.goodUntil - now);
    }
    return asSentence(text);
}

Gate unknownAge(const PartStock& stock)
{
    const StockItem& item = *stock.unknown.front();
    const std::string why = item.left.dimension == stock.part->dimension
        ? item.reason
        : "It is counted in " + std::string(baseUnit(item.left.dimension)) + ", and its density is not known";
    return { "age", "Stock", GateResult::Unknown,
        sentencesTogether(
            "It is not known whether " + item.label + " (" + stock.part->name + ") is still good.",
            asSentence(why)),
        "Find out about " + item.label + ": its page says what is missing." };
}

/// Short even with everything: testing would not be enough, so the amount is what to see to first.
Gate ageOfTooLittle(const PartStock& stock, Moment now)
{
    if (!stock.unknown.empty())
        return unknownAge(stock);
    if (stock.toTest.empty())
        return { "age", "Stock", GateResult::Pass, goodText(stock, now), {} };
    const StockItem& item = *stock.toTest.front();
    return { "age", "Stock", GateResult::Warn,
        sentencesTogether(item.label + " (" + stock.part->name + ") would have to be tested first.",
            asSentence(item.reason)),
        {} };
}

Gate partAge(const PartStock& stock, Moment now)
{
    const std::string& name = stock.part->name;
    switch (stock.state()) {
    case PartState::Covered:
        return { "age", "Stock", GateResult::Pass, goodText(stock, now), {} };
    case PartState::CoveredOnceTested: {
        const std::string labels = labelsToReach(stock, stock.toTest);
        return { "age", "Stock", GateResult::Stop,
            sentencesTogether("There is enough " + name + " only with " + labels + ", to be tested first.",
                asSentence(stock.toTest.front()->reason)),
            "Test " + labels + " first: its test is on the container's page." };
    }
    case PartState::CoveredPerhaps:
        return unknownAge(stock);
    case PartState::Short:
        return ageOfTooLittle(stock, now);
    case PartState::Spent: {
        const StockItem& item = *stock.spent.front();
        return { "age", "Stock", GateResult::Stop,
            sentencesTogether("No " + name + " on the shelf may be used: get fresh stock.",
                asSentence(item.label + ": " + item.reason)),
            {} };
    }
    case PartState::None:
        break;
    }
    return { "age", "Stock", GateResult::Stop, "There is no " + name + " on the shelf.", {} };
}

int gravity(const Gate& gate)
{
    switch (gate.result) {
    case GateResult::Pass:
        return 0;
    case GateResult::Warn:
        return 1;
    case GateResult::Unknown:
        return 2;
    case GateResult::Stop:
        break;
    }
    return gate.fix.empty() ? 4 : 3;
}

} // namespace

Gate partnerGate(const HeldAgainst& held)
{
    Gate gate { "partner", "Partner", GateResult::Stop, {}, {} };
    if (held.candidate->partnerMissing) {
        gate.text
            = held.candidate->name + " sets only with its other half, and this shop has never had that.";
        return gate;
    }
    std::vector<std::string> there, missing;
    for (const PartStock& stock : held.parts)
        (stock.state() == PartState::None ? missing : there).push_back(stock.part->name);
    if (missing.empty()) {
        gate.result = GateResult::Pass;
        gate.text = asSentence("On the shelf: " + listWords(there));
    } else if (there.empty()) {
        gate.text = asSentence("Nothing of this is on the shelf: " + listWords(missing));
    } else {
        gate.text = asSentence("There is no " + listWords(missing) + " on the shelf, and without it "
            + listWords(there) + " does not set");
    }
    return gate;
}

Gate ageGate(const GlueUpQuestion& question, const HeldAgainst& held, Moment now)
{
    if (held.parts.empty())
        return { "age", "Stock", GateResult::Stop, "There is no " + held.candidate->name + " on the shelf.",
            {} };
    Gate gate = partAge(held.parts.front(), now);
    for (std::size_t i = 1; i < held.parts.size(); ++i) {
        Gate next = partAge(held.parts[i], now);
        if (gravity(next) > gravity(gate))
            gate = next;
        else if (gravity(next) == gravity(gate) && next.result == GateResult::Pass)
            gate.text = sentencesTogether(gate.text, next.text);
    }
    const bool usable = gate.result == GateResult::Pass || gate.result == GateResult::Warn;
    if (usable && !held.candidate->typical && !question.job.typicalClass.empty()) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(
            gate.text, asSentence("It is not of the class usual for " + inQuotes(question.job.name)));
    }
    return gate;
}

} // namespace gw
