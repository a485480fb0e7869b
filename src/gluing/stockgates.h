#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/glueup.h"

/// What the shelf says to the need; nobody outside the room needs it.
namespace gw {

struct StockAnswer {
    std::string name; ///< the candidate chosen; empty when the shelf has nothing of the kind
    std::optional<Gate> partner; ///< two-part only
    Gate age;
    Gate amount;
    std::vector<Take> use; ///< good containers only
    std::vector<WeighLine> weighOut;
    std::optional<Amount> shortBy;
};

/// The best that the candidates allow. need is what the question's job takes; zero means it is not known.
StockAnswer answerFromStock(const GlueUpQuestion& question, Amount need, Moment now);

} // namespace gw
