#pragma once

#include <functional>

#include "shop/acts.h"
#include "shop/stock.h"

namespace gw {

std::string newUuid();

/// A container an act is about, with what is known of it now.
struct Found {
    ContainerRecord container;
    StockState state;
    const MaterialRecord* material = nullptr;
    const ClassRecord* cls = nullptr;
};

/// Collects the entries of one act and writes them in one transaction.
class ActBuilder {
public:
    ActBuilder(Shop& shop, ActTime time);

    Shop& shop() { return m_shop; }
    const Catalogue& catalogue() const { return m_catalogue; }
    ActTime time() const { return m_time; }
    const ActId& id() const { return m_act; }

    /// The container, taken for this act, its state as of now. Errors: NotFound, Refused when the act's time
    /// is impossible.
    Result<Found> take(const std::string& idOrLabel);
    /// The same, and Refused when it is retired.
    Result<Found> takeStanding(const std::string& idOrLabel);

    /// A new entry of this act; fill in the rest. The reference holds until the next one is added.
    Entry& add(EntryKind kind, const std::optional<ContainerId>& container);

    /// Takes an amount over zero out of it, in its own dimension, and opens it where it is sealed. The entry
    /// holds until the next one is added. Errors: BadInput; Refused when less is left, what this act took
    /// already counted.
    Result<Entry*> takeOut(const Found& found, Amount amount, EntryKind kind);

    /// A batch, taken for this act. Errors: as for take, and Refused when its mixing was undone.
    Result<BatchRecord> takeBatch(const std::string& idOrLabel);
    /// A new note of this act; fill in the rest. The reference holds until the next one is added.
    BatchNote& addNote(BatchNoteKind kind, const BatchId& batch);

    /// An amount in the container's own dimension. Errors: BadInput when no density tells.
    Result<Amount> inItsOwnUnit(const Found& found, Amount amount) const;
    /// The place of a name, made when there is none. Empty name: none.
    Result<std::optional<PlaceId>> placeNamed(const std::string& name);

    std::string say(Amount amount) const { return formatAmount(amount, m_shop.units()); }

    /// Runs the steps and writes the entries, all or nothing; steps answer what to say.
    static Result<ActDone> run(
        Shop& shop, ActTime time, const std::function<Result<std::string>(ActBuilder&)>& steps);

private:
    Shop& m_shop;
    ActTime m_time;
    ActId m_act;
    Catalogue m_catalogue;
    std::vector<Entry> m_entries;
    std::vector<BatchNote> m_notes;
};

} // namespace gw
