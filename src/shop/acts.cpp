#include "shop/acts.h"

#include "shop/batch.h"
#include "shop/ownlabels.h"
#include "shop/takings.h"

namespace gw {

namespace {

Result<void> takeOut(ActBuilder& act, const Found& found, Amount amount, const std::optional<JobId>& job)
{
    auto used = act.takeOut(found, amount, EntryKind::Used);
    if (!used)
        return tl::unexpected(used.error());
    (*used)->job = job;
    return {};
}

} // namespace

Result<ActDone> openContainer(Shop& shop, const std::string& container, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        if (const auto opened = found->state.history.opened)
            return fail(ErrorCode::Refused,
                found->container.label + " was opened on " + spokenDate(dateOf(*opened)) + " already.");
        act.add(EntryKind::Opened, found->container.id);
        return "Opened " + found->material->name + ".";
    });
}

Result<ActDone> useSome(
    Shop& shop, const std::string& container, Amount amount, const std::optional<JobId>& job, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        auto own = act.inItsOwnUnit(*found, amount);
        if (!own)
            return tl::unexpected(own.error());
        if (auto taken = takeOut(act, *found, *own, job); !taken)
            return tl::unexpected(taken.error());
        return "Used " + act.say(*own) + " of " + found->material->name + ".";
    });
}

Result<std::string> takeForJob(ActBuilder& act, const std::vector<Taking>& takings, JobRecord& job,
    const std::vector<Taking>& fromBatches)
{
    if (takings.empty() && fromBatches.empty())
        return fail(ErrorCode::BadInput, "Say what was used and how much of it.");
    if (job.id.empty())
        job.id = JobId { newUuid() };
    if (!job.at)
        job.at = act.time().at;
    if (auto saved = act.shop().store().saveJob(job); !saved)
        return tl::unexpected(saved.error());
    std::string said;
    for (const Taking& taking : takings) {
        auto found = act.takeStanding(taking.container);
        if (!found)
            return tl::unexpected(found.error());
        auto own = act.inItsOwnUnit(*found, taking.amount);
        if (!own)
            return tl::unexpected(own.error());
        if (auto taken = takeOut(act, *found, *own, job.id); !taken)
            return tl::unexpected(taken.error());
        said += (said.empty() ? "Used " : ", ") + act.say(*own) + " of " + found->material->name;
    }
    for (const Taking& taking : fromBatches) {
        const BatchNoteAsked used { BatchNoteKind::Used, {}, {}, taking.amount, job.id, {}, {} };
        if (auto noted = addBatchNote(act, taking.container, used); !noted)
            return tl::unexpected(noted.error());
        said
            += (said.empty() ? "Used " : ", ") + act.say(taking.amount) + " of the batch " + taking.container;
    }
    return said + (job.name.empty() ? "." : " for " + job.name + ".");
}

Result<ActDone> useForJob(Shop& shop, const std::vector<Taking>& takings, const JobRecord& job, ActTime time,
    const std::vector<Taking>& fromBatches)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) {
        JobRecord record = job;
        return takeForJob(act, takings, record, fromBatches);
    });
}

Result<ActDone> countLeft(Shop& shop, const std::string& container, Amount left, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        auto own = act.inItsOwnUnit(*found, left);
        if (!own)
            return tl::unexpected(own.error());
        if (own->milli < 0)
            return fail(ErrorCode::BadInput, "What is left cannot be less than nothing.");
        Entry& counted = act.add(EntryKind::Counted, found->container.id);
        counted.deltaMilli = own->milli - found->state.left.milli;
        return "Counted " + act.say(*own) + " of " + found->material->name + ".";
    });
}

Result<ActDone> moveTo(Shop& shop, const std::string& container, const std::string& place, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        auto to = act.placeNamed(place);
        if (!to)
            return tl::unexpected(to.error());
        if (!*to)
            return fail(ErrorCode::BadInput, "Say where it is moved to.");
        if (**to == found->state.place)
            return fail(ErrorCode::Refused,
                found->container.label + " stands in " + act.catalogue().placeName(**to) + " already.");
        act.add(EntryKind::Moved, found->container.id).place = **to;
        return "Moved " + found->material->name + " to " + act.catalogue().placeName(**to) + ".";
    });
}

Result<ActDone> decant(
    Shop& shop, const std::string& container, Amount amount, const std::string& place, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        auto own = act.inItsOwnUnit(*found, amount);
        if (!own)
            return tl::unexpected(own.error());
        auto to = act.placeNamed(place);
        if (!to)
            return tl::unexpected(to.error());

        auto label = freeOwnLabel(shop.store());
        if (!label)
            return tl::unexpected(label.error());
        ContainerRecord child = found->container;
        child.id = ContainerId { newUuid() };
        child.label = std::move(*label);
        child.pack.reset();
        child.serial.clear();
        child.price.reset();
        child.capacity = *own;
        child.parent = found->container.id;
        child.created = time.now;
        auto out = act.takeOut(*found, *own, EntryKind::Decanted);
        if (!out)
            return tl::unexpected(out.error());
        (*out)->other = child.id;
        if (auto added = shop.store().addContainer(child); !added)
            return tl::unexpected(added.error());
        Entry& in = act.add(EntryKind::Decanted, child.id);
        in.deltaMilli = own->milli;
        in.other = found->container.id;
        if (*to)
            in.place = **to;
        else if (!found->state.place.empty())
            in.place = found->state.place;
        return "Decanted " + act.say(*own) + " of " + found->material->name + " into " + child.label + ".";
    });
}

Result<ActDone> retire(Shop& shop, const std::string& container, const std::string& why, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        if (why.empty())
            return fail(ErrorCode::BadInput, "Say why it is retired: used up, gone off, froze, spilt.");
        Entry& retired = act.add(EntryKind::Retired, found->container.id);
        retired.deltaMilli = -found->state.left.milli;
        retired.note = why;
        return "Retired " + found->material->name + ": " + why + ".";
    });
}

Result<ActDone> recordTest(Shop& shop, const std::string& container, const TestResult& result, ActTime time)
{
    if (result.woodFailurePercent && !(*result.woodFailurePercent >= 0 && *result.woodFailurePercent <= 100))
        return fail(
            ErrorCode::BadInput, "Wood failure is a share of the broken face: give 0 to 100 percent.");
    if (result.passed && result.grainyAfterFrost)
        return fail(
            ErrorCode::BadInput, "Stock gone grainy after frost has not passed; record it as failed.");
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto found = act.takeStanding(container);
        if (!found)
            return tl::unexpected(found.error());
        Entry& tested = act.add(EntryKind::Tested, found->container.id);
        tested.passed = result.passed;
        tested.woodFailurePercent = result.woodFailurePercent;
        tested.grainy = result.grainyAfterFrost;
        tested.note = result.note;
        return found->material->name
            + (result.passed ? " passed its bench test." : " failed its bench test.");
    });
}

} // namespace gw
