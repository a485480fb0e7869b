#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "store/faults.h"

namespace gw {

/// One numbered step from an older schema to a newer one, as built into the program from db/migrations.
struct Migration {
    int version = 0;
    std::string topic;
    std::string checksum; ///< SHA-256 of its text, in hexadecimal
    std::vector<std::string> statements;
};

/// Every migration for an engine, oldest first, numbered from 1 without gaps.
std::vector<Migration> migrationsFor(Engine engine);

/// The statements of a migration's text. A statement ends where a line ends with a semicolon; lines that
/// begin with two dashes are comments.
std::vector<std::string> statementsOf(std::string_view text);

} // namespace gw
