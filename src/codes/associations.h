#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "codes/code.h"

namespace gw {

/// What cannot stand together: identifiers that exclude each other ("AIs exclude each other"), and one
/// identifier twice with two values ("duplicate AI"). GS1 General Specifications 4.13 and 4.14.
/// The elements are as read: their identifiers exist.
std::optional<CodeError> checkTogether(std::span<const Element> elements);

/// Identifiers that lack the ones they belong to, one sentence each, for warnings: a label typed by hand may
/// well give a lot and no item number. What else marks the same thing can supply what is missing, so nothing
/// is refused. itemKnown: the item number came with the code in another way (a composite symbol).
std::vector<std::string> missingCompanions(std::span<const Element> elements, bool itemKnown);

} // namespace gw
