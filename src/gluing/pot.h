#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "gluing/family.h"
#include "gluing/mixing.h"
#include "measure/moment.h"

/// The clocks of a batch that is in use: a pot of hot glue, a cup of epoxy, a jar of something mixed.
/// Functions of what was noted and of now; what was not noted stays not known. Figures are those of the
/// recipe.
namespace gw {

enum class PotEventKind {
    SoakBegan,
    Soaked, ///< found swollen through
    HeatOn, ///< the bath is on, or now at another temperature
    HeatOff, ///< left to cool where it stands
    ToppedUp, ///< hot water put back
    Weighed,
    Chilled, ///< into the refrigerator
    Frozen, ///< into the freezer
    Used,
    ThrownAway
};

struct PotEvent {
    PotEventKind kind = PotEventKind::SoakBegan;
    Moment at;
    std::optional<Celsius> temperature; ///< heat on: of the glue; none: not read
    std::optional<double> grams; ///< pot and glue, as weighed then
};

/// What is to be done or watched next. One moment where it is known to the moment.
struct PotDue {
    std::string
        key; ///< "soaked", "dose_late", "dose_over", "spoils", "cup", "working", "unclamp", "full_load"
    Range<Moment> when;
    std::string text; ///< a sentence
};

enum class PotStands { Out, Soaking, Hot, Cold, Frozen };

enum class DoseBand { NotKnown, Early, Late, Over };

struct PotState {
    bool gone = false; ///< thrown away
    /// Hot glue: where it is now, since when, and how hot it was when last read since.
    PotStands stands = PotStands::Out;
    std::optional<Moment> standsSince;
    std::optional<Celsius> temperature;
    std::optional<Moment> heatSince; ///< hot now, at one temperature or another
    std::optional<double> doseHours; ///< hours at 60 C; none: a temperature is missing
    Range<double> doseRange; ///< by the range of the factor; as far as it is known
    DoseBand band = DoseBand::NotKnown;
    int reheats = 0;
    Days chilledFor { 0 }; ///< all days in the refrigerator
    std::optional<double> topUpGrams; ///< water missing by the last two weighings
    Range<double> spoilage; ///< share of the keeping time used, 1 is all of it
    std::vector<PotDue> due; ///< the first to come first, those past among them
    std::vector<std::string> words; ///< sentences, the gravest first

    const PotDue* dueFor(std::string_view key) const;
};

/// How much faster warmth spends hide glue for each 10 C: 2.8, between 2.0 and 3.2. A model for colouring a
/// warning only: published work measures different things.
double hoursAt60(double hours, Celsius temperature);

/// Errors: BadInput for an event before the batch was mixed, before the event ahead of it or after now, and
/// for a temperature the glue cannot have; NotFound for a figure the recipe lacks.
struct HotGluePot {
    GlueForm form = GlueForm::Granules;
    Moment mixed;
    std::vector<PotEvent> events; ///< in time order
};
Result<PotState> stateOf(const HotGluePot& pot, const Recipe& recipe, Moment now);

struct EpoxyCup {
    Moment mixed;
    double grams = 0;
    std::optional<Celsius> room; ///< none: the cup's time is not known
    std::optional<PotLife> label; ///< none: the same
    std::optional<Moment> thrownAway;
};
/// Errors: BadInput for a mass that is not over 0, for a cup mixed after now.
Result<PotState> stateOf(const EpoxyCup& cup, const Recipe& recipe, Moment now);

enum class Keeping { ShellacWaxy, ShellacDewaxed, Casein, UreaPowder, Dye };

/// Something that keeps for so long after mixing. Errors as above.
struct KeptBatch {
    Keeping kind = Keeping::ShellacDewaxed;
    Moment mixed;
    std::optional<Celsius> room; ///< urea powder: its time goes by it
    std::optional<Moment> thrownAway;
};
Result<PotState> stateOf(const KeptBatch& batch, const Recipe& recipe, Moment now);

/// The clocks of a joint from the moment glue was spread, by the family's figures at 20 C. Below 20 C the
/// clamps stay longer by the family's factor; warmth is given no credit. Without an air temperature nothing
/// is said of clamps.
std::vector<PotDue> jointClocks(const Family& family, Moment spread, std::optional<Celsius> air);

} // namespace gw
