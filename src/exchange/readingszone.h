#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "measure/moment.h"

namespace gw {

/// "UTC", "UTC+02:00" or an IANA id, from what people write: "+2", "GMT-5", "utc", an IANA id. None when no
/// such zone is known here.
std::optional<std::string> zoneNamed(const std::string& text);

/// The offset that a zone goes back to in winter, as "UTC+01:00".
std::string standardTime(const std::string& zone, Moment now);

/// What the clocks on the wall of one zone show.
class WallClock {
public:
    /// `zone` as zoneNamed() gives it, taken as UTC when it is not; changes are known up to `until`.
    WallClock(const std::string& zone, Moment until);

    /// The moments at which the clocks show a time, which is counted as if it were UTC: two, the earlier
    /// first, when the hour comes twice; none when the clocks leap over it.
    struct Shown {
        std::array<Moment, 2> at {};
        int count = 0;
    };
    Shown whenShowing(Moment wall) const;

private:
    struct Span {
        Moment from;
        Moment to;
        std::chrono::milliseconds offset;
    };
    std::vector<Span> m_spans;
    mutable std::size_t m_last = 0; ///< most times are in the span of the one before
};

} // namespace gw
