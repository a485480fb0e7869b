#pragma once

#include <QStringList>

#include "app/rowsmodel.h"
#include "shop/shelf.h"

namespace gw {

/// A container's page ready to show; made on the shop's thread.
struct ContainerShown {
    QString id, label, name, className;
    QString shape, contents;
    double level = 0;
    QString amountLeft, capacity; ///< "405 g", "of 500 g"
    QString place, lot, parentLabel;
    QString verdict, headline; ///< headline: "Good until 3 Nov 2029", or empty
    QStringList reasons, reasonVerdicts;
    QStringList factNames, factValues; ///< made, printed, arrived, opened ...
    QStringList clockNames, clockTexts; ///< the life clocks that run
    QList<double> clockLevels; ///< share used, worst case; negative when not known
    QStringList clockVerdicts;
    QStringList benchTest, places, units;
    QString spoilageSigns;
    QStringList cautions; ///< pictograms in words, then the hazard note
    bool frostHarms = false; ///< frost spoils it: an emulsion or a protein liquid
    bool opened = false, retired = false, onHold = false;
    Dimension dimension = Dimension::Mass;
    std::vector<ShownRow> entries, figures;
};

QByteArrayList entryRoles(); ///< text, when, after, icon, undone, undoable

/// Errors: those of containerPage().
Result<ContainerShown> containerShown(
    const Shop& shop, const std::string& idOrLabel, Moment asOf, QDate today);

} // namespace gw
