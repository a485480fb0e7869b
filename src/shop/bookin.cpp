#include "shop/arrival.h"

#include <algorithm>
#include <cmath>

#include <QString>

#include "shop/actbuilder.h"
#include "shop/materialsaid.h"
#include "shop/ownlabels.h"

namespace gw {

namespace {

constexpr int mostAtOnce = 200;

Result<void> checkDraft(const ArrivalDraft& draft, ActTime time)
{
    if (draft.count == 0 && draft.caseNumber)
        return fail(ErrorCode::BadInput, "Say how many are in the case; count them, or look at its label.");
    if (draft.count < 1 || draft.count > mostAtOnce)
        return fail(ErrorCode::BadInput,
            "Book in 1 to " + std::to_string(mostAtOnce) + " of the same at once, not "
                + std::to_string(draft.count) + ".");
    if (!(draft.leftShare > 0 && draft.leftShare <= 1))
        return fail(ErrorCode::BadInput, "Say how much is left in it: more than nothing, at most all of it.");
    if (!draft.amount)
        return fail(ErrorCode::BadInput, "Say how much is in one container, such as 500g or 250ml.");
    if (draft.amount->milli <= 0)
        return fail(
            ErrorCode::BadInput, "A container that arrives holds more than nothing; give its amount.");
    // A day of grace: the label's day begins earlier east of here.
    if (draft.made && startOf(*draft.made) > later(time.at, Days { 1 }))
        return fail(ErrorCode::BadInput,
            "It cannot have been made on " + spokenDate(*draft.made)
                + ", after it arrived; look at the label again.");
    if (draft.made && draft.printed && startOf(*draft.printed) < startOf(*draft.made))
        return fail(ErrorCode::BadInput,
            "The label date " + spokenDate(*draft.printed) + " lies before the made date "
                + spokenDate(*draft.made) + "; look at the label again.");
    return {};
}

/// The material of the draft: the known one, one of that name, or a new one of its class.
Result<MaterialRecord> materialOf(ActBuilder& act, const ArrivalDraft& draft)
{
    const Catalogue& catalogue = act.catalogue();
    if (draft.material) {
        if (const auto* known = catalogue.material(*draft.material))
            return *known;
        return fail(ErrorCode::NotFound, "That material is not known in this shop; choose it again.");
    }
    const QString name = QString::fromStdString(draft.newName).simplified();
    if (name.isEmpty())
        return fail(ErrorCode::BadInput, "Say what it is: the material's name.");
    for (const auto& [id, material] : catalogue.materials) {
        if (QString::fromStdString(material.name).compare(name, Qt::CaseInsensitive) == 0
            && (draft.newClass.empty() || draft.newClass == material.classId))
            return material;
    }
    if (draft.newClass.empty())
        return fail(ErrorCode::BadInput,
            "\"" + name.toStdString() + "\" is new here: say which class of material it is.");
    if (!catalogue.classes.contains(draft.newClass))
        return fail(ErrorCode::NotFound,
            "There is no class \"" + draft.newClass.text + "\"; the command \"classes\" lists them.");

    MaterialRecord material;
    material.id = MaterialId { newUuid() };
    material.name = name.toStdString();
    material.classId = draft.newClass;
    material.articleCode = draft.newArticleCode;
    material.labelFigures = draft.newLabelFigures;
    if (auto saved = savePartners(act.shop(), catalogue, material, draft.newPartner); !saved)
        return tl::unexpected(saved.error());
    return material;
}

/// How its lot code gives a date, and what its label looks like.
Result<void> learnLabel(ActBuilder& act, const ArrivalDraft& draft, const MaterialId& material)
{
    Store& store = act.shop().store();
    if (draft.made && !draft.lotReadAs.empty()) {
        if (auto kept = store.setLotDateReading(material, draft.lotReadAs); !kept)
            return kept;
    }
    return draft.photo ? store.saveLabelPhoto(material, *draft.photo) : Result<void> {};
}

/// Learns the pack's number, so that the next one is known at sight.
Result<std::optional<PackId>> packOf(ActBuilder& act, const ArrivalDraft& draft, const MaterialId& material)
{
    if (draft.pack)
        return draft.pack;
    if (!draft.gtin)
        return std::optional<PackId> {};
    auto known = act.shop().store().packByGtin(draft.gtin->digits14);
    if (!known)
        return tl::unexpected(known.error());
    if (*known) {
        if ((*known)->material != material)
            return fail(ErrorCode::Refused,
                "The number " + printedForm(*draft.gtin)
                    + " already stands for another material here; look again which it is.");
        return std::optional<PackId>((*known)->id);
    }
    PackRecord pack;
    pack.id = PackId { newUuid() };
    pack.material = material;
    pack.gtin14 = draft.gtin->digits14;
    pack.amount = *draft.amount;
    pack.price = draft.price;
    if (auto saved = act.shop().store().savePack(pack); !saved)
        return tl::unexpected(saved.error());
    return std::optional<PackId>(pack.id);
}

/// A case of a number holds the same every time.
Result<void> learnCase(ActBuilder& act, const ArrivalDraft& draft, const std::optional<PackId>& pack)
{
    if (!draft.caseNumber || !pack)
        return {};
    return act.shop().store().saveCase({ draft.caseNumber->digits14, *pack, draft.count });
}

} // namespace

Result<ActDone> bookIn(Shop& shop, const ArrivalDraft& draft, ActTime time)
{
    if (auto sound = checkDraft(draft, time); !sound)
        return tl::unexpected(sound.error());

    // What a new material teaches is the catalogue's next time; an act sees it as it was before.
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto material = materialOf(act, draft);
        if (!material)
            return tl::unexpected(material.error());
        if (auto learned = learnLabel(act, draft, material->id); !learned)
            return tl::unexpected(learned.error());
        auto pack = packOf(act, draft, material->id);
        if (!pack)
            return tl::unexpected(pack.error());
        if (auto learned = learnCase(act, draft, *pack); !learned)
            return tl::unexpected(learned.error());
        auto place = act.placeNamed(draft.place);
        if (!place)
            return tl::unexpected(place.error());

        Amount left = *draft.amount;
        left.milli
            = std::max<std::int64_t>(1, std::llround(static_cast<double>(left.milli) * draft.leftShare));
        for (int i = 0; i < draft.count; ++i) {
            auto label = freeOwnLabel(shop.store());
            if (!label)
                return tl::unexpected(label.error());
            ContainerRecord container;
            container.id = ContainerId { newUuid() };
            container.label = std::move(*label);
            container.material = material->id;
            container.pack = *pack;
            container.lot = draft.lot;
            container.serial = draft.serial;
            container.made = draft.made;
            container.printed = draft.printed;
            container.printedIsUseBy = draft.printedIsUseBy;
            container.foundUndated = draft.foundUndated || draft.leftShare < 1;
            container.capacity = *draft.amount;
            container.price = draft.price;
            container.created = time.now;
            if (auto added = shop.store().addContainer(container); !added)
                return tl::unexpected(added.error());
            Entry& arrived = act.add(EntryKind::Arrived, container.id);
            arrived.deltaMilli = left.milli;
            arrived.place = *place;
            if (draft.leftShare < 1)
                act.add(EntryKind::Opened, container.id).note = "found open";
        }
        const std::string each = act.say(left);
        if (draft.count == 1)
            return "Booked in " + each + " of " + material->name + ".";
        return "Booked in " + std::to_string(draft.count) + " of " + material->name + ", " + each + " each.";
    });
}

} // namespace gw
