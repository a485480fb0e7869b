#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "scan/symbolreader.h"

namespace gw {

/// Weighs what engines say of one symbol in several looks at it. A square code corrects its errors: one word
/// is enough. Of a bar code two kinds of engine must say the same, and of one whose check is weak two kinds
/// of engine in two looks; nothing else may have been said half as often.
class Ballot {
public:
    /// What all engines saw in one look.
    void add(std::vector<Symbol> seen);
    /// What is believed by now; of several the one said most often.
    std::optional<Symbol> believed() const;

private:
    struct Votes {
        Symbol symbol;
        std::set<std::string> engines;
        int looks = 0;
        int words = 0; ///< looks, for each engine
    };
    bool isEnough(const Votes& votes) const;

    std::vector<Votes> m_said;
};

} // namespace gw
