#include "shop/gluechoice.h"

#include <algorithm>

#include <QString>

#include "gluing/sentences.h"
#include "measure/number.h"
#include "measure/quoted.h"
#include "shop/setup.h"

namespace gw {

namespace {

QString plain(const std::string& text) { return QString::fromStdString(text).simplified().toCaseFolded(); }

Result<FamilyRecord> findFamily(const Catalogue& catalogue, const std::string& text)
{
    std::string names;
    for (const auto& [id, family] : catalogue.families) {
        if (id.text == text || plain(family.name) == plain(text))
            return family;
        names += (names.empty() ? "" : ", ") + id.text;
    }
    return fail(
        ErrorCode::NotFound, "There is no family of glue " + inQuotes(text) + "; there are: " + names + ".");
}

const Figure* figureNamed(const FamilyRecord& family, const char* name)
{
    const auto found = std::ranges::find(family.figures, name, &Figure::figure);
    return found == family.figures.end() ? nullptr : &*found;
}

/// The figure to start from, else the middle of its range.
std::optional<double> startOf(const Figure* figure)
{
    if (!figure)
        return std::nullopt;
    if (figure->value)
        return figure->value;
    if (figure->low && figure->high)
        return (*figure->low + *figure->high) / 2;
    return std::nullopt;
}

Result<PotAnswer> figuresFor(const FamilyRecord& family)
{
    const Figure* spread = figureNamed(family, "spread");
    const auto grams = startOf(spread);
    if (!grams)
        return fail(ErrorCode::NotFound,
            "How much " + inSentence(family.name) + " takes for an area is not known: read the label.");
    PotAnswer answer;
    answer.family = family;
    answer.figures.spread = *grams;
    answer.figures.waste = startOf(figureNamed(family, "waste")).value_or(0.25);
    answer.source = spread->source;
    answer.confidence = spread->confidence;
    const auto fixed = startOf(figureNamed(family, "fixed_loss"));
    answer.figures.fixedLoss = fixed.value_or(0);
    if (!fixed)
        answer.notes.emplace_back(
            "What stays in pot, cup and brush is not known for this glue, and is left out.");
    return answer;
}

} // namespace

Result<PotAnswer> needOnePot(const Shop& shop, const PotAsked& asked)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto family = findFamily(*catalogue, asked.family.text);
    if (!family)
        return tl::unexpected(family.error());
    auto answer = figuresFor(*family);
    if (!answer)
        return answer;
    std::vector<PotWork> works;
    if (!asked.joints.empty() || asked.fillCm3 > 0) {
        auto work = potWorkOf(asked.name.empty() ? "These joints" : asked.name, asked.joints, asked.fillCm3,
            answer->figures, asked.pieces);
        if (!work)
            return tl::unexpected(work.error());
        works.push_back(*work);
    }
    for (const PotAsked::Other& other : asked.others) {
        const auto type = findJobType(shop, other.jobType);
        if (!type)
            return tl::unexpected(type.error());
        if (type->family != family->id)
            return fail(ErrorCode::BadInput,
                inQuotes(type->name) + " is not done with " + inSentence(family->name)
                    + ": it wants a pot of its own.");
        works.push_back({ type->name, type->areaCm2, type->spread, type->waste, type->extra, other.pieces });
    }
    auto need = needOnOnePot(works, answer->figures.fixedLoss);
    if (!need)
        return tl::unexpected(need.error());
    answer->need = std::move(*need);
    if (answer->need.fixedIsMost)
        answer->notes.push_back("More stays in pot, cup and brush (" + numberWords(answer->need.fixed, 1)
            + " g) than goes into the joints: do several jobs on one, or take a glue from the bottle.");
    if (answer->need.shares.size() > 1)
        answer->notes.push_back(
            "Done together they save " + numberWords(answer->need.saved, 1) + " g against a pot for each.");
    return answer;
}

Result<JobTypeRecord> saveJobTypeOf(Shop& shop, const PotAsked& asked, Moment now)
{
    const std::string name = QString::fromStdString(asked.name).simplified().toStdString();
    if (name.empty())
        return fail(ErrorCode::BadInput, "Say what the job type is to be called.");
    const auto answer = needOnePot(shop, asked);
    if (!answer)
        return tl::unexpected(answer.error());
    if (asked.joints.empty() || !asked.others.empty())
        return fail(
            ErrorCode::BadInput, "A job type is made of its own joints alone: leave the other jobs out.");
    JobTypeRecord record;
    const auto there = findJobType(shop, name);
    if (there && !there->id.text.starts_with("own_"))
        return fail(ErrorCode::Refused,
            "There is a job type " + inQuotes(there->name) + " already: choose another name.");
    if (there)
        record = *there;
    else
        record.id = { "own_" + plain(name).replace(u' ', u'_').toStdString() };
    auto each = potWorkOf(name, asked.joints, asked.fillCm3, answer->figures);
    if (!each)
        return tl::unexpected(each.error());
    record.name = name;
    record.family = answer->family.id;
    record.areaCm2 = each->areaCm2;
    record.spread = each->spread;
    record.waste = each->waste;
    record.fixedLoss = answer->figures.fixedLoss;
    record.extra = each->fillGrams;
    std::string note;
    for (const JointWork& joint : asked.joints)
        note += (note.empty() ? "" : "; ") + joint.words();
    record.note = note;
    record.source = "shop";
    record.confidence = answer->confidence;
    if (auto saved = shop.store().saveJobType(record, now); !saved)
        return tl::unexpected(saved.error());
    return record;
}

} // namespace gw
