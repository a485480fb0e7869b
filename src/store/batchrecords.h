#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/amount.h"
#include "measure/id.h"
#include "measure/moment.h"
#include "measure/temperature.h"

/// What the store keeps of batches, as plain values.
namespace gw {

/// One thing that went in. What came off the shelf names its container and the ledger's entry that took it.
struct BatchPart {
    std::string key; ///< as in gluing/mixing.h: "granules", "water", "resin" ...
    std::string what;
    Amount amount;
    std::optional<ContainerId> container;
    std::optional<EntryId> entry;
    friend bool operator==(const BatchPart&, const BatchPart&) = default;
};

/// A figure that the recipe, the label or the person fixed for this batch.
struct BatchFigure {
    std::string figure; ///< "water_ratio", "grade", "pot_life_min" ...
    std::optional<double> low, high; ///< equal for one value
    std::string text; ///< where it is a word: "pearls"
    std::string unit;
    friend bool operator==(const BatchFigure&, const BatchFigure&) = default;
};

/// A prepared material. Written once; what became of it is in its notes.
struct BatchRecord {
    BatchId id;
    std::string label; ///< our own short code, unique among batches and containers
    std::string recipe; ///< id, as in db/reference
    std::string name; ///< "Hot hide glue, 192 g"
    Moment made;
    Amount amount; ///< what it made
    std::optional<PlaceId> place;
    std::string who; ///< may be empty
    Moment created;
    std::vector<BatchPart> parts; ///< in the order they went in
    std::vector<BatchFigure> figures;

    const BatchFigure* figure(std::string_view key) const; ///< null: nothing was fixed
    std::optional<double> value(std::string_view key) const; ///< its low end, else none
};

enum class BatchNoteKind {
    Mixed,
    Soaked, ///< found swollen through
    HeatOn,
    HeatRead, ///< its temperature while it is hot
    HeatOff, ///< left to cool where it stands
    ToppedUp,
    Weighed,
    Chilled, ///< into the refrigerator
    Frozen, ///< into the freezer
    Used,
    UsedUp,
    Spoiled, ///< smells or looks bad
    ThrownAway,
    Remark,
    Reversed
};
std::string_view word(BatchNoteKind kind); ///< "mixed", "heat_on" ...
std::optional<BatchNoteKind> batchNoteKindOfWord(std::string_view word);

/// One line of a batch's story. Never changed, never removed.
struct BatchNote {
    EntryId id; ///< made by the device before it is sent
    BatchId batch;
    ActId act; ///< that of the ledger's entries written together with it
    BatchNoteKind kind = BatchNoteKind::Remark;
    Moment at; ///< when it happened
    Moment recorded; ///< when it was written down
    std::int64_t deltaMilli = 0; ///< change of what is left, in the batch's own thousandths
    std::optional<Celsius> temperature; ///< of the glue
    std::optional<std::int64_t> weightMilli; ///< of vessel and contents together, in milligrams
    std::optional<PlaceId> place;
    std::optional<JobId> job; ///< used
    std::optional<EntryId> reverses; ///< another note; at most one reversal each
    std::string note;
    std::string who;
    std::string device;
    friend bool operator==(const BatchNote&, const BatchNote&) = default;
};

} // namespace gw
