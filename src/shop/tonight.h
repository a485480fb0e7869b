#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ageing/tonight.h"
#include "shop/shop.h"

namespace gw {

/// A container that a cold night would harm.
struct ColdContainer {
    ContainerId container;
    std::string label, materialName;
    Amount left;
    TonightRisk risk;
    std::string text; ///< what would become of it, when, and what to do
};
struct ColdPlace {
    PlaceId place; ///< empty: where it stands is not known
    std::string name;
    std::vector<ColdContainer> containers; ///< the most urgent first
};
struct Tonight {
    Moment asOf;
    Celsius low;
    std::vector<ColdPlace> places; ///< the one with the most urgent first; none: nothing to bring in
    std::string said; ///< the whole in one sentence
};
/// What must come in before a night of so low a temperature: in one place, or everywhere with an empty name.
/// What is retired or used up is not looked at. Errors: NotFound; BadInput outside -60 to 40 C.
Result<Tonight> tonight(const Shop& shop, const std::string& place, Celsius low, Moment asOf);
/// The same for several places, each with its own low, from one look at the shelf: an answer for each, in
/// their order.
Result<std::vector<Tonight>> tonight(
    const Shop& shop, const std::vector<std::pair<PlaceId, Celsius>>& lows, Moment asOf);
/// All of some nights' containers with the names of their places, the most urgent first.
std::vector<std::pair<std::string, ColdContainer>> mostUrgentFirst(const std::vector<Tonight>& nights);

/// Keeps tonight's low for a place, so that Today says what to bring in, until 24 h later; none takes it
/// back. Errors: as tonight().
Result<void> expectLow(Shop& shop, const std::string& place, std::optional<Celsius> low, Moment now);
/// The low still expected at a moment in a place; none: nobody said.
Result<std::optional<Celsius>> expectedLow(const Shop& shop, const PlaceId& place, Moment asOf);

} // namespace gw
