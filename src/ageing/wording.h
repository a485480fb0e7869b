#pragma once

#include <string>

#include "measure/moment.h"
#include "measure/range.h"
#include "measure/temperature.h"

namespace gw {

/// The pieces of the sentences people hear. English, whole words, no marks that cannot be read aloud but "%"
/// and degrees.

std::string onDay(Moment moment); ///< "3 May 2025", the UTC day
std::string spanWords(
    Days span); ///< "12 days", "11 months", "4 years": whole ones gone by, "less than a day"
std::string hoursWords(Days span); ///< "less than an hour", "14 hours", from two days on as spanWords()
std::string lifeWords(
    const Range<Days>& life); ///< "6 to 12 months", "12 months", "5 to 20 years", "1.5 to 3 days"
std::string shareWords(const Range<double>& used); ///< "55 to 110 %": low rounded down, high up
std::string rangeWords(const Range<Celsius>& range); ///< "between 5 and 30 °C"
std::string uncapitalised(std::string sentence);

} // namespace gw
