#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// The hazard pictograms and the signal word of a material (UN GHS).
struct Hazards {
    std::vector<std::string> pictograms; ///< "GHS02" ..., in order, each once
    /// "Danger", "Warning", or empty for none. Where the label was not asked, the stronger one that such
    /// pictograms can stand with: Warning where there is none but GHS07 and GHS09, else Danger (from memory
    /// of GHS Rev. 9, annex 1).
    std::string signalWord;
    bool fromLabel = false; ///< a person read them off this material's label; else those usual for its class
};
Hazards hazardsOf(const ClassRecord& cls, const MaterialRecord& material);

/// What a person read off a label, as the material's own figures "pictograms" ("GHS02;GHS07", or "none") and
/// "signal_word" ("Danger", "Warning", or "none"). Errors: BadInput for a code that is none of GHS01 to
/// GHS09, or another word.
Result<std::vector<Figure>> hazardFigures(
    const std::vector<std::string>& pictograms, std::string_view signalWord);

} // namespace gw
