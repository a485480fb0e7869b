#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ageing/trace.h"
#include "measure/error.h"
#include "store/batchrecords.h"
#include "store/glueuprecords.h"
#include "store/orderrecords.h"
#include "store/records.h"

namespace gw {

class Database;

/// Where a store is: a file path, or "postgresql://..." with credentials by libpq's own conventions.
struct StoreLocation {
    std::string where;
    bool isPostgres() const;
    std::string shown() const; ///< without a password, for sentences
};

struct OpenOptions {
    Moment now;
    std::string
        backupFolder; ///< where an older store is backed up before it is migrated; empty: beside the file
    bool create = true; ///< make the store when there is none; else NotFound
    int lockWaitMs = 5000; ///< how long a write waits for another program's before it is StoreLocked
};

/// One table of db/reference, as text cells; names and columns are those of the files.
struct ReferenceTable {
    std::string name; ///< file name without ending, e.g. "class_figures"
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows;
};

/// The result of verify and backup: what was looked at, and every problem found, as sentences.
struct StoreReport {
    bool ok = false;
    std::string engine; ///< "sqlite" or "postgresql"
    int schemaVersion = 0;
    std::int64_t containers = 0;
    std::int64_t entries = 0;
    std::vector<std::string> problems;
};

/// The shop's store, on one engine or the other through the same SQL. Use it on one thread only: the one that
/// opened it. Every call answers or says why not; a failed write leaves nothing half-written.
class Store {
public:
    /// Opens, and when needed makes or migrates. An older store is backed up first; a newer, foreign or
    /// damaged one is refused.
    static Result<std::unique_ptr<Store>> open(const StoreLocation& location, const OpenOptions& options);
    ~Store();
    Store(const Store&) = delete;
    Store& operator=(const Store&) = delete;

    const StoreLocation& location() const;
    bool isNew() const; ///< made by this open
    int schemaVersion() const;

    /// Runs an act in one transaction: commits when it answers, rolls back when it fails. Not nested.
    Result<void> transact(const std::function<Result<void>()>& act);
    /// Runs several reads so that all of them see the store at one moment. Writing in it is refused or
    /// undone.
    Result<void> readTogether(const std::function<Result<void>()>& act) const;

    // Reference data (db/reference)
    /// Puts the reference data in, or refreshes it, in one transaction, leaving every figure the shop changed
    /// as it is.
    Result<void> refreshReference(const std::vector<ReferenceTable>& tables, const std::string& edition);
    Result<std::string> referenceEdition() const; ///< empty when none is loaded
    /// One table as it was put in, without what the shop changed; rows by key. NotFound for no such table.
    Result<ReferenceTable> reference(const std::string& table) const;
    Result<std::vector<ClassRecord>> classes() const; ///< with figures and pictograms, by name
    Result<std::vector<FamilyRecord>> families() const;
    Result<std::vector<SourceRecord>> sources() const;
    /// The shop's own figure over the reference's; all three none takes the shop's away again.
    Result<void> setClassFigure(const ClassId& id, const std::string& figure, std::optional<double> value,
        std::optional<double> low, std::optional<double> high, Moment now);

    // What the shop buys and where it stands
    Result<void> saveMaterial(const MaterialRecord& material); ///< new or changed, with its label figures
    Result<std::vector<MaterialRecord>> materials() const; ///< by name
    /// How the made date of a material was last read from its lot code (codes/lotdate.h: LotDate::key).
    Result<void> setLotDateReading(const MaterialId& material, const std::string& readAs);
    Result<std::optional<std::string>> lotDateReading(const MaterialId& material) const;
    /// The photograph of a material's label; a new one takes the place of the old. BadInput when it is too
    /// large.
    Result<void> saveLabelPhoto(const MaterialId& material, const LabelPhoto& photo);
    Result<std::optional<LabelPhoto>> labelPhoto(const MaterialId& material) const;
    Result<void> savePack(const PackRecord& pack); ///< Conflict when another pack carries its GTIN
    Result<std::vector<PackRecord>> packs() const;
    Result<std::optional<PackRecord>> packByGtin(const std::string& gtin14) const;
    Result<void> saveCase(const CaseRecord& packedCase); ///< new or changed
    Result<std::optional<CaseRecord>> caseByGtin(const std::string& gtin14) const;
    Result<void> savePlace(const PlaceRecord& place); ///< Conflict when the name is taken
    Result<std::vector<PlaceRecord>> places() const; ///< by name
    Result<void> saveJobType(const JobTypeRecord& jobType, Moment now); ///< marks it changed by the shop
    Result<std::vector<JobTypeRecord>> jobTypes() const; ///< by name
    Result<std::vector<ConsumableRecord>> consumables() const;
    Result<void> saveJob(const JobRecord& job);
    Result<std::vector<JobRecord>> jobs() const; ///< newest first

