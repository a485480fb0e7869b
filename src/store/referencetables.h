#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace gw {

/// What the store knows of one file of db/reference: its columns, how many of the first are its key, and what
/// the rows with that first key belong to.
struct ReferenceSpec {
    std::string_view name;
    std::string_view columns; ///< as in the file, separated by blanks; the key first
    std::size_t keys = 1;
    std::string_view parent = {}; ///< the table whose key the first column is; empty for none
    std::string_view numbers = {}; ///< the columns that hold numbers
    std::string_view shopMark
        = {}; ///< condition that tells a row the shop has a hand in; empty where it has in none
    std::string_view updateWhen
        = {}; ///< condition on which the file's row replaces the one there; empty: always
    std::string_view whenGone
        = {}; ///< what becomes of a row with the shop's mark once the file has it no more
};

/// Every table, each after those it refers to.
std::span<const ReferenceSpec> referenceSpecs();
const ReferenceSpec* referenceSpec(std::string_view name); ///< none: no such file

std::vector<std::string_view> words(std::string_view spaced);

} // namespace gw
