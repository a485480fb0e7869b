#include "store/rows.h"

namespace gw {

namespace {

constexpr std::string_view selectJobTypes = R"(
    SELECT job_type_id, name, family_id, typical_class, counted_in, area_cm2, spread_g_per_m2, waste_fraction,
        fixed_loss, extra, shop_per_month, note, source, confidence, shop_changed_ms, joint
    FROM job_types)";

JobTypeRecord readJobType(Row& row)
{
    JobTypeRecord record;
    record.id = row.id<JobTypeId>();
    record.name = row.text();
    record.family = row.id<FamilyId>();
    record.typicalClass = row.id<ClassId>();
    record.countedIn = dimensionIn(row);
    record.areaCm2 = row.realOrNone().value_or(0);
    record.spread = row.realOrNone().value_or(0);
    record.waste = row.realOrNone().value_or(0);
    record.fixedLoss = row.realOrNone().value_or(0);
    record.extra = row.realOrNone().value_or(0);
    record.perMonth = row.realOrNone().value_or(0);
    record.note = row.text();
    record.source = row.text();
    record.confidence = row.text();
    record.changedByShop = row.integerOrNone().has_value();
    record.joint = row.text();
    return record;
}

constexpr std::string_view upsertJobType = R"(
    INSERT INTO job_types (job_type_id, name, family_id, typical_class, counted_in, area_cm2, spread_g_per_m2, net,
        waste_fraction, fixed_loss, extra, estimate, note, source, confidence, joint, shop_per_month, shop_changed_ms)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (job_type_id) DO UPDATE SET name = excluded.name, family_id = excluded.family_id,
        typical_class = excluded.typical_class, counted_in = excluded.counted_in, area_cm2 = excluded.area_cm2,
        spread_g_per_m2 = excluded.spread_g_per_m2, net = excluded.net, waste_fraction = excluded.waste_fraction,
        fixed_loss = excluded.fixed_loss, extra = excluded.extra, estimate = excluded.estimate, note = excluded.note,
        source = excluded.source, confidence = excluded.confidence, joint = excluded.joint,
        shop_per_month = excluded.shop_per_month, shop_changed_ms = excluded.shop_changed_ms)";

// Whether anything but the shop's own expectation differs.
bool sameWork(const JobTypeRecord& a, const JobTypeRecord& b)
{
    const auto all = [](const JobTypeRecord& t) {
        return std::tie(t.name, t.family, t.typicalClass, t.countedIn, t.areaCm2, t.spread, t.waste,
            t.fixedLoss, t.extra, t.note, t.source, t.confidence, t.joint);
    };
    return all(a) == all(b);
}

constexpr std::string_view upsertJob = R"(
    INSERT INTO job (id, job_type_id, name, piece, at_ms) VALUES (?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET job_type_id = excluded.job_type_id, name = excluded.name, piece = excluded.piece,
        at_ms = excluded.at_ms)";

JobRecord readJob(Row& row)
{
    JobRecord record;
    record.id = row.id<JobId>();
    record.type = row.id<JobTypeId>();
    record.name = row.text();
    record.piece = row.text();
    record.at = row.momentOrNone();
    return record;
}

constexpr double squareCentimetresPerSquareMetre = 10000;

} // namespace

Result<void> Store::saveJobType(const JobTypeRecord& jobType, Moment now)
{
    return m_database->write([&]() -> Result<void> {
        const auto there = m_database->first(
            std::string(selectJobTypes) + " WHERE job_type_id = ?", readJobType, jobType.id);
        if (!there)
            return tl::unexpected(there.error());
        // How often it is done is the shop's alone; saying that much must not cut the rest off from later
        // reference data.
        if (*there && sameWork(**there, jobType)) {
            const auto done = m_database->run("UPDATE job_types SET shop_per_month = ? WHERE job_type_id = ?",
                jobType.perMonth, jobType.id);
            return done ? Result<void> {} : tl::unexpected(done.error());
        }
        const double net = jobType.areaCm2 * jobType.spread / squareCentimetresPerSquareMetre;
        const double estimate = net * (1 + jobType.waste) + jobType.fixedLoss + jobType.extra;
        const auto done = m_database->run(upsertJobType, jobType.id, jobType.name, orNull(jobType.family),
            orNull(jobType.typicalClass), unitOf(jobType.countedIn), jobType.areaCm2, jobType.spread, net,
            jobType.waste, jobType.fixedLoss, jobType.extra, estimate, jobType.note, jobType.source,
            jobType.confidence, orNull(jobType.joint), jobType.perMonth, now);
        return done ? Result<void> {} : tl::unexpected(done.error());
    });
}

Result<std::vector<JobTypeRecord>> Store::jobTypes() const
{
    auto records = m_database->list(selectJobTypes, readJobType);
    if (records)
        sortByName(*records);
    return records;
}

Result<std::vector<ConsumableRecord>> Store::consumables() const
{
    auto records = m_database->list(
        "SELECT job_type_id, item, class_id, amount, unit FROM job_type_consumables", [](Row& row) {
            ConsumableRecord record;
            record.jobType = row.id<JobTypeId>();
            record.item = row.text();
            record.classId = row.id<ClassId>();
            const double amount = row.realOrNone().value_or(0);
            const std::string unit = row.text();
            // A pair is two pieces; a sheet is one.
            record.amount = amountOf(
                unit == "pr" ? 2 * amount : amount, dimensionOfUnit(unit).value_or(Dimension::Count));
            return record;
        });
    if (records)
        std::ranges::sort(
            *records, {}, [](const ConsumableRecord& r) { return std::tie(r.jobType, r.item); });
    return records;
}

Result<void> Store::saveJob(const JobRecord& job)
{
    const auto done = m_database->run(upsertJob, job.id, orNull(job.type), job.name, job.piece, job.at);
    return done ? Result<void> {} : tl::unexpected(done.error());
}

Result<std::vector<JobRecord>> Store::jobs() const
{
    auto records = m_database->list("SELECT id, job_type_id, name, piece, at_ms FROM job", readJob);
    // Those without a date yet are still to come, so they stand first.
    if (records)
        std::ranges::sort(*records, [](const JobRecord& a, const JobRecord& b) {
            if (a.at.has_value() != b.at.has_value())
                return !a.at.has_value();
            return a.at != b.at ? *a.at > *b.at : a.id < b.id;
        });
    return records;
}

} // namespace gw
