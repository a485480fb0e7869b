#include "shop/arrival.h"

#include <algorithm>

#include <QString>

#include "shop/arrivallot.h"
#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

namespace {

/// The amount on the code in the unit the class is counted in, else the first one.
std::optional<Amount> amountFor(const Code& code, const ClassRecord* cls)
{
    std::vector<Amount> ofOne = code.amounts;
    // How many are in a case is no amount of one of them.
    if (code.itemsInside)
        std::erase(ofOne, pieces(*code.itemsInside));
    if (ofOne.empty())
        return std::nullopt;
    if (cls) {
        for (const Amount& amount : ofOne) {
            if (amount.dimension == cls->countedIn)
                return amount;
        }
    }
    return ofOne.front();
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
    if (code.itemsInside)
        draft.count = *code.itemsInside;
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

/// A case that this shop has unpacked before, or one of a pack it knows: of what, and how many as far as
/// known.
Result<std::optional<PackRecord>> packInCase(
    const Shop& shop, const Catalogue& catalogue, const Gtin& number, ArrivalDraft& draft)
{
    draft.caseNumber = number;
    draft.gtin = itemInside(number);
    draft.count = 0;
    auto known = shop.store().caseByGtin(number.digits14);
    if (!known)
        return tl::unexpected(known.error());
    if (*known) {
        draft.count = (*known)->pieces;
        const auto pack = catalogue.packs.find((*known)->pack);
        if (pack != catalogue.packs.end()) {
            if (!pack->second.gtin14.empty())
                draft.gtin = Gtin { pack->second.gtin14 };
            return std::optional(pack->second);
        }
    }
    return draft.gtin ? shop.store().packByGtin(draft.gtin->digits14) : std::optional<PackRecord> {};
}

/// A pack whose number this shop has learned, or the material whose maker's article code was typed.
Result<const MaterialRecord*> knownMaterial(
    const Shop& shop, const Catalogue& catalogue, const Code& code, ArrivalDraft& draft)
{
    if (code.gtin) {
        auto pack = shop.store().packByGtin(code.gtin->digits14);
        if (pack && !*pack && packLevel(*code.gtin) == PackLevel::Case)
            pack = packInCase(shop, catalogue, *code.gtin, draft);
        if (!pack)
            return tl::unexpected(pack.error());
        if (!*pack)
            return nullptr;
        draft.pack = (*pack)->id;
        // Filled to order, each holds something else.
        if (packLevel(*code.gtin) != PackLevel::VariableMeasure)
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

/// The dates its lot code could mean, read as last time where that fits.
Result<void> readLot(const Shop& shop, ArrivalProposal& proposal, Moment now)
{
    auto context = lotDateContext(shop, proposal.draft.material, {}, now);
    if (!context)
        return tl::unexpected(context.error());
    proposal.lotContext = std::move(*context);
    proposal.lotDates = lotDatesOf(proposal.draft, proposal.lotContext);
    readLotAsLastTime(proposal.draft, proposal.lotDates);
    return {};
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
        proposal.say = proposal.draft.caseNumber
            ? "A case of something that is new here: say once what is in it and how many, and the next one "
              "needs "
              "a single tap."
            : "This product is new here: say once what it is, and the next one needs a single tap.";
    } else {
        proposal.say = "No product number in that text; choose what it is by name.";
        proposal.kind = code.kind == CodeKind::Gs1 ? ArrivalProposal::Kind::NewMaterial
                                                   : ArrivalProposal::Kind::NothingToBookIn;
        proposal.draft.amount = amountFor(code, nullptr);
    }
    if (proposal.kind == ArrivalProposal::Kind::NothingToBookIn)
        return proposal;
    if (auto lot = readLot(shop, proposal, now); !lot)
        return tl::unexpected(lot.error());
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
    if (auto lot = readLot(shop, proposal, now); !lot)
        return tl::unexpected(lot.error());
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
    if (draft.count == 0)
        asks.emplace_back("count");
    if (draft.place.empty())
        asks.emplace_back("place");
    if (!draft.made && !draft.printed && !draft.foundUndated)
        asks.emplace_back("label_date");
    return asks;
}

} // namespace gw
