#pragma once

#include <string>
#include <vector>

#include "measure/error.h"
#include "measure/moment.h"

class QString;

namespace gw {

/// A day to be reminded of.
struct CalendarDay {
    std::string
        uid; ///< the same for the same thing whenever it is written, so that importing again updates it
    Date day;
    std::string title;
    std::string text; ///< what there is to know; may be empty
    std::string category; ///< "good until", "order", "chill"
};

/// An iCalendar file (RFC 5545) of whole days that do not block time. `written` is its stamp; a later one
/// counts as a later revision of each entry.
std::string calendarText(const std::vector<CalendarDay>& days, const std::string& name, Moment written);

/// The same into a file, whole or not at all. Errors: FileUnwritable, StoreFull.
Result<void> writeCalendar(
    const std::vector<CalendarDay>& days, const std::string& name, Moment written, const QString& path);

} // namespace gw
