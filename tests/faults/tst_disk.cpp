#include <QDir>
#include <QFile>
#include <QTest>

#include "faults/surroundings.h"
#include "store/database.h"
#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

namespace {

Result<std::unique_ptr<Store>> open(const StoreLocation& location)
{
    OpenOptions options;
    options.now = minute(0);
    options.lockWaitMs = 300;
    return Store::open(location, options);
}

// An act of two entries with notes that take room.
Result<void> pour(Store& store, int n)
{
    const std::string name = std::to_string(n);
    Entry out = entryOn("a", EntryKind::Used, -1, "out" + name, minute(10));
    Entry in = entryOn("b", EntryKind::Counted, 1, "in" + name, minute(10));
    out.note = in.note = std::string(3000, 'x');
    return store.append({ out, in });
}

struct Filled {
    Error error; ///< what ended it
    int acts = 0; ///< that were answered as written
};

Filled fillUp(Store& store)
{
    Filled filled;
    for (; filled.acts < 20'000; ++filled.acts) {
        if (const auto done = pour(store, filled.acts); !done) {
            filled.error = done.error();
            return filled;
        }
    }
    qFatal("the disk never became full");
}

} // namespace

/// The store on disks and folders that fail it: each fault in its own words, nothing half-written, all sound
/// afterwards.
class DiskTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void fullDisk_keepsEveryActWholeOrNotAtAll_data() { addEngines(); }
    void fullDisk_keepsEveryActWholeOrNotAtAll()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        const QString folder = place.folder() + QStringLiteral("/disk");
        QVERIFY(QDir().mkdir(folder));
        SmallDisk disk(folder, postgres ? 14'000 : 1'500);
        if (!disk.isThere())
            QSKIP("No right to mount a small disk; the limit on file sizes is tested instead.");
        StoreLocation location { (folder + QStringLiteral("/shop")).toStdString() };
        if (postgres) {
            QVERIFY(place.putOn(folder));
            location = place.location();
        }
        auto store = open(location);
        GW_OK(store);
        stock(**store);
        const Filled filled = fillUp(**store);
        QVERIFY2(filled.error.code == ErrorCode::StoreFull, filled.error.sentence.c_str());
        QVERIFY(filled.acts > 10);
        const auto entries = (*store)->entriesUpTo(minute(100));
        GW_OK(entries);
        QCOMPARE(entries->size(), static_cast<std::size_t>(2 + 2 * filled.acts));
        const auto report = (*store)->verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        // With room made, the same act goes through on the same connection.
        QVERIFY(disk.resize(60'000));
        GW_OK(pour(**store, filled.acts));
        QVERIFY((*store)->verify()->ok);
        store->reset();
        if (postgres)
            QVERIFY(place.putOn({}));
    }

    void fullDisk_keepsEveryImportWholeOrNotAtAll_data() { addEngines(); }
    void fullDisk_keepsEveryImportWholeOrNotAtAll()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        const QString folder = place.folder() + QStringLiteral("/disk");
        QVERIFY(QDir().mkdir(folder));
        SmallDisk disk(folder, postgres ? 14'000 : 1'500);
        if (!disk.isThere())
            QSKIP("No right to mount a small disk.");
        StoreLocation location { (folder + QStringLiteral("/shop")).toStdString() };
        if (postgres) {
            QVERIFY(place.putOn(folder));
            location = place.location();
        }
        auto store = open(location);
        GW_OK(store);
        stock(**store);
        // Ten days to an import, in several batches of uneven steps, which take the most room.
        constexpr int batches = 10, perBatch = 1440;
        Error ended;
        std::int64_t kept = 0;
        for (int import = 0; import < 2'000 && ended.sentence.empty(); ++import) {
            const auto done = (*store)->transact([&]() -> Result<void> {
                for (int batch = 0; batch < batches; ++batch) {
                    std::vector<Reading> readings;
                    for (int i = 0; i < perBatch; ++i) {
                        const int n = (import * batches + batch) * perBatch + i;
                        readings.push_back({ minute(n) + std::chrono::seconds { n * 7 % 50 },
                            Celsius { n * 31 % 4000 / 100.0 }, n * 17 % 100 * 1.0 });
                    }
                    const auto added = (*store)->addReadings(shelf().id, readings);
                    if (!added)
                        return tl::unexpected(added.error());
                }
                return {};
            });
            if (done)
                kept += batches * perBatch;
            else
                ended = done.error();
        }
        QVERIFY2(ended.code == ErrorCode::StoreFull, ended.sentence.c_str());
        QVERIFY(kept > 0);
        const auto readings = (*store)->readings(shelf().id);
        GW_OK(readings);
        QCOMPARE(static_cast<std::int64_t>(readings->size()), kept);
        QVERIFY(disk.resize(60'000));
        const auto report = (*store)->verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        store->reset();
        if (postgres)
            QVERIFY(place.putOn({}));
    }

    void fileThatMayNotGrow_keepsEveryActWholeOrNotAtAll()
    {
        StorePlace place(false);
        auto store = openAt(place);
        stock(*store);
        Filled filled;
        {
            const FileSizeLimit limit(1'000'000);
            filled = fillUp(*store);
        }
        QVERIFY2(filled.error.code == ErrorCode::StoreFailed, filled.error.sentence.c_str());
        QCOMPARE(store->entriesUpTo(minute(100))->size(), static_cast<std::size_t>(2 + 2 * filled.acts));
        QVERIFY(store->verify()->ok);
        GW_OK(pour(*store, filled.acts));
    }

    // SQLite's own limit says SQLITE_FULL anywhere, whoever runs this.
    void fullFile_saysSo()
    {
        StorePlace place(false);
        stock(*openAt(place));
        auto database = Database::open(place.location(), {});
        GW_OK(database);
        const auto pages = (*database)->number("PRAGMA page_count");
        GW_OK(pages);
        GW_OK((*database)->execute("PRAGMA max_page_count = " + std::to_string(*pages + 2)));
        const auto written = (*database)->transact(Database::Begin::Write, [&]() -> Result<void> {
            for (int i = 0; i < 100; ++i) {
                const auto done = (*database)->run("INSERT INTO setting (key, value) VALUES (?, ?)",
                    std::to_string(i), std::string(1000, 'x'));
                if (!done)
                    return tl::unexpected(done.error());
            }
            return {};
        });
        GW_FAILS(written, ErrorCode::StoreFull);
        QCOMPARE((*database)->number("SELECT COUNT(*) FROM setting WHERE key LIKE '%0'").value(), 0);
        QVERIFY(openAt(place)->verify()->ok);
    }

    void backupOnAFullDisk_leavesNothingBehind_data() { addEngines(); }
    void backupOnAFullDisk_leavesNothingBehind()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        const QString folder = place.folder() + QStringLiteral("/disk");
        QVERIFY(QDir().mkdir(folder));
        SmallDisk disk(folder, 200);
        if (!disk.isThere())
            QSKIP("No right to mount a small disk.");
        auto store = openAt(place);
        stock(*store);
        for (int i = 0; i < 100; ++i)
            GW_OK(pour(*store, i));
        GW_FAILS(
            store->backup((folder + QStringLiteral("/shop.backup")).toStdString()), ErrorCode::StoreFull);
        QVERIFY(QDir(folder).entryList(QDir::Files).isEmpty());
        // Restoring needs what is there kept first: no room for that, no restore.
        const std::string file = place.file(QStringLiteral("shop.backup"));
        GW_OK(store->backup(file));
        GW_OK(pour(*store, 100));
        GW_FAILS(store->restore(file, (folder + QStringLiteral("/kept.backup")).toStdString()),
            ErrorCode::StoreFull);
        QCOMPARE(store->entriesUpTo(minute(100))->size(), 204U);
        QVERIFY(store->verify()->ok);
        QVERIFY(disk.resize(20'000));
        GW_OK(store->backup((folder + QStringLiteral("/shop.backup")).toStdString()));
    }

    void readOnlyDisk_isToldOnOpening()
    {
        StorePlace place(false);
        const QString folder = place.folder() + QStringLiteral("/disk");
        QVERIFY(QDir().mkdir(folder));
        SmallDisk disk(folder, 4000);
        if (!disk.isThere())
            QSKIP("No right to mount a small disk; permissions are tested instead.");
        const StoreLocation location { (folder + QStringLiteral("/shop")).toStdString() };
        stock(**open(location));
        QVERIFY(disk.makeReadOnly());
        GW_FAILS(open(location), ErrorCode::StoreReadOnly);
        GW_FAILS(open({ (folder + QStringLiteral("/new")).toStdString() }), ErrorCode::StoreReadOnly);
        auto elsewhere = openAt(place);
        GW_FAILS(elsewhere->backup((folder + QStringLiteral("/b.backup")).toStdString()),
            ErrorCode::FileUnwritable);
    }

    void permissions_areToldOnOpening_data()
    {
        QTest::addColumn<QString>("what");
        for (const char* what : { "file may not be written", "file may not be read",
                 "folder may not be written", "new store in such a folder" })
            QTest::newRow(what) << QString::fromUtf8(what);
    }
    void permissions_areToldOnOpening()
    {
        QFETCH(QString, what);
        StorePlace place(false);
        const QString path = QString::fromStdString(place.location().where);
        const auto readable = QFile::ReadOwner | QFile::ReadGroup | QFile::ReadOther;
        const auto passable = readable | QFile::ExeOwner | QFile::ExeGroup | QFile::ExeOther;
        const auto writable = QFile::WriteOwner | QFile::WriteGroup | QFile::WriteOther;
        if (what != QStringLiteral("new store in such a folder"))
            stock(*openAt(place));
        const bool folderToo = what.contains(QStringLiteral("folder"));
        if (!folderToo)
            QVERIFY(QFile::setPermissions(
                path, what.contains(QStringLiteral("read")) ? QFile::WriteOwner : readable));
        else if (QFile::exists(path))
            QVERIFY(QFile::setPermissions(path, readable | writable));
        QVERIFY(QFile::setPermissions(place.folder(), folderToo ? passable : passable | writable));
        {
            const OrdinaryUser user;
            GW_FAILS(open(place.location()), ErrorCode::StoreReadOnly);
        }
        // With the rights given back it is the store it was.
        QVERIFY(QFile::setPermissions(place.folder(), passable | writable));
        if (QFile::exists(path)) {
            QVERIFY(QFile::setPermissions(path, readable | writable));
            auto store = openAt(place);
            QCOMPARE(store->containers()->size(), 2U);
            QVERIFY(store->verify()->ok);
        }
    }

    void backupWithoutPermission_isTold_data() { addEngines(); }
    void backupWithoutPermission_isTold()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        const QString folder = place.folder() + QStringLiteral("/locked");
        QVERIFY(QDir().mkdir(folder));
        QVERIFY(QFile::setPermissions(folder, QFile::ReadOwner | QFile::ExeOwner));
        const auto all = QFile::Permissions(0x7777);
        QVERIFY(QFile::setPermissions(place.folder(), all));
        const OrdinaryUser user;
        auto store = openAt(place);
        stock(*store);
        GW_FAILS(
            store->backup((folder + QStringLiteral("/b.backup")).toStdString()), ErrorCode::FileUnwritable);
        GW_FAILS(store->restore((folder + QStringLiteral("/b.backup")).toStdString(),
                     place.file(QStringLiteral("kept"))),
            ErrorCode::FileUnreadable);
        QVERIFY(store->verify()->ok);
    }
};

QTEST_GUILESS_MAIN(DiskTest)
#include "tst_disk.moc"
