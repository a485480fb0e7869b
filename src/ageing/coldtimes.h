#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "ageing/airpath.h"
#include "ageing/chill.h"

namespace gw {

/// Where the air of one place was, or may have been, colder than one limit. Made once and grown with the
/// readings, so that a span is a few look-ups.
class ColdTimes {
public:
    explicit ColdTimes(Celsius limit);

    /// Brings it up to date with air that has more readings than before at its end, or none the more.
    void grow(const Air& air);

    /// Readings below the limit one after the other, from the time the air began to fall to them until it had
    /// risen from them.
    struct Spell {
        Moment from;
        Moment to;
    };
    /// Those that end after a moment, and maybe some before, in time order. The air may have more readings
    /// than before at its end.
    const std::vector<Spell>& spells(const Air& air, Moment since);

    /// Unwatched time of a span in which it may have been colder; and since when, for an empty span too.
    struct Unsure {
        Days time { 0 };
        std::optional<Moment> since;
        bool known = true; ///< false where nothing is assumed of the place
    };
    Unsure unsure(const Air& air, Moment from, Moment to) const;

private:
    struct Stretch {
        Moment from;
        Moment to;
        bool known;
        Days before; ///< of the stretches before it
    };
    void addSpells(const Air& air, std::size_t first);
    void addUnsure(const Air& air, Moment from, Moment to);

    Celsius m_limit;
    std::size_t m_readings = 0;
    std::size_t m_followed = 0;
    std::vector<Spell> m_spells;
    std::size_t m_spelled = 0; ///< so many readings were looked at for spells
    Moment m_spellsSince = Moment::max();
    std::vector<Stretch> m_stretches; ///< within m_from and m_to
    Moment m_from {}; ///< the first moment any reading speaks for
    Moment m_to {}; ///< the last; the stretches before and after are asked for when needed
};

} // namespace gw
