#include "exchange/readingsfile.h"

#include "exchange/readingsreader.h"
#include "exchange/readingsstream.h"

namespace gw {

namespace {

/// A file that is hopeless after so many rows is not read to its end.
constexpr std::int64_t enoughRows = 10'000;

} // namespace

Result<ReadingsRead> readReadings(const QString& path, const ReadingsLayout& layout, Moment now,
    const TakeReadings& take, const ReadingsProgress& progress, const TakeDays& takeDays)
{
    auto pieces = TextPieces::open(path);
    if (!pieces)
        return tl::unexpected<Error>(pieces.error());
    TextPieces& file = **pieces;
    ReadingsReader reader(file.name(), layout, now, take, takeDays);
    CsvRows rows(layout.delimiter, [&](const CsvRow& row) { return reader.add(row); });
    bool goOn = true;
    bool cancelled = false;
    while (goOn) {
        const auto piece = file.next();
        if (!piece)
            return tl::unexpected<Error>(piece.error());
        if (piece->empty())
            break;
        goOn = rows.feed(*piece) && !(reader.rows() > enoughRows && reader.mostlyUnreadable());
        if (progress && goOn && !progress(file.done(), file.bytes())) {
            cancelled = true;
            goOn = false;
        }
    }
    if (rows.openQuoteLine() > 0)
        return tl::unexpected<Error>(openQuote(file.name(), rows.openQuoteLine()));
    if (goOn)
        rows.finish();
    return reader.finish(cancelled);
}

} // namespace gw
