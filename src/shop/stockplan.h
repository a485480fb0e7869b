#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "shop/acts.h"
#include "shop/stockrow.h"

namespace gw {

/// What becomes of one line of a stock file in this shop.
struct StockPlanRow {
    enum class Fate {
        Coming, ///< a new container
        Here, ///< it stands here already, just so
        Differs, ///< it stands here, but not as the file has it: it stays as it is here
    };
    StockRow row;
    Fate fate = Fate::Coming;
    std::string differs; ///< "left: 400 g here, 300 g in the file"
    ContainerId container; ///< its own, also of one that is still to come
    bool again = false; ///< the shop knows the container, but its booking-in was undone
    std::optional<MaterialId> material; ///< none: a new one
    ClassId cls;
    std::optional<PackId> pack; ///< known by its number
};

/// A stock file held against this shop: what bringing it in would do. Nothing is written while a line is
/// refused.
struct StockPlan {
    std::string file;
    std::vector<StockPlanRow> rows;
    std::vector<StockRefusal> refusals;
    std::vector<std::string> newMaterials, newPlaces; ///< names, each once
    int count(StockPlanRow::Fate fate) const;
    std::string said() const; ///< "3 containers would come in: ...", in sentences
};

constexpr int mostStockRows = 20'000;

/// A line with a label code is that container. One without is known again by all its words, so that a file
/// brought in twice is brought in once; lines that are alike are as many containers. Errors: BadInput for a
/// table that is no stock file or has too many lines; those of the store.
Result<StockPlan> planStock(const Shop& shop, const CsvTable& table, Moment now);

/// Brings in what comes, in one act, so that all of it or nothing is there and one undo takes it back.
/// progress(lines done) is called from time to time. What a container lived through elsewhere is not in the
/// file: where its arrival is not given, nobody knows how old it is. Errors: BadInput naming the first
/// refused line; Refused when nothing comes in; those of planStock().
Result<ActDone> bringInStock(
    Shop& shop, const CsvTable& table, ActTime time, const std::function<void(int)>& progress = {});

/// All that stands on the shelf and is not empty, as lines of a stock file: by place, name and label. A file
/// of stock is no backup: readings, jobs and what happened to each container are not in it.
Result<std::vector<StockCells>> stockOnShelf(const Shop& shop, Moment asOf);
/// The same, written whole or not at all; how many lines. Errors: those of saveFile().
Result<int> takeOutStock(const Shop& shop, Moment asOf, const QString& path);

} // namespace gw
