#include "exchange/calendar.h"

#include <algorithm>
#include <ctime>
#include <memory>

#include <libical/ical.h>

#include "exchange/savefile.h"

namespace gw {

namespace {

struct Freed {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
    void operator()(char* text) const { icalmemory_free_buffer(text); }
};

icaltimetype dayOf(Date date)
{
    icaltimetype time = icaltime_null_date();
    time.year = static_cast<int>(date.year());
    time.month = static_cast<int>(static_cast<unsigned>(date.month()));
    time.day = static_cast<int>(static_cast<unsigned>(date.day()));
    return time;
}

icaltimetype stampOf(Moment moment)
{
    const auto seconds = std::chrono::floor<std::chrono::seconds>(moment).time_since_epoch().count();
    return icaltime_from_timet_with_zone(
        static_cast<std::time_t>(seconds), 0, icaltimezone_get_utc_timezone());
}

/// Minutes since 2020: a revision that grows with the time of writing and fits the integer it must be.
int revisionOf(Moment written)
{
    constexpr auto begun = std::chrono::sys_days { std::chrono::year { 2020 } / 1 / 1 };
    const auto minutes = std::chrono::floor<std::chrono::minutes>(written - begun).count();
    return static_cast<int>(std::max<std::int64_t>(0, minutes));
}

icalcomponent* eventOf(const CalendarDay& day, Moment written)
{
    icalcomponent* event = icalcomponent_new(ICAL_VEVENT_COMPONENT);
    const auto add = [event](icalproperty* property) { icalcomponent_add_property(event, property); };
    const Date next { std::chrono::sys_days { day.day } + std::chrono::days { 1 } };
    add(icalproperty_new_uid(day.uid.c_str()));
    add(icalproperty_new_dtstamp(stampOf(written)));
    add(icalproperty_new_lastmodified(stampOf(written)));
    add(icalproperty_new_sequence(revisionOf(written)));
    add(icalproperty_new_dtstart(dayOf(day.day)));
    add(icalproperty_new_dtend(dayOf(next)));
    add(icalproperty_new_summary(day.title.c_str()));
    if (!day.text.empty())
        add(icalproperty_new_description(day.text.c_str()));
    if (!day.category.empty())
        add(icalproperty_new_categories(day.category.c_str()));
    add(icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
    return event;
}

} // namespace

std::string calendarText(const std::vector<CalendarDay>& days, const std::string& name, Moment written)
{
    const std::unique_ptr<icalcomponent, Freed> calendar(icalcomponent_new(ICAL_VCALENDAR_COMPONENT));
    const auto add
        = [&calendar](icalproperty* property) { icalcomponent_add_property(calendar.get(), property); };
    add(icalproperty_new_version("2.0"));
    add(icalproperty_new_prodid("-//Gluewright//Shelf//EN"));
    add(icalproperty_new_method(ICAL_METHOD_PUBLISH));
    if (!name.empty()) {
        icalproperty* title = icalproperty_new_x(name.c_str());
        icalproperty_set_x_name(title, "X-WR-CALNAME");
        add(title);
    }
    for (const CalendarDay& day : days)
        icalcomponent_add_component(calendar.get(), eventOf(day, written));
    const std::unique_ptr<char, Freed> text(icalcomponent_as_ical_string_r(calendar.get()));
    return text ? std::string(text.get()) : std::string();
}

Result<void> writeCalendar(
    const std::vector<CalendarDay>& days, const std::string& name, Moment written, const QString& path)
{
    return saveFile(path, calendarText(days, name, written));
}

} // namespace gw
