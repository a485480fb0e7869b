#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "measure/amount.h"
#include "measure/range.h"
#include "measure/temperature.h"

/// The small change of this room's sentences; nobody outside needs it.
namespace gw {

std::string percentWords(double value); ///< "46 %"
std::string percentRangeWords(const Range<double>& range); ///< "30 to 65 %"
std::string millimetreWords(double value); ///< "0.15 mm"
std::string temperatureRangeWords(const Range<Celsius>& range, UnitSystem units); ///< "23 to 30 °C"

/// A name as it stands inside a sentence: "Hot hide glue" is "hot hide glue", "Epoxy, thickened" is
/// "thickened epoxy", "PVA" stays.
std::string inSentence(std::string_view name);

/// Only the first letter: "Loose chair tenon" is "loose chair tenon".
std::string lowerFirst(std::string_view name);

/// "hot glue" is "Hot glue".
std::string upperFirst(std::string_view text);

/// "a", "a and b", "a, b and c".
std::string listWords(const std::vector<std::string>& names);

/// The text with a full stop behind it, if it has none of its own; empty stays empty.
std::string asSentence(std::string text);

/// Two sentences with a blank between them where neither is empty.
std::string sentencesTogether(std::string first, const std::string& second);

/// A tenth of a degree is more than a shop thermometer tells; comparing finer would stop a job over nothing.
double roundedToTenth(Celsius temperature);

} // namespace gw
