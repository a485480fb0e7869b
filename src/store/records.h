#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ageing/climate.h"
#include "measure/amount.h"
#include "measure/id.h"
#include "measure/moment.h"
#include "measure/money.h"
#include "measure/temperature.h"

/// What the store keeps, as plain values. An empty id or text means "none" where a field is not optional.
namespace gw {

/// One figure of a class, family or material, with where it is from.
struct Figure {
    std::string figure; ///< key, as in db/reference
    std::optional<double> value, low, high;
    std::string text;
    std::string unit;
    std::string source; ///< key of a source, "label", or "shop"
    std::string confidence;
    std::string basis;
    bool changedByShop = false; ///< the shop put its own figure over the reference's
};

struct ClassRecord {
    ClassId id;
    std::string name;
    std::string group; ///< what kind of stuff: pva, finish, consumable ...
    FamilyId family; ///< empty for what is no glue
    std::string form;
    std::string vessel; ///< bottle, jar, tin, bag, tube, box, item
    Dimension countedIn = Dimension::Mass;
    std::string frost; ///< never, harms, recoverable
    std::string moisture;
    std::string hazardNote;
    std::string spoilageSigns;
    std::string benchTest; ///< steps separated by " | "
    std::string source;
    std::string confidence;
    std::vector<Figure> figures;
    std::vector<std::string> pictograms; ///< GHS codes
};

struct FamilyRecord {
    FamilyId id;
    std::string name;
    std::string facesToSpread;
    std::string reversibleWith;
    std::string creep;
    std::string source;
    std::string confidence;
    std::vector<Figure> figures;
};

struct SourceRecord {
    std::string key;
    std::string title;
    std::string kind;
    std::string status;
};

/// Something this shop buys.
struct MaterialRecord {
    MaterialId id;
    std::string name;
    ClassId classId;
    std::string articleCode; ///< the maker's own
    std::optional<MaterialId> partner; ///< resin and its hardener name each other
    std::string vessel; ///< empty: as its class
    std::vector<Figure> labelFigures; ///< what the label says; beats the class
    std::string note;
};

/// A photograph of a label, kept with its material.
struct LabelPhoto {
    static constexpr std::size_t mostBytes = 1'500'000;
    Moment taken;
    std::string jpeg; ///< the file's bytes
};

struct PackRecord {
    PackId id;
    MaterialId material;
    std::string gtin14; ///< empty when it carries none
    Amount amount;
    std::optional<Money> price;
    std::string supplier;
    std::optional<double> leadDays;
    int soldBy = 1; ///< only so many together, 1 to 1000
    int least = 1; ///< fewer are not delivered, 1 to 1000
};

/// A case of several of one pack.
struct CaseRecord {
    std::string gtin14;
    PackId pack;
    int pieces = 1; ///< 1 to 200
};

struct PlaceRecord {
    PlaceId id;
    std::string name;
    AssumedRanges assumed; ///< taken where nobody watches
    std::optional<Follow> follows; ///< another place that tells of this one where it has no readings
    std::string note;
    /// Another number after every change of its readings; 0 while it has none. The store's own: savePlace
    /// leaves it.
    std::int64_t readingsMark = 0;
};

/// What became of readings that were sent to the store.
struct ReadingsAdded {
    std::int64_t added = 0;
    std::int64_t alreadyThere = 0; ///< the same reading stood there: nothing changed
    std::int64_t different = 0; ///< another reading stands at that second: the first stays
    friend bool operator==(const ReadingsAdded&, const ReadingsAdded&) = default;
};

/// The readings of one place in one month of UTC, without the readings themselves: enough to see whether they
/// are those already in hand.
struct ReadingsMonth {
    Date first; ///< the first day of the month
    std::int64_t readings = 0;
    Moment from, to; ///< the earliest and the latest of them
    std::int64_t checksum = 0;
    friend bool operator==(const ReadingsMonth&, const ReadingsMonth&) = default;
};

struct ContainerRecord {
    ContainerId id;
    std::string label; ///< our own short code, unique in the store
    MaterialId material;
    std::optional<PackId> pack;
    std::string lot;
    std::string serial;
    std::optional<Date> made;
    std::optional<Date> printed;
    bool printedIsUseBy = false;
    bool foundUndated = false;
    Amount capacity; ///< what it held when full
    std::string vessel; ///< empty: as its material
    std::optional<ContainerId> parent; ///< what it was decanted from
    std::optional<Money> price;
    Moment created;
};

enum class EntryKind {
    Arrived,
    Opened,
    Used,
    Counted,
    Moved,
    Decanted,
    Mixed,
    Tested,
    Retired,
    Held,
    Released,
    Reversed
};
std::string_view word(EntryKind kind); ///< "arrived", "opened" ...
std::optional<EntryKind> entryKindOfWord(std::string_view word);

/// One line of the stock ledger. Never changed, never removed.
struct Entry {
    EntryId id; ///< made by the device before it is sent
    ActId act; ///< all entries of one act of a person
    EntryKind kind = EntryKind::Arrived;
    std::optional<ContainerId> container; ///< none for held and released, which go by lot
    Moment at; ///< when it happened
    Moment recorded; ///< when it was written down
    std::int64_t deltaMilli = 0; ///< change of the container's amount, in its own thousandths
    std::optional<PlaceId> place; ///< arrived, moved, decanted (the new container)
    std::optional<JobId> job; ///< used, mixed
    std::optional<ContainerId> other; ///< decanted: the other of parent and child
    std::optional<MaterialId> lotMaterial; ///< held, released
    std::string lot; ///< held, released
    std::optional<bool> passed; ///< tested
    std::optional<double> woodFailurePercent; ///< tested
    bool grainy = false; ///< tested
    std::optional<EntryId> reverses; ///< reversed: which entry; at most one reversal each
    std::string note;
    std::string device;
};

struct JobTypeRecord {
    JobTypeId id;
    std::string name;
    FamilyId family;
    ClassId typicalClass;
    Dimension countedIn = Dimension::Mass;
    double areaCm2 = 0, spread = 0, waste = 0, fixedLoss = 0, extra = 0; ///< see gluing/family.h
    double perMonth = 0; ///< the shop's own expectation
    std::string note;
    std::string source;
    std::string confidence;
    bool changedByShop = false;
    std::string joint; ///< key of db/reference/joints; empty for what joins nothing
};

/// One consumable a job type takes, by class where one fits.
struct ConsumableRecord {
    JobTypeId jobType;
    std::string item;
    ClassId classId;
    Amount amount;
};

struct JobRecord {
    JobId id;
    JobTypeId type; ///< may be empty
    std::string name;
    std::string piece; ///< the client's piece it was done on
    std::optional<Moment> at;
};

} // namespace gw
