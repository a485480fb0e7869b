#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ageing/verdict.h"
#include "shop/shop.h"

namespace gw {

/// One container as the shelf shows it, as of a moment.
struct ShelfItem {
    ContainerId id;
    std::string label; ///< our short code
    MaterialId material;
    std::string materialName;
    ClassId classId;
    std::string className;
    PlaceId place; ///< empty when not known
    std::string placeName;
    Amount left;
    Amount capacity;
    std::string vessel;
    std::string lot;
    std::optional<Date> made;
    std::optional<Date> printed;
    bool printedIsUseBy = false;
    std::optional<Moment> arrived, openedAt, retiredAt;
    bool onHold = false;
    Judgement judgement;

    /// Share of the capacity that is left, 0 to 1.
    double level() const;
};

struct ShelfQuery {
    Moment asOf;
    std::optional<PlaceId> place = {};
    std::optional<Verdict> verdict = {};
    std::string text = {}; ///< matches name, class, lot, label code or place; case does not matter
    bool retiredToo = false;
    bool emptyToo = true;
};

/// Every container that stands on the shelf, worst verdict first, then the one that goes off first.
Result<std::vector<ShelfItem>> shelf(const Shop& shop, const ShelfQuery& query);

/// One line of a container's story.
struct EntryLine {
    EntryId entry;
    ActId act;
    EntryKind kind = EntryKind::Arrived;
    Moment at;
    std::string text; ///< "Used 13 g for chair, full reglue"
    Amount after; ///< left after it
    bool undone = false;
    bool undoable = false;
};

struct ContainerPage {
    ShelfItem item;
    std::vector<EntryLine> entries; ///< newest first
    std::vector<std::string> benchTest; ///< the class's simple test, step by step
    std::string spoilageSigns;
    std::vector<std::string> pictograms;
    std::string hazardNote;
    std::vector<Figure> figures; ///< what the answer rests on: label before class, each with its source
    std::string parentLabel; ///< decanted from
};

/// The container with an id or label code. Errors: NotFound.
Result<ContainerPage> containerPage(const Shop& shop, const std::string& idOrLabel, Moment asOf);

/// What wants doing today, most pressing first.
struct TodayItem {
    enum class Kind { BringIn, DoNotUse, OnHold, NotKnown, TestFirst, GoingOff, NothingLeft };
    Kind kind = Kind::GoingOff;
    std::string title; ///< "White PVA"
    std::string text; ///< one sentence: what and what to do
    ContainerId container;
    std::string label;
    Verdict verdict = Verdict::Good;
    std::optional<Moment> when;
};

struct Today {
    Moment asOf;
    int containers = 0;
    std::map<Verdict, int> counts;
    std::vector<TodayItem> items;
};

Result<Today> today(const Shop& shop, Moment asOf);

} // namespace gw
