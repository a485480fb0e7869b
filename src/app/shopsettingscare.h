#pragma once

#include <QString>
#include <QStringList>

#include "shop/care.h"

namespace gw {

/// Care of the store, as the settings screen asks for it. All of it runs on the shop's thread.

struct StoreFacts {
    QString shopName; ///< empty when nobody gave it one
    QString where; ///< path, or the server's address without a password
    QString engine;
    QString size; ///< of the files; empty where that is the server's affair
    int schemaVersion = 0;
};
Result<StoreFacts> storeFacts(const Shop& shop);

struct BackupFacts {
    QString folder;
    bool chosen = false; ///< by a person; else the usual one
    QString newest; ///< file name; empty when there is none
    std::optional<Moment> newestAt;
};
Result<BackupFacts> backupFacts(const Shop& shop);

/// An empty path goes back to the usual folder. Errors: FileUnwritable when nothing can be written there.
Result<void> chooseBackupFolder(Shop& shop, const QString& folder);

/// A backup of this moment beside the daily ones, which are counted and thrown away by themselves; this one
/// is not. Answers the file.
Result<QString> backUpByHand(const Shop& shop, Moment now);

/// Puts a backup in the place of all that is in the store; what was there goes beside the backups. The folder
/// for backups stays the one chosen here. The store is to be opened anew afterwards: the backup may carry
/// older reference data.
Result<RestoredShop> restoreFrom(Shop& shop, const QString& file, Moment now);

} // namespace gw
