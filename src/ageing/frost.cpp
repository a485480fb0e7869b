#include "ageing/frost.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include <boost/math/tools/toms748_solve.hpp>

namespace gw {

namespace {

constexpr int mostPhases = 32; // of one piece of air; a linear one has at most half a dozen

double hoursBetween(Moment from, Moment to) { return Hours(to - from).count(); }

/// Where a function that is not below 0 at low and below 0 at high crosses.
template <class Function> double crossing(Function f, double low, double high)
{
    const double atLow = f(low);
    if (atLow <= 0)
        return low;
    std::uintmax_t rounds = 100;
    const auto bracket = boost::math::tools::toms748_solve(
        f, low, high, atLow, f(high), boost::math::tools::eps_tolerance<double>(40), rounds);
    return (bracket.first + bracket.second) / 2;
}

} // namespace

FrostWalk::FrostWalk(const Response& response, Moment at, const Warmth& start)
    : m_response(response)
    , m_at(at)
    , m_known(start.temperature.has_value())
    , m_temperature(start.temperature ? start.temperature->value : 0)
    , m_share(m_known ? start.frozenShare : 0)
    , m_since(start.frozenSince)
{
    if (!m_known)
        return;
    // Contents from a class with another freezing point, or a figure set right: what cannot be is mended
    // here.
    const double freezes = response.freezesAt.value;
    if ((m_share <= 0 && m_temperature < freezes) || (m_share >= 1 && m_temperature > freezes)
        || (m_share > 0 && m_share < 1))
        m_temperature = freezes;
    if (m_share > countedShare && !m_since)
        m_since = at;
}

Warmth FrostWalk::warmth() const
{
    if (!m_known)
        return {};
    return { Celsius { m_temperature }, m_share, m_since };
}

Moment FrostWalk::moment(double after) const
{
    return m_at + std::chrono::round<std::chrono::milliseconds>(Hours { after });
}

void FrostWalk::count(double after)
{
    if (!m_since)
        m_since = moment(m_passed + after);
}

void FrostWalk::ended(double after)
{
    if (m_since)
        m_events.push_back({ *m_since, moment(m_passed + after) });
    m_since.reset();
}

/// Newton's law with linear air while the contents stay liquid, or frozen through. Answers the hours until
/// they come to the freezing point, or all of them.
double FrostWalk::still(double air, double slope, double hours, bool frozenThrough)
{
    // Measured from the freezing point, away from it; a frozen block is a liquid one looked at upside down.
    const double sign = frozenThrough ? -1 : 1;
    const double tau = (frozenThrough ? m_response.frozen : m_response.thawed).count();
    const double freezes = m_response.freezesAt.value;
    const double from = sign * (m_temperature - freezes);
    const double drive = sign * (air - freezes);
    const double rise = sign * slope;
    const double c = from - drive + rise * tau;
    const auto away = [&](double t) { return drive + rise * (t - tau) + c * std::exp(-t / tau); };

    const double driveAtEnd = drive + rise * hours;
    if (drive >= 0 && driveAtEnd >= 0) {
        if (hours != m_cachedHours) {
            m_cachedHours = hours;
            m_decayThawed = std::exp(-hours / m_response.thawed.count());
            m_decayFrozen = std::exp(-hours / m_response.frozen.count());
        }
        const double end = drive + rise * (hours - tau) + c * (frozenThrough ? m_decayFrozen : m_decayThawed);
        m_temperature = freezes + sign * std::max(0.0, end);
        return hours;
    }

    // It may turn once on the way.
    const double ratio = c == 0 ? -1 : rise * tau / c;
    const double turn = ratio > 0 && ratio < 1 ? -tau * std::log(ratio) : hours;
    double begin = 0;
    for (const double end : { std::min(turn, hours), hours }) {
        if (end > begin && away(end) < 0) {
            m_temperature = freezes;
            return crossing(away, begin, end);
        }
        begin = end;
    }
    m_temperature = freezes + sign * std::max(0.0, away(hours));
    return hours;
}

/// At the freezing point the heat that flows freezes or thaws. Answers the hours until all is thawed or all
/// is frozen, or all of them.
double FrostWalk::plateau(double air, double slope, double hours)
{
    const double drive = m_response.freezesAt.value - air;
    const double start = m_share;
    const auto share = [&](double t) { return start + (drive * t - slope * t * t / 2) / m_response.latent; };
    const double turn = slope == 0 ? hours : drive / slope;
    double begin = 0;
    for (const double piece : { turn > 0 && turn < hours ? turn : hours, hours }) {
        if (!(piece > begin))
            continue;
        double end = piece;
        const double there = share(piece);
        const bool melts = there <= 0;
        const bool freezesThrough = there >= 1;
        if (melts)
            end = there < 0 ? crossing(share, begin, piece) : piece;
        else if (freezesThrough)
            end = there > 1 ? crossing([&](double t) { return 1 - share(t); }, begin, piece) : piece;
        const bool passesCount = share(begin) <= countedShare && std::min(there, 1.0) > countedShare;
        if (passesCount && !m_since)
            count(crossing([&](double t) { return countedShare - share(t); }, begin, end));
        if (melts || freezesThrough) {
            m_share = melts ? 0 : 1;
            if (melts)
                ended(end);
            return end;
        }
        begin = piece;
    }
    m_share = share(hours);
    return hours;
}

/// One linear piece of air, phase by phase. Answers the hours passed: all, unless it is to stop once thawed.
double FrostWalk::passThrough(double air, double slope, double hours, bool untilThawed)
{
    const double freezes = m_response.freezesAt.value;
    m_passed = 0;
    for (int phase = 0; m_passed < hours && phase < mostPhases; ++phase) {
        const double now = air + slope * m_passed;
        const double left = hours - m_passed;
        const bool colder = now < freezes || (now == freezes && slope < 0);
        const bool warmer = now > freezes || (now == freezes && slope > 0);
        if (m_share <= 0 && (m_temperature > freezes || !colder)) {
            if (untilThawed)
                return m_passed;
            m_passed += still(now, slope, left, false);
        } else if (m_share >= 1 && (m_temperature < freezes || !warmer)) {
            m_passed += still(now, slope, left, true);
        } else {
            m_passed += plateau(now, slope, left);
        }
    }
    return m_passed;
}

void FrostWalk::pass(Celsius from, Celsius to, Moment until)
{
    const double hours = hoursBetween(m_at, until);
    if (!(hours > 0))
        return;
    if (!m_known)
        begin(from);
    passThrough(from.value, (to.value - from.value) / hours, hours, false);
    m_at = until;
}

void FrostWalk::thaw(Celsius air, Moment until)
{
    const double hours = hoursBetween(m_at, until);
    if (!(hours > 0) || !m_known || m_share <= 0)
        return;
    const double passed = passThrough(air.value, 0, hours, true);
    m_at = passed < hours ? std::min(until, moment(passed)) : until;
}

void FrostWalk::lose(Moment until)
{
    if (m_since)
        m_events.push_back({ *m_since, std::nullopt });
    m_since.reset();
    m_share = 0;
    m_known = false;
    m_at = std::max(m_at, until);
}

void FrostWalk::begin(Celsius air)
{
    m_known = true;
    m_share = 0;
    m_temperature = std::max(air.value, m_response.freezesAt.value);
}

} // namespace gw
