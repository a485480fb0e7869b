#include "scan/sightings.h"

#include <set>

#include "scan/plausible.h"

namespace gw {

namespace {

using namespace std::chrono_literals;

constexpr auto cooldown = 2s;
constexpr auto shortestAbsence = 800ms;
constexpr int framesForAbsence = 5;

} // namespace

std::vector<Symbol> Sightings::update(const std::vector<Symbol>& inFrame, Time now)
{
    std::erase_if(m_known, [now](const auto& item) {
        const auto& [key, sighting] = item;
        const auto unseen = now - sighting.last;
        return unseen >= cooldown
            || (sighting.framesWithout >= framesForAbsence && unseen >= shortestAbsence);
    });

    std::set<std::pair<std::string, std::string>> seenNow;
    std::vector<Symbol> fresh;
    for (const Symbol& symbol : inFrame) {
        const auto key = std::pair(symbol.symbology, symbol.text);
        if (!seenNow.insert(key).second)
            continue; // the same label twice in one frame is one reading
        Sighting& sighting = m_known[key];
        sighting.last = now;
        sighting.framesWithout = 0;
        ++sighting.framesWith;
        if (sighting.told || (isWeak(symbol) && sighting.framesWith < 2))
            continue;
        sighting.told = true;
        fresh.push_back(symbol);
    }
    for (auto& [key, sighting] : m_known) {
        if (!seenNow.contains(key))
            ++sighting.framesWithout;
    }
    return fresh;
}

} // namespace gw
