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

    /// The container, taken for this act, its state as of now. Errors: NotFound, Refused when the act's time
    /// is impossible.
    Result<Found> take(const std::string& idOrLabel);
    /// The same, and Refused when it is retired.
    Result<Found> takeStanding(const std::string& idOrLabel);

    /// A new entry of this act; fill in the rest. The reference holds until the next one is added.
    Entry& add(EntryKind kind, const std::optional<ContainerId>& container);

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
};

} // namespace gw
