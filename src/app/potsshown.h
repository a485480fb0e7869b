#pragma once

#include <vector>

#include "app/rowsmodel.h"
#include "shop/batch.h"

namespace gw {

/// Something about a batch, or a joint glued with one, that is due at a moment.
struct PotAlarm {
    QString key; ///< unlike any other's; another one once something was noted of the batch
    Moment at;
    QString text; ///< "Hot hide glue, GWABC123: Soaked: look whether ..."
};

/// What is mixed, ready for the screens.
struct PotsShown {
    std::vector<ShownRow> pots; ///< potRoles; key: the batch's id
    std::vector<PotAlarm> alarms; ///< the first to come first, those past among them
    int standing = 0; ///< how many are not gone
};

inline const QByteArrayList potRoles { "label", "name", "verdict", "amount", "standing", "words", "heat",
    "band", "due", "joints", "parts", "acts", "actTexts", "level", "hot", "contents", "gone", "unit" };

/// The batches there are, and those gone lately whose joints still want watching. Runs on the shop's thread.
Result<PotsShown> potsShown(const Shop& shop, Moment now, QDate today);

} // namespace gw
