#pragma once

#include <string>
#include <utility>
#include <vector>

#include "gluing/glueup.h"

/// Families, jobs and shelves for the tests of the check before a glue-up. The families' figures are common
/// practice as in the project's reference data (handbook for hot glue's temperature); the shop's names are
/// invented.
namespace gw::test {

inline Moment day(int year, unsigned month, unsigned dayOfMonth)
{
    return Moment { std::chrono::sys_days {
        std::chrono::year { year } / std::chrono::month { month } / std::chrono::day { dayOfMonth } } };
}

inline const Moment today = day(2026, 6, 15) + std::chrono::hours { 9 };

inline Family hotHide()
{
    Family f;
    f.id = { "hot_hide" };
    f.name = "Hot hide glue";
    f.glueTemperature = Range<Celsius> { { 60 }, { 63 } };
    f.airMin = Celsius { 20 };
    f.airMax = Celsius { 35 };
    f.airBest = Range<Celsius> { { 23 }, { 30 } };
    f.woodMin = Celsius { 20 };
    f.woodBest = Range<Celsius> { { 30 }, { 40 } };
    f.woodMoisture = Range<double> { 6, 11 };
    f.humidity = Range<double> { 30, 65 };
    f.gapBestMm = 0.05;
    f.gapMaxMm = 0.15;
    f.openMinutes = Range<double> { 1, 3 };
    f.closedMinutes = Range<double> { 0.5, 1 };
    f.unclampMinutes = 60;
    f.fullLoadHours = 24;
    f.coldClampFactor = 1.0;
    f.reversibleWith = "Heat with water";
    return f;
}

inline Family epoxy()
{
    Family f = hotHide();
    f.id = { "epoxy_thick" };
    f.name = "Epoxy, thickened";
    f.glueTemperature = Range<Celsius> { { 18 }, { 30 } };
    f.airMin = Celsius { 15 };
    f.airMax = Celsius { 30 };
    f.airBest = Range<Celsius> { { 20 }, { 27 } };
    f.woodMin = Celsius { 15 };
    f.woodBest = Range<Celsius> { { 20 }, { 25 } };
    f.woodMoisture = Range<double> { 5, 13 };
    f.humidity = Range<double> { 20, 65 };
    f.gapBestMm = 0.5;
    f.gapMaxMm = 5;
    f.openMinutes = Range<double> { 20, 60 };
    f.closedMinutes.reset();
    f.unclampMinutes = 600;
    f.fullLoadHours = 72;
    f.coldClampFactor = 2.0;
    return f;
}

/// Full reglue of a chair: 37.4 g of hot glue.
inline JobType chair()
{
    return { .id = { "chair_full" },
        .name = "Chair, full reglue",
        .family = { "hot_hide" },
        .typicalClass = { "hide_granules_192" },
        .dimension = Dimension::Mass,
        .areaCm2 = 492.8,
        .spread = 350,
        .waste = 0.3,
        .fixedLoss = 15,
        .extra = 0,
        .perMonth = 2,
        .source = "common practice",
        .confidence = "medium" };
}

/// A leg rebuilt with epoxy: 21.7 g mixed.
inline JobType leg()
{
    JobType job = chair();
    job.id = { "leg_shatter" };
    job.name = "Shattered leg rebuilt";
    job.family = { "epoxy_thick" };
    job.typicalClass = { "epoxy_resin" };
    job.areaCm2 = 166.1;
    job.spread = 300;
    job.waste = 0.2;
    job.fixedLoss = 5;
    job.extra = 10.75;
    return job;
}

inline StockItem item(const std::string& label, double left, Verdict verdict = Verdict::Good,
    std::optional<Moment> goodUntil = day(2027, 1, 1), bool opened = false)
{
    const char* reason = verdict == Verdict::Good ? "Nothing speaks against it."
        : verdict == Verdict::TestFirst ? "Opened 14 months ago, and its opened life is 12 to 24 months."
        : verdict == Verdict::DoNotUse  ? "Its printed date was 1 January 2026."
                                        : "When it was made is not known.";
    return { { "id-" + label }, label, "Dry cupboard", grams(left), verdict, reason,
        verdict == Verdict::Good ? goodUntil : std::nullopt, opened };
}

inline StockPart part(const std::string& name, double share, std::vector<StockItem> items)
{
    return { { "material-" + name }, name, share, Dimension::Mass, std::move(items) };
}

/// Granules at 1.8 : 1.
inline StockCandidate granules(
    std::vector<StockItem> items, bool typical = true, std::string name = "Hide granules")
{
    return { .name = name,
        .typical = typical,
        .partnerMissing = false,
        .parts = { part(name, 1 / 2.8, std::move(items)) },
        .waterPerUnit = 1.8 / 2.8 };
}

/// Resin and hardener, 100 : 41.3 by mass.
inline StockCandidate twoPart(std::vector<StockItem> resin, std::vector<StockItem> hardener)
{
    return { .name = "Epoxy resin",
        .typical = true,
        .partnerMissing = false,
        .parts = { part("Epoxy resin", 100 / 141.3, std::move(resin)),
            part("Slow hardener", 41.3 / 141.3, std::move(hardener)) },
        .waterPerUnit = 0 };
}

/// A chair, everything said and everything right: the answer is go.
inline GlueUpQuestion rightChair()
{
    GlueUpQuestion q;
    q.family = hotHide();
    q.job = chair();
    q.air = Celsius { 24 };
    q.wood = Celsius { 32 };
    q.humidity = 46;
    q.woodMoisture = 8.5;
    q.gapMm = 0.05;
    q.candidates = { granules({ item("H1", 400) }) };
    return q;
}

/// A leg, everything said and everything right: the answer is go.
inline GlueUpQuestion rightLeg()
{
    GlueUpQuestion q = rightChair();
    q.family = epoxy();
    q.job = leg();
    q.air = Celsius { 22 };
    q.wood = Celsius { 21 };
    q.candidates = { twoPart({ item("R1", 300) }, { item("S1", 120) }) };
    return q;
}

inline const Gate& gate(const GlueUpAnswer& answer, std::string_view id)
{
    for (const Gate& g : answer.gates) {
        if (g.id == id)
            return g;
    }
    static const Gate none { "none", "none", GateResult::Unknown, "no such gate", {} };
    return none;
}

} // namespace gw::test
