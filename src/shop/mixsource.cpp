#include "shop/mixsource.h"

#include <algorithm>
#include <tuple>

#include "gluing/partstock.h"
#include "measure/number.h"
#include "shop/candidates.h"

namespace gw {

namespace {

const Figure* figureNamed(const std::vector<Figure>& figures, std::string_view name)
{
    const auto found = std::ranges::find(figures, name, &Figure::figure);
    return found == figures.end() ? nullptr : &*found;
}

std::string partWord(const ClassRecord& cls)
{
    const Figure* part = figureNamed(cls.figures, "part");
    return part ? part->text : std::string();
}

double goodLeft(const MaterialId& material, const std::vector<ShelfItem>& items)
{
    double left = 0;
    for (const ShelfItem& item : items) {
        if (item.material == material && item.judgement.verdict == Verdict::Good)
            left += item.left.value();
    }
    return left;
}

/// Whether a part may come from a material: one of its classes, or the very half of the pair.
bool fits(const MixPart& part, const MaterialRecord& material, const std::optional<ResinPair>& pair)
{
    if (pair && part.key == "resin")
        return material.id == pair->resin;
    if (pair && part.key == "hardener")
        return material.id == pair->hardener;
    return std::ranges::find(part.classes, material.classId) != part.classes.end();
}

struct Candidate {
    StockPart part;
    Amount need;
    std::ptrdiff_t preference = 0;
};

std::string whyNot(const PartStock& stock, const Amount& need, UnitSystem units)
{
    const std::string& name = stock.part->name;
    const std::string wanted = formatAmount(need, units) + " of " + name;
    switch (stock.state()) {
    case PartState::Covered:
        return {};
    case PartState::CoveredOnceTested:
        return wanted + " is there only with " + labelsToReach(stock, stock.toTest) + ", to be tested first.";
    case PartState::CoveredPerhaps:
        return "Whether there is " + wanted + " hangs on stock of which too little is known.";
    case PartState::Short:
        return "There is too little good " + name + " for " + formatAmount(need, units) + ".";
    case PartState::Spent:
        return "No " + name + " on the shelf may be used.";
    case PartState::None:
        break;
    }
    return "There is no " + name + " on the shelf.";
}

GateResult resultOf(PartState state)
{
    switch (state) {
    case PartState::Covered:
        return GateResult::Pass;
    case PartState::CoveredPerhaps:
        return GateResult::Unknown;
    case PartState::CoveredOnceTested:
    case PartState::Short:
    case PartState::Spent:
    case PartState::None:
        break;
    }
    return GateResult::Stop;
}

} // namespace

std::optional<ResinPair> resinOnShelf(
    const Catalogue& catalogue, const std::vector<ShelfItem>& items, const std::string& hardenerKind)
{
    std::optional<ResinPair> best;
    double most = -1;
    for (const auto& [id, resin] : catalogue.materials) {
        const auto* cls = catalogue.classOf(id);
        const auto* hardener = resin.partner ? catalogue.material(*resin.partner) : nullptr;
        if (!cls || !hardener || partWord(*cls) != "resin")
            continue;
        if (!hardenerKind.empty() && !hardener->classId.text.ends_with(hardenerKind))
            continue;
        const auto ratio = hardenerPer100(catalogue, resin, *hardener);
        const double left = std::min(goodLeft(id, items), goodLeft(hardener->id, items));
        if (!ratio || left <= most)
            continue;
        most = left;
        best = ResinPair { id, hardener->id, *ratio, resin.name + " with " + hardener->name };
    }
    return best;
}

std::optional<double> gradeOnShelf(const Catalogue& catalogue, const std::vector<ShelfItem>& items)
{
    for (const char* id :
        { "hide_granules_192", "hide_granules_251", "hide_granules_135", "hide_granules_315" }) {
        const auto cls = catalogue.classes.find(ClassId { id });
        if (cls == catalogue.classes.end())
            continue;
        const Figure* strength = figureNamed(cls->second.figures, "gel_strength");
        const bool there = std::ranges::any_of(items, [&](const ShelfItem& item) {
            return item.classId.text == id && item.left.milli > 0 && item.judgement.verdict == Verdict::Good;
        });
        if (there && strength && strength->value)
            return strength->value;
    }
    return std::nullopt;
}

PartSource sourceOf(const MixPart& part, const Catalogue& catalogue, const std::vector<ShelfItem>& items,
    const std::optional<ResinPair>& pair, Moment asOf, UnitSystem units)
{
    std::vector<Candidate> candidates;
    for (const auto& [id, material] : catalogue.materials) {
        const auto* cls = catalogue.classOf(id);
        if (!cls || !fits(part, material, pair))
            continue;
        const auto need = convert(part.amount, cls->countedIn, densityOf(*cls, material));
        if (!need)
            continue;
        const auto preferred = std::ranges::find(part.classes, material.classId);
        candidates.push_back(
            { stockOf({ id, 1.0 }, catalogue, items), *need, preferred - part.classes.begin() });
    }
    PartSource source { part.key, {}, {}, GateResult::Stop,
        "There is none of it on the shelf: " + part.what + "." };
    std::optional<std::tuple<PartState, std::ptrdiff_t, std::string>> best;
    for (const Candidate& candidate : candidates) {
        const PartStock stock = sortPart(candidate.part, candidate.need, asOf);
        const std::tuple key { stock.state(), candidate.preference, candidate.part.name };
        if (best && *best <= key)
            continue;
        best = key;
        source = { part.key, candidate.part.name, takesOf(stock), resultOf(stock.state()),
            whyNot(stock, candidate.need, units) };
    }
    return source;
}

} // namespace gw