    // The ledger
    Result<void> addContainer(const ContainerRecord& container); ///< Conflict when the label code is taken
    Result<std::vector<ContainerRecord>> containers() const;
    Result<std::optional<ContainerRecord>> container(const ContainerId& id) const;
    Result<std::optional<ContainerRecord>> containerByLabel(const std::string& label) const;
    /// Takes the container for this act until it ends, so that two tablets cannot both take the last of it.
    Result<void> lockContainer(const ContainerId& id);
    /// Appends entries. An entry sent again with the same id and content is the same entry: no error, nothing
    /// doubled.
    Result<void> append(const std::vector<Entry>& entries);
    Result<std::optional<Entry>> entry(const EntryId& id) const;
    Result<std::vector<Entry>> entriesOfAct(const ActId& act) const;
    /// Every entry that happened up to a moment, by container, then time, then when it was recorded; lot
    /// entries last.
    Result<std::vector<Entry>> entriesUpTo(Moment moment) const;
    /// The entries of one container, and of its lot, up to a moment, in time order.
    Result<std::vector<Entry>> entriesOf(const ContainerId& id, Moment upTo) const;
    Result<std::vector<Entry>> latestEntries(int count) const; ///< newest first

    // Batches: what was mixed, and what was noted of it
    /// Conflict when its label code is on a container or another batch. Sent again it is the same batch.
    Result<void> addBatch(const BatchRecord& batch);
    /// Those mixed by a moment, newest first, without those that were used up, thrown away or undone by
    /// another: the same moment leaves what stands, the earliest one there is leaves all.
    Result<std::vector<BatchRecord>> batches(Moment madeBy, Moment goneBy) const;
    Result<std::optional<BatchRecord>> batch(const BatchId& id) const;
    Result<std::optional<BatchRecord>> batchByLabel(const std::string& label) const;
    /// Takes the batch for this act until it ends, as lockContainer does.
    Result<void> lockBatch(const BatchId& id);
    /// As append: a note sent again is the same note.
    Result<void> appendNotes(const std::vector<BatchNote>& notes);
    Result<std::optional<BatchNote>> batchNote(const EntryId& id) const;
    Result<std::vector<BatchNote>> batchNotesOfAct(const ActId& act) const;
    Result<std::vector<BatchNote>> batchNotes(const BatchId& id, Moment upTo) const; ///< in time order
    // What is kept of glue-ups besides their entries
    /// Writes one with its photographs, all or nothing. Errors: BadInput for a picture that is too large.
    Result<void> addGlueUp(const GlueUpRecord& record, const std::vector<std::string>& jpegs);
    /// Newest first, those undone too, without facts, gates and containers; glueUp() has all.
    Result<std::vector<GlueUpRecord>> glueUps() const;
    Result<std::optional<GlueUpRecord>> glueUp(const GlueUpId& id) const;
    Result<std::optional<GlueUpId>> glueUpOfAct(const ActId& act) const;
    Result<std::vector<std::string>> glueUpPhotos(const GlueUpId& id) const; ///< the bytes of each JPEG
    /// Marks it as undone by an act that takes its entries back.
    Result<void> undoGlueUp(const GlueUpId& id, const ActId& act, Moment now, const std::string& device);
    // Orders, and work to come
    /// A list with its lines, as it was made; never changed after.
    Result<void> addOrderList(const OrderListRecord& list, const std::string& device);
    Result<std::vector<OrderListRecord>> orderLists() const; ///< newest first
    /// Appends what became of lines. One sent again with the same id is the same.
    Result<void> appendOrderEvents(const std::vector<OrderEventRecord>& events);
    Result<std::vector<OrderEventRecord>> orderEvents() const; ///< in the order they were recorded
    Result<void> savePlannedJob(const PlannedJobRecord& job, Moment now); ///< new or changed
    Result<std::vector<PlannedJobRecord>> plannedJobs() const; ///< by day

    // Readings of a place, to the second, the hundredth of a degree and the half percent of humidity
    /// Adds readings in any order; of two at one second the first counts. Sent again they change nothing.
    /// Errors: NotFound for no such place; BadInput for a temperature outside -90 to 300 C, a humidity
    /// outside 0 to 100 %, a time outside 1970 to 2199.
    Result<ReadingsAdded> addReadings(const PlaceId& place, std::span<const Reading> readings);
    /// The readings of a place; with `since` those of that month of UTC and after, which is cheaper. Errors:
    /// StoreDamaged, naming place and month.
    Result<Trace> readings(const PlaceId& place, std::optional<Moment> since = {}) const;
    Result<std::vector<ReadingsMonth>> readingsMonths(const PlaceId& place) const; ///< oldest first

    // Settings of the shop, kept with it
    Result<std::optional<std::string>> setting(const std::string& key) const;
    Result<void> setSetting(const std::string& key, const std::string& value);

    // Care of the store
    /// A whole copy into one file, readable by either engine, consistent though others write meanwhile.
    /// Written beside and renamed, so that a file of that name is a whole one. Errors: FileUnwritable,
    /// StoreFull.
    Result<StoreReport> backup(const std::string& file) const;
    /// Replaces all that is in this store by a backup, in one transaction, after writing what was there to
    /// keepFile.
    Result<StoreReport> restore(const std::string& file, const std::string& keepFile);
    /// Looks at everything that should hold: the engine's own check, references, sums, reversals, guards.
    Result<StoreReport> verify() const;

private:
    explicit Store(std::unique_ptr<Database> database, StoreLocation location);
    std::unique_ptr<Database> m_database;
    StoreLocation m_location;
    bool m_isNew = false;
    int m_schemaVersion = 0;
};

} // namespace gw
