#include "ageing/chill.h"

#include <cmath>

#include "ageing/airwalk.h"

namespace gw {

void Chill::add(const Chill& later)
{
    events.insert(events.end(), later.events.begin(), later.events.end());
    end = later.end;
    unwatchedRisk += later.unwatchedRisk;
    if (!riskSince)
        riskSince = later.riskSince;
    known = known && later.known;
}

void walk(AirPath& path, FrostWalk& contents, Moment to)
{
    while (contents.at() < to)
        walkPiece(path.next(contents.at(), to), contents);
}

void walkPiece(const AirPath::Piece& piece, FrostWalk& contents)
{
    switch (piece.kind) {
    case AirPath::Piece::Kind::Watched:
        contents.pass(piece.from, piece.to, piece.until);
        break;
    case AirPath::Piece::Kind::Assumed:
        contents.thaw(piece.to, piece.until);
        contents.pass(piece.from, piece.from, piece.until);
        break;
    case AirPath::Piece::Kind::Unsure:
        contents.lose(piece.until);
        break;
    }
}

namespace {

void addUnsure(const AirPath::Piece& piece, Moment at, Chill& chill)
{
    if (piece.kind != AirPath::Piece::Kind::Unsure)
        return;
    chill.unwatchedRisk += daysBetween(at, piece.until);
    if (!chill.riskSince)
        chill.riskSince = at;
    chill.known = chill.known && piece.known;
}

/// Hours of a linear piece spent below a limit.
double shareBelow(double from, double to, double limit)
{
    if (from < limit && to < limit)
        return 1;
    if (from >= limit && to >= limit)
        return 0;
    const double below = from < limit ? limit - from : limit - to;
    return below / std::abs(to - from);
}

} // namespace

Chill chillAlong(const Air& air, Moment from, Moment to, const Response& response, const Warmth& start)
{
    Chill chill;
    AirPath path(air, response.freezesAt);
    FrostWalk contents(response, from, start);
    if (from >= to)
        addUnsure(path.next(from, from), from, chill);
    while (contents.at() < to) {
        const Moment at = contents.at();
        const AirPath::Piece piece = path.next(at, to);
        addUnsure(piece, at, chill);
        walkPiece(piece, contents);
    }
    chill.events = contents.events();
    chill.end = contents.warmth();
    return chill;
}

Chill chillOf(const Trace& trace, const AssumedRanges& assumed, Moment from, Moment to,
    const Contents& contents, const Warmth& start)
{
    return chillAlong({ &trace, assumed }, from, to, responseOf(contents), start);
}

Below belowAlong(const Air& air, Moment from, Moment to, Celsius limit)
{
    Below below;
    AirPath path(air, limit);
    Moment at = from;
    do {
        const AirPath::Piece piece = path.next(at, to);
        if (piece.kind == AirPath::Piece::Kind::Unsure) {
            below.unwatchedRisk += daysBetween(at, piece.until);
            if (!below.riskSince)
                below.riskSince = at;
        } else if (piece.kind == AirPath::Piece::Kind::Watched) {
            below.watched
                += daysBetween(at, piece.until) * shareBelow(piece.from.value, piece.to.value, limit.value);
        }
        at = piece.until;
    } while (at < to);
    return below;
}

Below belowOf(const Trace& trace, const AssumedRanges& assumed, Moment from, Moment to, Celsius limit)
{
    return belowAlong({ &trace, assumed }, from, to, limit);
}

} // namespace gw
