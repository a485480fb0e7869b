#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ageing/climate.h"
#include "ageing/frost.h"
#include "ageing/history.h"
#include "ageing/life.h"

namespace gw {

/// Is this stock still good? In the order of how bad it is: worst() picks the later one of two.
enum class Verdict { Good, TestFirst, NotKnown, DoNotUse };

Verdict worst(Verdict a, Verdict b);
/// "good", "test_first", "do_not_use", "not_known": the words of the JSON answers.
std::string_view word(Verdict verdict);
std::optional<Verdict> verdictOfWord(std::string_view word);

/// One reason. code is stable: "printed_date", "sealed_life", "opened_life", "life_not_known",
/// "age_not_known", "place_not_known", "does_not_age", "frozen", "frost_not_known", "may_have_crystallised",
/// "too_hot", "bench_test_passed", "bench_test_failed", "lot_on_hold", "retired". text is one or more
/// sentences with date and figure, ready to read aloud.
struct Reason {
    std::string code;
    Verdict verdict = Verdict::Good; ///< what this reason alone would say
    std::string text;
    std::optional<Moment> when;
};

/// How much of a life clock is used, by the class's figure even where a label's date beats it: 1 is all of
/// it. Not known when figures or places are missing.
struct ClockUse {
    bool applies = false; ///< false when the thing does not age by this clock, or is not opened yet
    bool known = false;
    Range<double> used {};
    Days unwatched { 0 };
};

/// None: the reasons have no text, and one of heat no moment of its own, but what began to count then. All
/// else is the same, at a fraction of the time: for a whole shelf of which little is shown.
enum class Wording { Full, None };

struct Judgement {
    Verdict verdict = Verdict::NotKnown;
    std::vector<Reason> reasons; ///< never empty; worst first
    ClockUse sealed;
    ClockUse opened;
    /// How often it froze, its parents' frosts included. None: not known, as there was time nobody watched in
    /// which it may have frozen; or not counted, for what frost does nothing to and for resin.
    std::optional<int> frostEvents;
    std::vector<FrostEvent> frosts; ///< those known, in time order
    bool frozenNow = false; ///< the last of them is not over
    /// When a verdict that is good now stops being so where it stands now, under that place's usual climate:
    /// the pessimistic clock reaches the low end of the life, the printed date, a test's grant, or a season
    /// of frost or heat. None when the verdict is not good, never runs out (a hundred years), or is not
    /// known.
    std::optional<Moment> goodUntil;
};

/// The verdict on a container as of a moment: the worst of its reasons. What happened later is not seen.
/// - Clocks: pessimistic age past the high end of the life: do not use; past the low end only: test first. A
///   beginning, a life or, where temperature matters, a place not known: not known, or do not use where even
///   what is certain, or the worst place there is, has used it up.
/// - Label: use-by gone by: do not use; best-before gone by: test first. A printed date to come stands in for
///   the class's sealed life, opened or not, so the made date does not matter; warmth since arrival brings it
///   forward to test first, cold never puts it off. Opened, the opened clock counts besides.
/// - Heat: above the storage limit the clock counts on; up to 5 C above it that is all (a reason without
///   weight), more is test first.
/// - Frost: the contents, not the air, freeze. More events than the label or the class stands (none, for what
///   frost harms, where both are silent), one of them since the last passed bench test: test first. Fewer: a
///   reason without weight. Frozen now: test first, and thaw it before that. Where nobody watched and it may
///   have been below its freezing point: not known for what frost harms, test first for what comes back. An
///   assumed range counts as though it had happened, since nobody knows that it did not.
/// - Resin that crystallises does so without frost, and comes back by warming: three days (assumption) below
///   its storage limit, or any that nobody watched, are test first; less is a reason without weight.
/// - Bench test: failed or grainy: do not use, for good. Passed: settles heat and frost up to a day after it;
///   and the first pass whose time (testGrant) reaches past the moment age stopped being good makes age good
///   that long, once. A pass a day early is worth as much as one a day late; an idle one is not used up.
/// - Hold and retirement: do not use, whatever else.
///
/// So knowing less (no made date, no place, a wider range, found undated) never makes the verdict better, nor
/// does time without a new test; given that a made date left out lies within timeInTrade.
Judgement judge(const History& history, const LifeFigures& figures, const Climate& climate, Moment asOf,
    Wording wording = Wording::Full);

/// The date an unopened container would be good until if it were opened then: for labels and for choosing a
/// pack. None as for Judgement::goodUntil. One that is open already answers for itself.
std::optional<Moment> goodUntilIfOpened(
    const History& history, const LifeFigures& figures, const Climate& climate, Moment openedAt);

} // namespace gw
