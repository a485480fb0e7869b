#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// What an act did: its entries are one transaction, and undo() takes them all back together.
struct ActDone {
    ActId act;
    EntryId entry; ///< the first of the act
    std::vector<ContainerId> containers; ///< touched or made
    std::vector<BatchId> batches {}; ///< mixed or noted
    std::string said; ///< "Used 13 g of hide granules." for the screen
};

/// Who acts when. Entries carry both moments: when it happened, and when it was written down.
struct ActTime {
    Moment at;
    Moment now; ///< at must not lie after now, nor before the container's arrival
};

/// Each act names its container by id or label code. Errors: NotFound; Refused, with what to do instead (more
/// than is left, already open, retired, a time before it arrived); BadInput (wrong dimension that no density
/// converts, zero).
Result<ActDone> openContainer(Shop& shop, const std::string& container, ActTime time);
/// Takes out an amount; the first use of a sealed container opens it in the same act.
Result<ActDone> useSome(
    Shop& shop, const std::string& container, Amount amount, const std::optional<JobId>& job, ActTime time);
/// Says what is really left; the difference becomes the entry.
Result<ActDone> countLeft(Shop& shop, const std::string& container, Amount left, ActTime time);
Result<ActDone> moveTo(Shop& shop, const std::string& container, const std::string& place, ActTime time);
/// Pours some into a new container that inherits made and printed date, lot, opening, tests, stays and holds.
Result<ActDone> decant(
    Shop& shop, const std::string& container, Amount amount, const std::string& place, ActTime time);
Result<ActDone> retire(Shop& shop, const std::string& container, const std::string& why, ActTime time);

struct TestResult {
    bool passed = false;
    std::optional<double> woodFailurePercent; ///< 0 to 100
    bool grainyAfterFrost = false;
    std::string note;
};
Result<ActDone> recordTest(Shop& shop, const std::string& container, const TestResult& result, ActTime time);

/// Holds back every container of a lot, here and to come, until released. When several materials carry the
/// lot number all are held. Errors: NotFound when no container has that lot; Refused when it is already (not)
/// on hold.
Result<ActDone> holdLot(Shop& shop, const std::string& lot, const std::string& why, ActTime time);
Result<ActDone> releaseLot(Shop& shop, const std::string& lot, ActTime time);

/// One use of several containers in one act: what a glue-up took.
struct Taking {
    std::string container;
    Amount amount;
};
/// fromBatches names batches in place of containers: what was taken out of a pot.
Result<ActDone> useForJob(Shop& shop, const std::vector<Taking>& takings, const JobRecord& job, ActTime time,
    const std::vector<Taking>& fromBatches = {});

/// Reverses the whole act that an entry, or a note of a batch, belongs to. Errors: NotFound; Refused when it
/// was undone before, is itself an undoing, or later entries stand on it (an arrival whose bottle has been
/// used): the sentence names what to undo first.
Result<ActDone> undo(Shop& shop, const EntryId& entry, Moment now);

} // namespace gw
