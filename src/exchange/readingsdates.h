#pragma once

#include <array>
#include <string>
#include <vector>

#include "exchange/readingscells.h"
#include "exchange/readingslook.h"

namespace gw {

/// Weighs, row by row, in which order a file writes its dates.
class DateOrders {
public:
    explicit DateOrders(Moment now);

    void add(const WrittenDate& date, std::string_view text, int line);

    /// The order of all dates into the layout, and a doubt where several fit. `whole`: no more dates follow.
    /// Errors: BadInput when no one order fits all, or not the chosen one.
    Result<void> decide(const std::string& file, const std::optional<DateOrder>& chosen, bool whole,
        ReadingsLayout& layout, std::vector<Doubt>& doubts) const;

private:
    struct Order {
        DateOrder order;
        std::string value; ///< as the command line takes it
        std::optional<Date> before;
        int nextDays = 0; ///< rows a day from the row before
        int leaps = 0; ///< rows further from it
        std::string against; ///< the first date that cannot be in this order
        int againstLine = 0;
    };
    std::optional<DateOrder> bySteps(const std::vector<const Order*>& fitting) const;
    Doubt doubt(const std::vector<const Order*>& fitting) const;

    int m_thisYear;
    std::array<Order, 3> m_orders;
    std::optional<DateOrder> m_plain; ///< of the first date that can be read in one way only
    int m_open = 0; ///< dates that say nothing of their order by how they are written
    int m_sameDay = 0; ///< rows on the day of the row before
    bool m_differ = false; ///< some date means different days in orders that both fit it
    std::string m_example;
    WrittenDate m_exampleDate;
    WrittenDate m_before;
};

} // namespace gw
