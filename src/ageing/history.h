#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ageing/contents.h"
#include "measure/id.h"
#include "measure/moment.h"

namespace gw {

/// Where a container stood from a moment on, until the next stay.
struct Stay {
    PlaceId place;
    Moment from;
};

/// A bench test on stock and what it showed.
struct BenchTest {
    Moment at;
    bool passed = false;
    std::optional<double> woodFailurePercent; ///< 0 to 100, where a joint was broken
    bool grainyAfterFrost = false;
};

/// A lot held back, with why.
struct Hold {
    Moment since;
    std::string why;
};

/// The life one container has lived, as the ledger tells it up to some moment. Decanted stock carries its
/// parent's made date, printed date, arrival, opened moment, tests, stays and fillings; so it can never look
/// younger than it is, nor as though it had never frozen.
struct History {
    std::optional<Date> made; ///< made or packed date, from label or code
    std::optional<Date> printed; ///< best-before or use-by date as printed
    bool printedIsUseBy = false;
    Moment arrived;
    bool foundUndated = false; ///< met at a stock-taking: it may have stood here for any time before
    std::optional<Moment> opened; ///< first opening
    bool foundOpen = false; ///< already open when it came, and nobody knows since when
    std::optional<Moment> retired;
    std::vector<Stay> stays; ///< in time order, may begin before arrival; empty when the place is not known
    std::vector<Filling> fillings; ///< in time order; empty when nothing is known of its size
    std::vector<BenchTest> tests; ///< in time order
    std::optional<Hold> hold; ///< the hold in force at the moment asked about
};

} // namespace gw
