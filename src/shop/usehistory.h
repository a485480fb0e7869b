#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// What one job took of one material by the ledger.
struct JobTaking {
    JobTypeId type;
    MaterialId material;
    Moment at; ///< of the job's first entry of it
    double amount = 0; ///< the material's own units
};

/// How many jobs of a kind came while somebody noted them. It is watched from its first job in the last
/// twelve months on, which itself does not count then: the watch was begun because it came.
struct JobsSeen {
    double jobs = 0;
    double months = 0;
};

/// What left the shelf by an entry, in a whole month before the plan.
struct MonthTaking {
    std::size_t month = 0; ///< 0 the oldest of monthsLearned
    MaterialId material;
    JobTypeId type; ///< empty: for no job, or one of no type
    double amount = 0;
};

/// What the ledger tells of use up to a moment, without what was undone.
struct UseHistory {
    static constexpr int monthsLearned = 12;
    std::vector<JobTaking> jobs; ///< oldest first
    std::map<JobTypeId, JobsSeen> seen;
    std::vector<MonthTaking> months;
    std::map<JobTypeId, std::vector<Date>> planned; ///< the days of jobs planned with a date, one for each
    std::size_t monthsKept = 0; ///< of monthsLearned, the latest since the ledger was begun

    /// What jobs of a kind took of a material, oldest first.
    std::vector<double> weighed(const JobTypeId& type, const MaterialId& material) const;
};

/// Learns from the entries up to a moment, for a list of the month that begins on a day. What was written off
/// as waste is no use. Errors: those of the store.
Result<UseHistory> useHistory(const Shop& shop, const Catalogue& catalogue, Date monthStart, Moment now);

} // namespace gw
