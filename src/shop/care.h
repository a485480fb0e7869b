#pragma once

#include <string>

#include "shop/shop.h"

namespace gw {

struct DemoCounts {
    int containers = 0, materials = 0, places = 0, jobs = 0;
};

/// Fills an empty store with the invented shop of db/demo, its dates counted back from now. Errors: Refused
/// when the store holds anything already.
Result<DemoCounts> fillDemo(Shop& shop, Moment now);

/// The day's rotating backup: written once a day the shop is used, the last fourteen kept. Answers the file
/// written, or an empty text when today's is already there.
Result<std::string> dailyBackup(const Shop& shop, const std::string& folder, Moment now);

/// What a restore brought back, and where what was there before is kept.
struct RestoredShop {
    StoreReport report;
    std::string kept;
};
/// Puts a backup in the place of all that is in the shop, after keeping what was there in a folder (made when
/// there is none). Errors: those of Store::restore, FileUnwritable.
Result<RestoredShop> restoreBackup(
    Shop& shop, const std::string& file, const std::string& folder, Moment now);

/// The folder a store's backups go to unless the person chose another.
std::string defaultBackupFolder(const StoreLocation& location);

/// True when nothing was ever booked in and nothing learned.
Result<bool> isEmpty(const Shop& shop);

} // namespace gw
