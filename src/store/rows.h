#pragma once

#include <algorithm>
#include <string>
#include <unordered_map>
#include <vector>

#include "store/database.h"

/// What several row mappers share.
namespace gw {

inline Dimension dimensionIn(Row& row) { return dimensionOfUnit(row.text()).value_or(Dimension::Mass); }
inline std::string unitOf(Dimension dimension) { return std::string(baseUnit(dimension)); }

inline Amount amountIn(Row& row)
{
    Amount amount;
    amount.milli = row.integer();
    amount.dimension = dimensionIn(row);
    return amount;
}

inline std::optional<Money> moneyIn(Row& row)
{
    const auto minor = row.integerOrNone();
    std::string currency = row.text();
    return minor ? std::optional(Money { *minor, std::move(currency) }) : std::nullopt;
}

inline std::optional<std::int64_t> minorOf(const std::optional<Money>& money)
{
    return money ? std::optional(money->minorUnits) : std::nullopt;
}

inline std::optional<std::string> currencyOf(const std::optional<Money>& money)
{
    return money ? std::optional(money->currency) : std::nullopt;
}

/// value, low, high, text, unit, source, confidence, basis
inline void readFigure(Row& row, Figure& figure)
{
    figure.value = row.realOrNone();
    figure.low = row.realOrNone();
    figure.high = row.realOrNone();
    figure.text = row.text();
    figure.unit = row.text();
    figure.source = row.text();
    figure.confidence = row.text();
    figure.basis = row.text();
}

/// Both engines must answer in one order, and they order texts differently; so names are sorted here.
template <class Record> void sortByName(std::vector<Record>& records)
{
    const auto folded = [](const Record& record) {
        std::string name = record.name;
        std::ranges::transform(name, name.begin(),
            [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
        return name;
    };
    std::ranges::sort(records, [&](const Record& a, const Record& b) {
        const auto left = folded(a), right = folded(b);
        return left != right ? left < right : a.id < b.id;
    });
}

/// Hands rows read in a second query to the records they belong to.
template <class Record, class Part>
void distribute(std::vector<Record>& records, std::vector<std::pair<std::string, Part>> parts,
    std::vector<Part> Record::* where)
{
    std::unordered_map<std::string, Record*> byId;
    for (auto& record : records)
        byId.emplace(record.id.text, &record);
    for (auto& [id, part] : parts) {
        if (const auto found = byId.find(id); found != byId.end())
            (found->second->*where).push_back(std::move(part));
    }
}

} // namespace gw
