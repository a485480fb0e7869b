#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ageing/verdict.h"
#include "gluing/family.h"
#include "gluing/stood.h"

namespace gw {

/// One container as the check sees it.
struct StockItem {
    ContainerId container;
    std::string label; ///< what the person sees on it
    std::string place;
    Amount left;
    Verdict verdict = Verdict::NotKnown;
    std::string reason; ///< the first reason, as a sentence
    std::optional<Moment> goodUntil;
    bool opened = false;
};

/// One part of a stock candidate: granules; or resin, and hardener beside it.
struct StockPart {
    MaterialId material;
    std::string name;
    /// This part's amount for one unit (gram or millilitre) of ready glue: 1 for bottled glue, 1/(1 + water
    /// ratio) for granules, its share by mass for one side of a two-part glue. In the part's own dimension.
    double sharePerUnit = 1.0;
    Dimension dimension = Dimension::Mass;
    std::vector<StockItem> items;
};

/// One way of covering the need from the shelf.
struct StockCandidate {
    std::string name;
    bool typical = false; ///< of the class the job type names
    bool partnerMissing = false; ///< a two-part material whose other half this shop has never had
    std::vector<StockPart> parts;
    double waterPerUnit = 0; ///< grams of water to weigh for each gram of ready glue
};

enum class GateResult { Pass, Warn, Stop, Unknown };
std::string_view word(GateResult result); ///< "pass", "warn", "stop", "unknown"

/// What the reference tables say of the family on a joint, or over what is still on the surface.
struct Suitability {
    std::string what; ///< "Loose chair tenon", "Old white PVA"
    GateResult result = GateResult::Unknown; ///< Unknown when the tables have no row
    std::string reason; ///< in words; may be empty
};

/// A batch that is mixed already and would be used first.
struct BatchAtHand {
    BatchId id;
    std::string label;
    std::string name;
    Amount left;
    Verdict verdict = Verdict::NotKnown;
    std::vector<std::string> words; ///< why, as sentences, the gravest first
    bool isHotGlue = false; ///< which has a heat dose, and is to be hot when it goes on
    bool onTheHeat = false;
    std::optional<double> doseHours; ///< hours at 60 C
    std::optional<Moment> until; ///< when a cup or a pot of powder glue is to be used up, at the earliest
};

/// What is asked; anything not said is unknown, and stays unknown.
struct GlueUpQuestion {
    Family family;
    JobType job;
    int pieces = 1; ///< 1 or more
    std::optional<Celsius> air;
    std::optional<Celsius> wood;
    std::optional<double> humidity; ///< percent
    std::optional<double> woodMoisture; ///< percent
    std::optional<double> gapMm;
    /// Only where the person names a joint or a residue; a job type's own joint has been thought of already.
    std::optional<Suitability> joint, residue;
    /// Where the piece will stand, and what the joint will carry; only where the person says it.
    std::optional<Suitability> place, load;
    std::optional<Celsius> glue; ///< in the pot or bottle
    std::optional<double> surfaceAgeHours; ///< since the faces were last cut, planed or scraped
    std::optional<double> otherMoisture; ///< percent, of the other part where the two were measured
    std::optional<double> thicknessMm; ///< of the piece's thickest part
    std::string stoodName; ///< the place the wood stood in; empty: not said
    std::optional<StoodMoisture> stood; ///< what it holds by the air there
    std::optional<Celsius> stoodAt; ///< what that place was at last
    std::optional<bool> period; ///< an old piece, or a modern one
    std::optional<bool>
        barrier; ///< a barrier coat of hide glue is laid under a glue that does not come apart
    bool flammable = false; ///< what is used gives off vapour that burns
    std::optional<bool> ventilated; ///< the room is aired, with no flame or hot pot in it
    std::vector<StockCandidate> candidates;
    std::optional<BatchAtHand> batch; ///< used before anything is taken off the shelf
    UnitSystem units = UnitSystem::Metric; ///< of the sentences
};

/// One condition of the check. id is stable: "batch" (where one is at hand), "partner" (two-part only),
/// "age" (neither where the batch covers the need), "amount", "air", "wood",
/// "humidity", "moisture", "gap", "surface", "undoing"; "ventilation" for what is flammable; "glue", "joint",
/// "residue", "place" and "load" when they were said. Humidity takes in the dew point against the wood. For a
/// finish (no family id) a gate without a figure is left out, except the air's.
struct Gate {
    std::string id;
    std::string name; ///< "Stock", "Amount", ... for the screen
    GateResult result = GateResult::Unknown;
    std::string text; ///< a sentence with its figure and why
    std::string fix {}; ///< what to do about it; empty when nothing can be done here
    /// At worst a warning. Not known, it stays not known and is asked for, but as warnings alone are a go it
    /// does not hold the answer up.
    bool advisory = false;
};

struct Take {
    ContainerId container;
    std::string label;
    Amount amount;
    std::string why; ///< "first to go off that is fit"
};

struct WeighLine {
    std::string what; ///< "Hide granules 192 g", "Cold water"
    Amount amount;
};

struct GlueUpClocks {
    std::optional<Range<double>> openMinutes, closedMinutes;
    /// At the room's temperature when it is known, else at 20 C; none when the room is too cold to set it at
    /// all.
    std::optional<double> unclampMinutes;
    std::optional<double> fullLoadHours; ///< at 20 C
    std::string note; ///< a sentence on what makes these longer or shorter here
};

enum class GlueUpVerdict { Go, FixFirst, Stop, NotKnown };
std::string_view word(GlueUpVerdict verdict); ///< "go", "fix_first", "stop", "not_known"

struct GlueUpAnswer {
    GlueUpVerdict answer = GlueUpVerdict::NotKnown;
    std::string firstFix; ///< the first thing to fix, or to find out; empty when it is go
    std::vector<Gate> gates; ///< in the order a person would check them
    std::string stockName; ///< the candidate chosen; empty where a batch covers the need
    std::optional<BatchAtHand> batch; ///< the batch it was held against
    Amount fromBatch; ///< of the need, out of that batch; zero when there is none
    std::vector<Take> use; ///< containers in order
    std::vector<WeighLine> weighOut;
    Amount need; ///< ready glue
    std::optional<Amount> shortBy; ///< ready glue that the fit stock cannot cover
    GlueUpClocks clocks;
    std::string reversibleWith;
    std::vector<std::string> asks; ///< what it would need to know, as sentences; empty: nothing
};

/// The check before a glue-up. Only good stock is used or counted; among ways of covering the need the one
/// that leaves least to do wins, then the typical class, then the first to go off, so that more stock never
/// makes the answer worse. A wood moisture not said is estimated from where the wood stood, as a range that
/// passes only where all of it does; with no such place it stays unknown, and the estimate from the room's
/// air is only told. Stop gates that something can be done about make it fix first; a stop with no remedy
/// makes it stop; else any gate unknown makes it not known, unless it is advisory; warnings alone are a go.
/// Errors: BadInput for zero or more than 1000 pieces, a temperature, humidity, moisture or gap outside what
/// can be (the sentence names the figure).
Result<GlueUpAnswer> checkGlueUp(const GlueUpQuestion& question, Moment now);

} // namespace gw
