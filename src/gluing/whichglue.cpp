#include "gluing/whichglue.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "gluing/sentences.h"
#include "measure/number.h"

namespace gw {

namespace {

/// Worst last, as a person would rank them: what is not known stands below what is possible.
int rank(GateResult result)
{
    switch (result) {
    case GateResult::Pass:
        return 0;
    case GateResult::Warn:
        return 1;
    case GateResult::Unknown:
        return 2;
    case GateResult::Stop:
        break;
    }
    return 3;
}

std::string_view suits(GateResult result)
{
    switch (result) {
    case GateResult::Pass:
        return "right";
    case GateResult::Warn:
        return "possible";
    case GateResult::Stop:
        return "wrong";
    case GateResult::Unknown:
        break;
    }
    return "not known";
}

GlueReason fromTable(const char* about, const std::optional<Suitability>& said, const std::string& otherwise)
{
    if (!said || said->result == GateResult::Unknown)
        return { about, GateResult::Unknown, "Nothing is recorded for " + otherwise + "." };
    GlueReason reason { about, said->result, said->what + ": " + std::string(suits(said->result)) };
    reason.text = sentencesTogether(asSentence(reason.text), asSentence(said->reason));
    return reason;
}

GlueReason gapReason(const Family& family, double gapMm)
{
    const std::string now = millimetreWords(gapMm);
    if (!family.gapMaxMm)
        return { "gap", GateResult::Unknown, "What gap it bridges is not known." };
    const std::string most = millimetreWords(*family.gapMaxMm);
    if (gapMm > *family.gapMaxMm)
        return { "gap", GateResult::Stop,
            "A gap of " + now + " is too wide: it bridges " + most + " at most." };
    if (family.gapBestMm && gapMm > *family.gapBestMm)
        return { "gap", GateResult::Warn,
            "It bridges " + now + ", at most " + most + "; up to " + millimetreWords(*family.gapBestMm)
                + " is best." };
    return { "gap", GateResult::Pass, "It bridges " + now + ", at most " + most + "." };
}

/// A period piece should come apart again; conservation practice, for joints return within decades.
GlueReason undoingReason(const Family& family, bool period)
{
    const std::string how = asSentence(family.reversibleWith);
    const std::string piece = period ? "a period piece" : "this";
    switch (family.undoing) {
    case Undoing::Ready:
        return { "undoing", GateResult::Pass, sentencesTogether("It comes apart again:", how) };
    case Undoing::Hard:
        return { "undoing", GateResult::Warn, sentencesTogether("It comes apart hardly:", how) };
    case Undoing::None:
        // Over a coat of hide glue the joint still opens, which keeps it possible where nothing else holds.
        return { "undoing", GateResult::Warn,
            sentencesTogether("It does not come apart:", how) + " For " + piece
                + " only over a barrier coat of hide glue, written down, with the owner agreeing." };
    case Undoing::NotKnown:
        break;
    }
    return { "undoing", GateResult::Unknown, "How it comes apart is not known." };
}

bool asksToComeApart(const WhichGlueQuestion& question)
{
    return question.mustComeApart.value_or(question.period.value_or(false));
}

RankedGlue judged(const GlueCandidate& candidate, const WhichGlueQuestion& question)
{
    const Family& family = candidate.family;
    RankedGlue glue { family.id, family.name, GateResult::Pass, {}, family.undoing, family.reversibleWith };
    if (!question.jointName.empty())
        glue.reasons.push_back(fromTable("joint", candidate.joint, lowerFirst(question.jointName)));
    if (question.gapMm)
        glue.reasons.push_back(gapReason(family, *question.gapMm));
    if (asksToComeApart(question))
        glue.reasons.push_back(undoingReason(family, question.period.value_or(false)));
    if (question.place)
        glue.reasons.push_back(fromTable("place", candidate.place, "the place it will stand in"));
    if (question.load)
        glue.reasons.push_back(fromTable("load", candidate.load, "such a load"));
    if (candidate.residue)
        glue.reasons.push_back(fromTable("residue", candidate.residue, "what is left in the joint"));
    if (glue.reasons.empty())
        glue.reasons.push_back(
            { "joint", GateResult::Unknown, "Nothing was said that it could be judged by." });
    for (const GlueReason& reason : glue.reasons) {
        if (rank(reason.result) > rank(glue.standing))
            glue.standing = reason.result;
    }
    // What speaks loudest against it is what a person wants to read first.
    std::ranges::stable_sort(glue.reasons,
        [](const GlueReason& a, const GlueReason& b) { return rank(a.result) > rank(b.result); });
    return glue;
}

bool asksForUndoing(const RankedGlue& glue)
{
    return std::ranges::find(glue.reasons, "undoing", &GlueReason::about) != glue.reasons.end();
}

auto sortKey(const RankedGlue& glue)
{
    // Glue that stays for good is hardly ever put into a failed joint of an old piece (S8).
    int cares = glue.undoing == Undoing::None && asksForUndoing(glue) ? 2 : 0;
    for (const GlueReason& reason : glue.reasons)
        cares += rank(reason.result);
    const int undone = glue.undoing == Undoing::Ready ? 0 : glue.undoing == Undoing::Hard ? 1 : 2;
    return std::tuple(rank(glue.standing), cares, undone, glue.name);
}

std::vector<std::string> wouldAsk(const WhichGlueQuestion& question)
{
    std::vector<std::string> asks;
    if (question.jointName.empty())
        asks.emplace_back("Which joint it is.");
    if (!question.period && !question.mustComeApart)
        asks.emplace_back("Whether the piece is an old one, or must come apart again.");
    if (!question.gapMm)
        asks.emplace_back("How wide the gap in the dry joint is.");
    if (!question.place)
        asks.emplace_back("Where it will stand: dry, damp, outdoors or hot.");
    if (!question.load)
        asks.emplace_back("What it carries: little, a lasting load, or knocks.");
    return asks;
}

} // namespace

std::optional<ServicePlace> servicePlaceOfWord(std::string_view word)
{
    if (word == "dry")
        return ServicePlace::Dry;
    if (word == "damp")
        return ServicePlace::Damp;
    if (word == "outdoor" || word == "outdoors")
        return ServicePlace::Outdoor;
    if (word == "hot")
        return ServicePlace::Hot;
    return std::nullopt;
}

std::optional<Load> loadOfWord(std::string_view word)
{
    if (word == "light")
        return Load::Light;
    if (word == "lasting")
        return Load::Lasting;
    if (word == "shock")
        return Load::Shock;
    return std::nullopt;
}

std::string_view word(ServicePlace place)
{
    constexpr std::array<std::string_view, 4> words { "dry", "damp", "outdoor", "hot" };
    return words.at(static_cast<std::size_t>(place));
}

std::string_view word(Load load)
{
    constexpr std::array<std::string_view, 3> words { "light", "lasting", "shock" };
    return words.at(static_cast<std::size_t>(load));
}

Result<WhichGlueAnswer> whichGlue(const WhichGlueQuestion& question)
{
    if (question.candidates.empty())
        return fail(ErrorCode::NotFound,
            "The reference data knows no families of glue: verify the store under Shop.");
    if (question.gapMm && !(*question.gapMm >= 0 && *question.gapMm <= 25))
        return fail(ErrorCode::BadInput,
            "A gap of " + millimetreWords(*question.gapMm) + " in a joint cannot be: say 0 to 25 mm.");
    WhichGlueAnswer answer;
    answer.glues.reserve(question.candidates.size());
    for (const GlueCandidate& candidate : question.candidates)
        answer.glues.push_back(judged(candidate, question));
    std::ranges::stable_sort(
        answer.glues, [](const RankedGlue& a, const RankedGlue& b) { return sortKey(a) < sortKey(b); });
    answer.wouldAsk = wouldAsk(question);
    const bool anyRight = std::ranges::any_of(
        answer.glues, [](const RankedGlue& glue) { return glue.standing == GateResult::Pass; });
    answer.note
        = "Common practice ranks these; the label, the piece and its owner decide. Try it on scrap of "
          "the same wood first.";
    if (!anyRight && question.gapMm && *question.gapMm > 0)
        answer.note
            = "Nothing is right for it as it is: a joint closed up with wood lets thin glues in again. "
            + answer.note;
    return answer;
}

} // namespace gw
