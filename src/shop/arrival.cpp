#include "shop/arrival.h"

#include <algorithm>

#include <QString>

#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

namespace {

/// The amount on the code in the unit the class is counted in, else the first one.
std::optional<Amount> amountFor(const Code& code, const ClassRecord* cls)
{
    if (code.amounts.empty())
        return std::nullopt;
    if (cls) {
        for (const Amount& amount : code.amounts) {
            if (amount.dimension == cls->countedIn)
                return amount;
        }
    }
    return code.amounts.front();
}

/// Where this material was put last: most likely where the new one goes too.
Result<std::string> usualPlace(
    const Shop& shop, const Catalogue& catalogue, const MaterialId& material, Moment now)
{
    auto standings = standingsAsOf(shop, now);
    if (!standings)
        return tl::unexpected(standings.error());
    const Standing* newest = nullptr;
    for (const Standing& standing : *standings) {
        if (standing.container.material != material || standing.state.place.empty())
            continue;
        if (!newest || *newest->state.arrived < *standing.state.arrived)
            newest = &standing;
    }
    return newest ? catalogue.placeName(newest->state.place) : std::string();
}

void takeFromCode(ArrivalDraft& draft, const Code& code)
{
    draft.gtin = code.gtin;
    draft.lot = code.lot;
    draft.serial = code.serial;
    draft.made = code.made ? code.made : code.packed;
    if (code.useBy) {
        draft.printed = code.useBy;
        draft.printedIsUseBy = true;
    } else {
        draft.printed = code.bestBefore;
    }
}

/// A pack whose number this shop has learned, or the material whose maker's article code was typed.
Result<const MaterialRecord*> knownMaterial(
    const Shop& shop, const Catalogue& catalogue, const Code& code, ArrivalDraft& draft)
{
    if (code.gtin) {
        auto pack = shop.store().packByGtin(code.gtin->digits14);
        if (!pack)
            return tl::unexpected(pack.error());
        if (!*pack)
            return nullptr;
        draft.pack = (*pack)->id;
        draft.amount = (*pack)->amount;
        draft.price = (*pack)->price;
        return catalogue.material((*pack)->material);
    }
    const QString typed = QString::fromStdString(code.text).trimmed();
    if (typed.isEmpty())
        return nullptr;
    for (const auto& [id, material] : catalogue.materials) {
        if (!material.articleCode.empty()
            && QString::fromStdString(material.articleCode).compare(typed, Qt::CaseInsensitive) == 0)
            return &material;
    }
    return nullptr;
}

} // namespace

Result<ArrivalProposal> proposeArrival(const Shop& shop, const Code& code, Moment now)
{
    ArrivalProposal proposal;
    proposal.code = code;
    if (code.error) {
        proposal.say = code.error->sentence;
        return proposal;
    }
    if (code.kind == CodeKind::OwnLabel) {
        auto ours = findContainer(shop, code.text);
        if (!ours && ours.error().code != ErrorCode::NotFound)
            return tl::unexpected(ours.error());
        if (!ours) {
            proposal.say = "That label is one of ours, but no container here carries it; it may belong to "
                           "another shop.";
            return proposal;
        }
        proposal.kind = ArrivalProposal::Kind::OurContainer;
        proposal.containerLabel = ours->label;
        proposal.say = "That is " + ours->label + ", which is here already.";
        return proposal;
    }

    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    takeFromCode(proposal.draft, code);
    auto known = knownMaterial(shop, *catalogue, code, proposal.draft);
    if (!known)
        return tl::unexpected(known.error());

    if (const MaterialRecord* material = *known) {
        proposal.kind = ArrivalProposal::Kind::KnownProduct;
        proposal.materialName = material->name;
        proposal.draft.material = material->id;
        if (const auto onCode = amountFor(code, catalogue->classOf(material->id)))
            proposal.draft.amount = onCode;
        auto place = usualPlace(shop, *catalogue, material->id, now);
        if (!place)
            return tl::unexpected(place.error());
        proposal.draft.place = *place;
        proposal.say = material->name + ": book it in?";
    } else if (code.gtin) {
        proposal.kind = ArrivalProposal::Kind::NewMaterial;
        proposal.draft.amount = amountFor(code, nullptr);
        proposal.say = "This product is new here: say once what it is, and the next one needs a single tap.";
    } else {
        proposal.say = "No product number in that text; choose what it is by name.";
        proposal.kind = code.kind == CodeKind::Gs1 ? ArrivalProposal::Kind::NewMaterial
                                                   : ArrivalProposal::Kind::NothingToBookIn;
        proposal.draft.amount = amountFor(code, nullptr);
    }
    if (proposal.kind != ArrivalProposal::Kind::NothingToBookIn)
        proposal.asks = missingFrom(shop, proposal.draft);
    return proposal;
}

Result<ArrivalProposal> proposeMaterial(const Shop& shop, const MaterialId& id, Moment now)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const MaterialRecord* material = catalogue->material(id);
    if (!material)
        return fail(ErrorCode::NotFound, "That material is not known in this shop; choose it again.");
    auto place = usualPlace(shop, *catalogue, id, now);
    if (!place)
        return tl::unexpected(place.error());
    ArrivalProposal proposal;
    proposal.kind = ArrivalProposal::Kind::KnownProduct;
    proposal.materialName = material->name;
    proposal.draft.material = id;
    proposal.draft.place = *place;
    const auto isItsPack = [&](const auto& pack) { return pack.second.material == id; };
    if (std::ranges::count_if(catalogue->packs, isItsPack) == 1) {
        const PackRecord& pack = std::ranges::find_if(catalogue->packs, isItsPack)->second;
        proposal.draft.pack = pack.id;
        proposal.draft.amount = pack.amount;
        proposal.draft.price = pack.price;
    }
    proposal.asks = missingFrom(shop, proposal.draft);
    proposal.say = material->name + ": book it in?";
    return proposal;
}

std::vector<std::string> missingFrom(const Shop&, const ArrivalDraft& draft) { return missingFrom(draft); }

std::vector<std::string> missingFrom(const ArrivalDraft& draft)
{
    std::vector<std::string> asks;
    if (!draft.material) {
        if (draft.newName.empty())
            asks.emplace_back("material");
        if (draft.newClass.empty())
            asks.emplace_back("class");
    }
    if (!draft.amount)
        asks.emplace_back("amount");
    if (draft.place.empty())
        asks.emplace_back("place");
    if (!draft.made && !draft.printed && !draft.foundUndated)
        asks.emplace_back("label_date");
    return asks;
}

} // namespace gw
