#include "exchange/readingsdates.h"

#include <algorithm>

#include "exchange/readingsrow.h"
#include "measure/quoted.h"

namespace gw {

DateOrders::DateOrders(Moment now)
    : m_thisYear(yearOf(now))
    , m_orders { Order { DateOrder::DayFirst, "day-month", {}, 0, 0, {}, 0 },
        Order { DateOrder::MonthFirst, "month-day", {}, 0, 0, {}, 0 },
        Order { DateOrder::YearFirst, "iso", {}, 0, 0, {}, 0 } }
{
}

void DateOrders::add(const WrittenDate& date, std::string_view text, int line)
{
    if (date.plain()) {
        if (!m_plain)
            m_plain = date.digits[0] == 4 ? DateOrder::YearFirst
                : date.nameAt == 0        ? DateOrder::MonthFirst
                                          : DateOrder::DayFirst;
        return;
    }
    std::array<std::optional<Date>, 3> days;
    for (std::size_t i = 0; i < days.size(); ++i) {
        days[i] = dayOf(date, m_orders[i].order, m_thisYear);
        // A wrong century is a fault of the row where the year is plain, and a sign of another order where
        // the year may be any of the parts.
        if (days[i] && date.digits[2] == 2
            && (int(days[i]->year()) < firstYear || int(days[i]->year()) > m_thisYear + 1))
            days[i].reset();
    }
    if (!days[0] && !days[1] && !days[2])
        return;
    ++m_open;
    const bool sameDay = m_before.parts == date.parts;
    m_sameDay += sameDay ? 1 : 0;
    m_before = date;
    const bool differ = [&] {
        for (const auto& a : days)
            for (const auto& b : days)
                if (a && b && *a != *b)
                    return true;
        return false;
    }();
    if (m_example.empty() || (differ && !m_differ)) {
        m_example = std::string(text);
        m_exampleDate = date;
    }
    m_differ = m_differ || differ;
    for (std::size_t i = 0; i < days.size(); ++i) {
        Order& order = m_orders[i];
        if (!days[i]) {
            if (order.againstLine == 0) {
                order.against = std::string(text);
                order.againstLine = line;
            }
            continue;
        }
        if (order.before && !sameDay) {
            const auto step = std::chrono::sys_days(*days[i]) - std::chrono::sys_days(*order.before);
            (std::chrono::abs(step).count() == 1 ? order.nextDays : order.leaps) += 1;
        }
        order.before = days[i];
    }
}

/// A logger that writes several rows a day goes on to the next day at midnight: in the right order every new
/// date is the next day, in a wrong one every new date is weeks away.
std::optional<DateOrder> DateOrders::bySteps(const std::vector<const Order*>& fitting) const
{
    const Order* right = nullptr;
    for (const Order* order : fitting) {
        if (order->leaps == 0 && order->nextDays > 0) {
            if (right != nullptr)
                return {};
            right = order;
        } else if (order->nextDays > 0) {
            return {};
        }
    }
    if (right == nullptr || m_sameDay < 2 * right->nextDays)
        return {};
    return right->order;
}

Doubt DateOrders::doubt(const std::vector<const Order*>& fitting) const
{
    Doubt doubt { DoubtKind::DateOrder, {}, {}, {}, {} };
    std::string days;
    for (const Order* order : fitting) {
        const auto day = dayOf(m_exampleDate, order->order, m_thisYear);
        const std::string spoken = day ? spokenDate(*day) : order->value;
        days += (days.empty() ? "" : " or ") + spoken;
        doubt.choices.push_back(spoken);
        doubt.values.push_back(order->value);
    }
    doubt.question
        = inQuotes(m_example) + " could be " + days + ", and no other date in the file tells. Which is it?";
    return doubt;
}

Result<void> DateOrders::decide(const std::string& file, const std::optional<DateOrder>& chosen, bool whole,
    ReadingsLayout& layout, std::vector<Doubt>& doubts) const
{
    layout.dateOrder = chosen.value_or(m_plain.value_or(DateOrder::YearFirst));
    if (m_open == 0)
        return {};
    std::vector<const Order*> fitting;
    for (const Order& order : m_orders)
        if (order.againstLine == 0)
            fitting.push_back(&order);
    if (fitting.empty()) {
        const Order& day = m_orders[0];
        const Order& month = m_orders[1];
        return fail(ErrorCode::BadInput,
            file + " line " + std::to_string(day.againstLine) + ": " + inQuotes(day.against)
                + " cannot begin with the day, nor " + inQuotes(month.against) + " on line "
                + std::to_string(month.againstLine)
                + " with the month; write all dates in one order, the year first at best.");
    }
    if (chosen) {
        const auto order = std::find_if(
            m_orders.begin(), m_orders.end(), [&](const Order& one) { return one.order == *chosen; });
        if (order->againstLine != 0)
            return fail(ErrorCode::BadInput,
                file + " line " + std::to_string(order->againstLine) + ": " + inQuotes(order->against)
                    + " is no date in the order " + order->value + "; choose " + fitting.front()->value
                    + ".");
        return {};
    }
    layout.dateOrder = fitting.front()->order;
    if (fitting.size() == 1 || (whole && !m_differ))
        return {};
    if (const auto order = bySteps(fitting))
        layout.dateOrder = *order;
    else
        doubts.push_back(doubt(fitting));
    return {};
}

} // namespace gw
