#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "gluing/pot.h"
#include "shop/acts.h"
#include "shop/mixstock.h"

/// Batches: what was mixed, and what was noted of it. Its clocks are worked out of the notes and the moment
/// asked about, so nothing runs while the program is closed.
namespace gw {

class ActBuilder;

/// What is said beside the mix itself.
struct MixRecording {
    std::string place {}; ///< where it stands; a new name makes a place
    std::string who {};
    std::string note {};
    /// The container a part was taken from, by the part's key; "-" for what did not come off the shelf. A
    /// part not named here is taken from what is good, first to go off first.
    std::map<std::string, std::string> from {};
};

/// Mixes a batch in one act: takes its parts out of their containers and writes the batch. A container may be
/// one that is to be tested first when a person names it, never one that is retired or whose lot is on hold.
/// Errors: those of mixFromShelf; Refused when the shelf does not cover a part, naming it; NotFound for a
/// container.
Result<ActDone> mixBatch(Shop& shop, const MixAsked& asked, const MixRecording& recording, ActTime time);

struct BatchNoteAsked {
    BatchNoteKind kind = BatchNoteKind::Remark;
    std::optional<Celsius> temperature {}; ///< of the glue: heat on and heat read
    std::optional<Amount> weight {}; ///< of vessel and contents together
    std::optional<Amount> amount {}; ///< used
    std::optional<JobId> job {}; ///< used
    std::string text {};
    std::string who {};
};
/// Notes what happened to a batch. Errors: NotFound; BadInput for what cannot be noted of such a batch or a
/// figure it cannot have; Refused when it is gone, less is left, or the time lies before the last note (a
/// clock set back).
Result<ActDone> noteBatch(
    Shop& shop, const std::string& idOrLabel, const BatchNoteAsked& asked, ActTime time);
/// The same as a step of a larger act: what a glue-up took from a pot. Answers what to say.
Result<std::string> addBatchNote(ActBuilder& act, const std::string& idOrLabel, const BatchNoteAsked& asked);

/// One line of a batch's story.
struct BatchNoteLine {
    EntryId id;
    BatchNoteKind kind = BatchNoteKind::Remark;
    Moment at;
    std::string text; ///< "On the heat at 62 °C"
    std::string who;
    bool undone = false;
};

/// A joint that was glued with a batch, with its clocks: "open", "closed", "unclamp", "full_load".
struct BatchJoint {
    EntryId note; ///< the use
    Moment spread;
    std::string jobName; ///< may be empty
    std::vector<PotDue> due;
};

/// A batch as it is at a moment.
struct BatchState {
    BatchRecord batch;
    Amount left;
    FamilyId family; ///< of glue; empty for shellac and dye
    std::string placeName;
    bool gone = false; ///< used up, thrown away, or its mixing undone
    PotState pot; ///< its clocks
    /// The worst of its clocks, of what was noted, and of what its parts were when they went in; a hold on a
    /// part's lot counts whenever it came.
    Verdict verdict = Verdict::NotKnown;
    std::vector<std::string> words; ///< why, as sentences, the gravest first; empty: nothing to say
    std::vector<BatchNoteLine> notes; ///< newest first
    /// Of its uses in the last days, gone or not, newest first; without the room's temperature at the mixing
    /// nothing is known of clamps.
    std::vector<BatchJoint> joints;

    /// Kept warm, chilled and warmed again, rather than mixed for the moment.
    bool isHotGlue() const;
};

/// The batches there are at a moment, newest first, with those that went within so many days before it. An
/// earlier moment sees only what was noted by then.
Result<std::vector<BatchState>> batchesAsOf(const Shop& shop, Moment asOf, Days goneWithin = Days { 0 });
/// One of them by its id or label code. Errors: NotFound, also when it was not mixed by then.
Result<BatchState> batchAsOf(const Shop& shop, const std::string& idOrLabel, Moment asOf);
/// The batch with an id or one of our label codes, however it was typed. Errors: NotFound.
Result<BatchRecord> findBatch(const Shop& shop, const std::string& idOrLabel);

/// A note in words, without a full stop.
std::string noteText(const BatchNote& note, Dimension dimension, UnitSystem units);

} // namespace gw
