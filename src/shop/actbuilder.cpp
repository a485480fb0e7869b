#include "shop/actbuilder.h"

#include <algorithm>
#include <unordered_set>

#include <QUuid>

#include "shop/batch.h"

namespace gw {

namespace {

bool sameText(const std::string& a, const std::string& b)
{
    return QString::fromStdString(a).trimmed().compare(
               QString::fromStdString(b).trimmed(), Qt::CaseInsensitive)
        == 0;
}

} // namespace

std::string newUuid() { return QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString(); }

ActBuilder::ActBuilder(Shop& shop, ActTime time)
    : m_shop(shop)
    , m_time(time)
    , m_act { newUuid() }
{
}

Result<ActDone> ActBuilder::run(
    Shop& shop, ActTime time, const std::function<Result<std::string>(ActBuilder&)>& steps)
{
    if (time.at > time.now)
        return fail(ErrorCode::BadInput,
            "An act cannot be written for a time to come (" + formatMoment(time.at)
                + "); give a time up to now.");

    ActDone done;
    auto written = shop.store().transact([&]() -> Result<void> {
        ActBuilder builder(shop, time);
        auto catalogue = shop.catalogue();
        if (!catalogue)
            return tl::unexpected(catalogue.error());
        builder.m_catalogue = std::move(*catalogue);

        auto said = steps(builder);
        if (!said)
            return tl::unexpected(said.error());
        if (auto appended = shop.store().append(builder.m_entries); !appended)
            return appended;
        if (auto appended = shop.store().appendNotes(builder.m_notes); !appended)
            return appended;

        done.act = builder.m_act;
        done.said = std::move(*said);
        if (!builder.m_entries.empty())
            done.entry = builder.m_entries.front().id;
        else if (!builder.m_notes.empty())
            done.entry = builder.m_notes.front().id;
        for (const BatchNote& note : builder.m_notes) {
            if (std::ranges::find(done.batches, note.batch) == done.batches.end())
                done.batches.push_back(note.batch);
        }
        std::unordered_set<ContainerId> touched;
        for (const Entry& entry : builder.m_entries) {
            if (entry.container && touched.insert(*entry.container).second)
                done.containers.push_back(*entry.container);
        }
        return {};
    });
    if (!written)
        return tl::unexpected(written.error());
    return done;
}

Result<Found> ActBuilder::take(const std::string& idOrLabel)
{
    auto container = findContainer(m_shop, idOrLabel);
    if (!container)
        return tl::unexpected(container.error());
    if (auto locked = m_shop.store().lockContainer(container->id); !locked)
        return tl::unexpected(locked.error());
    auto state = stateOf(m_shop, *container, m_time.now);
    if (!state)
        return tl::unexpected(state.error());
    if (!state->arrived)
        return fail(ErrorCode::NotFound,
            "The booking-in of " + container->label
                + " was undone; there is no such container on the shelf.");
    if (m_time.at < *state->arrived)
        return fail(ErrorCode::Refused,
            container->label + " arrived on " + spokenDate(dateOf(*state->arrived))
                + "; nothing can have happened to it here before that.");

    Found found { std::move(*container), std::move(*state), nullptr, nullptr };
    found.material = m_catalogue.material(found.container.material);
    found.cls = m_catalogue.classOf(found.container.material);
    if (!found.material || !found.cls)
        return fail(ErrorCode::StoreDamaged,
            "The store does not say what " + found.container.label
                + " holds; run verify and restore a backup.");
    return found;
}

Result<Found> ActBuilder::takeStanding(const std::string& idOrLabel)
{
    auto found = take(idOrLabel);
    if (found && found->state.history.retired)
        return fail(ErrorCode::Refused,
            found->container.label + " was retired on " + spokenDate(dateOf(*found->state.history.retired))
                + "; undo that first if it still stands here.");
    return found;
}

Result<Entry*> ActBuilder::takeOut(const Found& found, Amount amount, EntryKind kind)
{
    if (amount.milli <= 0)
        return fail(ErrorCode::BadInput, "Give an amount over zero, not " + say(amount) + ".");
    Amount left = found.state.left;
    bool isOpen = found.state.history.opened.has_value();
    for (const Entry& entry : m_entries) {
        if (entry.container != found.container.id)
            continue;
        left.milli += entry.deltaMilli;
        isOpen = isOpen || entry.kind == EntryKind::Opened;
    }
    if (amount.milli > left.milli)
        return fail(ErrorCode::Refused,
            "There is only " + say(left) + " in " + found.container.label + ", not " + say(amount)
                + "; count what is really there first.");
    // The first time something is taken out, the opened clock starts.
    if (!isOpen)
        add(EntryKind::Opened, found.container.id);
    Entry& taken = add(kind, found.container.id);
    taken.deltaMilli = -amount.milli;
    return &taken;
}

Result<BatchRecord> ActBuilder::takeBatch(const std::string& idOrLabel)
{
    auto batch = findBatch(m_shop, idOrLabel);
    if (!batch)
        return batch;
    if (auto locked = m_shop.store().lockBatch(batch->id); !locked)
        return tl::unexpected(locked.error());
    return batch;
}

BatchNote& ActBuilder::addNote(BatchNoteKind kind, const BatchId& batch)
{
    BatchNote note;
    note.id = EntryId { newUuid() };
    note.batch = batch;
    note.act = m_act;
    note.kind = kind;
    note.at = m_time.at;
    note.recorded = m_time.now;
    note.device = m_shop.device();
    return m_notes.emplace_back(std::move(note));
}

Entry& ActBuilder::add(EntryKind kind, const std::optional<ContainerId>& container)
{
    Entry entry;
    entry.id = EntryId { newUuid() };
    entry.act = m_act;
    entry.kind = kind;
    entry.container = container;
    entry.at = m_time.at;
    entry.recorded = m_time.now;
    entry.device = m_shop.device();
    return m_entries.emplace_back(std::move(entry));
}

Result<Amount> ActBuilder::inItsOwnUnit(const Found& found, Amount amount) const
{
    const Dimension own = found.container.capacity.dimension;
    const auto converted = convert(amount, own, densityOf(*found.cls, *found.material));
    if (!converted)
        return fail(ErrorCode::BadInput,
            found.container.label + " is counted in " + std::string(baseUnit(own)) + "; " + say(amount)
                + " cannot be turned into that.");
    return *converted;
}

Result<std::optional<PlaceId>> ActBuilder::placeNamed(const std::string& name)
{
    const std::string trimmed = QString::fromStdString(name).simplified().toStdString();
    if (trimmed.empty())
        return std::optional<PlaceId> {};
    for (const auto& [id, place] : m_catalogue.places) {
        if (id.text == trimmed || sameText(place.name, trimmed))
            return std::optional<PlaceId>(id);
    }
    PlaceRecord place;
    place.id = PlaceId { newUuid() };
    place.name = trimmed;
    if (auto saved = m_shop.store().savePlace(place); !saved)
        return tl::unexpected(saved.error());
    const PlaceId id = place.id;
    m_catalogue.places.emplace(id, std::move(place));
    return std::optional<PlaceId>(id);
}

} // namespace gw
