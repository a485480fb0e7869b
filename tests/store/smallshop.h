#pragma once

#include "store/store.h"

namespace gw::test {

/// A moment so many minutes into the tests' day.
Moment minute(int minutes);

/// A few rows of reference data, in the columns of the files.
std::vector<ReferenceTable> smallReference();

Figure figureOf(const std::string& name, std::optional<double> value, const std::string& unit);
MaterialRecord whiteGlue(); ///< of the class pva_white
PlaceRecord shelf();
ContainerRecord bottle(
    const std::string& name); ///< of white glue, lot "L1"; its id and label are made from the name

/// An entry on such a bottle. The id is made from the name, the act from the id.
Entry entryOn(
    const std::string& bottle, EntryKind kind, std::int64_t deltaMilli, const std::string& name, Moment at);

/// Fifty grams mixed from such a bottle and water ten minutes in; its id and label are made from the name.
BatchRecord potOf(const std::string& bottle, const std::string& name);
BatchNote noteOn(const BatchRecord& batch, BatchNoteKind kind, const std::string& name, Moment at);
/// Writes such a batch with the entry that took its part and the note of its mixing, in one transaction.
Result<void> mix(Store& store, const BatchRecord& batch);
/// A chair glued with bottle "a" under job "job-1", with every kind of thing that is kept of it.
GlueUpRecord gluedChair();

/// Reference data, white glue and a shelf; then bottles "a" and "b", each arrived with 500 g.
void stock(Store& store);

} // namespace gw::test
