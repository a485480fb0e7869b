#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// The usual cautions of db/reference, each once, for some moments of the work ("gluing", "mixing" ...), in
/// the order of the table. They defer to the label, the safety data sheet and local rules; none is a promise
/// of safety. Runs on the shop's thread.
Result<std::vector<std::string>> cautionsFor(const Shop& shop, const std::vector<const ClassRecord*>& classes,
    const std::vector<std::string_view>& moments);

struct Caution {
    std::string moment; ///< key of the table
    std::string text;
    std::vector<std::string> classes; ///< names of all it is meant for
};
/// Every caution there is, each once for its moment, from storing to disposing.
Result<std::vector<Caution>> allCautions(const Shop& shop);

} // namespace gw
