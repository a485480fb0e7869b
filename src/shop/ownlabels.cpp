#include "shop/ownlabels.h"

#include <QRandomGenerator>

#include "codes/ownlabel.h"

namespace gw {

Result<std::string> freeOwnLabel(const Store& store, const std::function<std::uint64_t()>& draw)
{
    // Of half a thousand million codes hardly one is taken; as often as this only where the drawing is
    // broken.
    constexpr int mostDraws = 100;
    for (int i = 0; i < mostDraws; ++i) {
        std::string label = ownLabelCode(draw());
        auto taken = store.containerByLabel(label);
        if (!taken)
            return tl::unexpected(taken.error());
        auto batch = store.batchByLabel(label);
        if (!batch)
            return tl::unexpected(batch.error());
        if (!*taken && !*batch)
            return label;
    }
    return fail(ErrorCode::Conflict, "No free label code was found; try again.");
}

Result<std::string> freeOwnLabel(const Store& store)
{
    return freeOwnLabel(store, [] { return QRandomGenerator::system()->generate64(); });
}

} // namespace gw
