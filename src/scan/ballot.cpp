#include "scan/ballot.h"

#include <algorithm>

#include "scan/plausible.h"

namespace gw {

void Ballot::add(std::vector<Symbol> seen)
{
    std::set<const Votes*> counted;
    m_said.reserve(m_said.size() + seen.size()); // counted points into it
    for (Symbol& symbol : seen) {
        auto said = std::find_if(m_said.begin(), m_said.end(), [&symbol](const Votes& votes) {
            return votes.symbol.text == symbol.text && votes.symbol.symbology == symbol.symbology;
        });
        if (said == m_said.end()) {
            m_said.push_back({});
            said = m_said.end() - 1;
            said->symbol = symbol;
        }
        said->engines.insert(symbol.engine);
        ++said->words;
        if (counted.insert(&*said).second)
            ++said->looks;
    }
}

bool Ballot::isEnough(const Votes& votes) const
{
    if (!isBarCode(votes.symbol))
        return true;
    const bool contested = std::any_of(m_said.begin(), m_said.end(), [&votes](const Votes& other) {
        return &other != &votes && isBarCode(other.symbol) && 2 * other.words >= votes.words;
    });
    if (contested)
        return false;
    if (isWeak(votes.symbol))
        return votes.engines.size() >= 2 && votes.looks >= 2;
    return votes.engines.size() >= 2 || votes.looks >= 3;
}

std::optional<Symbol> Ballot::believed() const
{
    const Votes* best = nullptr;
    for (const Votes& votes : m_said)
        if (isEnough(votes) && (!best || votes.words > best->words))
            best = &votes;
    return best ? std::optional(best->symbol) : std::nullopt;
}

} // namespace gw
