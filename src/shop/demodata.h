#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "exchange/csv.h"
#include "shop/care.h"

namespace gw {

/// One row of a demonstration table, by column.
class DemoRow {
public:
    DemoRow(const CsvTable& table, std::size_t row)
        : m_table(&table)
        , m_row(row)
    {
    }

    const std::string& text(std::string_view column) const { return m_table->cell(m_row, column); }
    bool has(std::string_view column) const { return !text(column).empty(); }
    std::optional<double> number(std::string_view column) const;

private:
    const CsvTable* m_table;
    std::size_t m_row;
};

/// The rows of one table. Errors: FileUnreadable when there is none of that name.
Result<std::vector<DemoRow>> demoRows(const std::vector<CsvTable>& tables, std::string_view name);

/// Days of the invented past as moments: noon of a day so many days from now, rows of one day a minute apart,
/// none after now.
class DemoDays {
public:
    explicit DemoDays(Moment now)
        : m_now(now)
    {
    }
    Moment next(double days);
    Moment at(double days) const;
    Moment now() const { return m_now; }

private:
    Moment m_now;
    double m_day = 0;
    int m_minute = 0;
};

/// What the shop of the demonstration buys, where it stands and what it works on: saved, and found again by
/// the data's keys.
struct DemoCatalogue {
    Catalogue catalogue; ///< as the store has it, for classes and densities
    std::map<std::string, PlaceId> places;
    std::map<std::string, MaterialRecord> materials;
    std::map<std::string, PackId> packs; ///< by GTIN as written
    std::map<std::string, JobId> jobs;
    int jobCount = 0;

    static Result<DemoCatalogue> save(Shop& shop, const std::vector<CsvTable>& tables, Moment now);
    /// An amount as a person writes it, in the unit a container is counted in.
    Result<Amount> amount(const std::string& materialKey, const std::string& text, Dimension own) const;
};

/// Writes the places and what is known of their temperatures.
Result<void> saveDemoPlaces(Shop& shop, const std::vector<CsvTable>& tables, Moment now, DemoCatalogue& demo);

/// Writes the containers and the ledger of the demonstration; answers how many containers.
Result<int> saveDemoLedger(
    Shop& shop, const std::vector<CsvTable>& tables, const DemoCatalogue& catalogue, Moment now);

} // namespace gw
