#pragma once

#include <string>

#include "shop/actbuilder.h"

namespace gw {

/// The part of undo() that concerns batches: reverses the notes of an act. Answers what to say when the
/// entry named is one of them; empty when it is not. Errors: Refused, with what to undo first.
Result<std::string> undoNotes(ActBuilder& act, const ActId& undone, const EntryId& named);

} // namespace gw
