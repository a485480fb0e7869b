#include <array>
#include <barrier>
#include <csignal>
#include <functional>
#include <thread>

#include <QElapsedTimer>
#include <QSqlDatabase>
#include <QSqlQuery>
#include <QTest>

#include <sys/wait.h>
#include <unistd.h>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

namespace {

Result<std::unique_ptr<Store>> open(const StoreLocation& location, int lockWaitMs = 300)
{
    OpenOptions options;
    options.now = minute(0);
    options.lockWaitMs = lockWaitMs;
    return Store::open(location, options);
}

QString quotedAddress(const StorePlace& place) { return QString::fromStdString(place.location().where); }

// A second program: runs until it is killed.
class OtherProgram {
public:
    explicit OtherProgram(const std::function<void(int pipe)>& work)
    {
        if (::pipe(m_pipe) != 0)
            qFatal("no pipe");
        m_pid = ::fork();
        if (m_pid == 0) {
            work(m_pipe[1]);
            for (;;)
                ::pause();
        }
        ::close(m_pipe[1]);
    }
    // The next line it wrote; empty when it is gone.
    QByteArray line()
    {
        QByteArray text;
        char c = 0;
        while (::read(m_pipe[0], &c, 1) == 1 && c != '\n')
            text.append(c);
        return text;
    }
    void kill()
    {
        ::kill(m_pid, SIGKILL);
        ::waitpid(m_pid, nullptr, 0);
        m_pid = 0;
    }
    ~OtherProgram()
    {
        if (m_pid > 0)
            kill();
        ::close(m_pipe[0]);
    }
    OtherProgram(const OtherProgram&) = delete;
    OtherProgram& operator=(const OtherProgram&) = delete;

private:
    int m_pipe[2] { -1, -1 };
    pid_t m_pid = 0;
};

void tell(int pipe, const std::string& line)
{
    const std::string text = line + "\n";
    if (::write(pipe, text.data(), text.size()) < 0)
        ::_exit(1);
}

} // namespace

/// Several programs on one store, servers that go away, programs that are killed.
class TabletsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void storeHeldByAnother_isToldAfterAWhile_data() { addEngines(); }
    void storeHeldByAnother_isToldAfterAWhile()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto one = openAt(place), two = openAt(place);
        stock(*one);
        QElapsedTimer watch;
        const auto held = one->transact([&]() -> Result<void> {
            if (auto taken = one->lockContainer(bottle("a").id); !taken)
                return taken;
            watch.start();
            // Both tablets are in the middle of an act; only one can have the bottle.
            return two->transact([&]() -> Result<void> {
                if (auto taken = two->lockContainer(bottle("a").id); !taken)
                    return taken;
                return two->append({ entryOn("a", EntryKind::Used, -1, "second", minute(10)) });
            });
        });
        GW_FAILS(held, ErrorCode::StoreLocked);
        QVERIFY2(watch.elapsed() >= 250 && watch.elapsed() < 10'000, "it waits, but not for ever");
        QVERIFY(two->verify()->ok);
        GW_OK(two->append({ entryOn("a", EntryKind::Used, -1, "second", minute(10)) }));
        // Reading goes on all the while.
        GW_OK(one->transact([&]() -> Result<void> {
            if (auto taken = one->lockContainer(bottle("a").id); !taken)
                return taken;
            const auto read = two->entriesUpTo(minute(100));
            return read ? Result<void> {} : tl::unexpected(read.error());
        }));
    }

    void fileHeldWhole_isToldOnOpening()
    {
        StorePlace place(false);
        stock(*openAt(place));
        const std::string path = place.location().where;
        OtherProgram other([&](int pipe) {
            QSqlDatabase raw = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), QStringLiteral("raw"));
            raw.setDatabaseName(QString::fromStdString(path));
            raw.open();
            QSqlQuery query(raw);
            const bool held = query.exec(QStringLiteral("PRAGMA locking_mode = EXCLUSIVE"))
                && query.exec(QStringLiteral("BEGIN EXCLUSIVE"))
                && query.exec(QStringLiteral("INSERT INTO setting VALUES ('x', 'y')"));
            tell(pipe, held ? "held" : "not held");
            for (;;)
                ::pause();
        });
        QCOMPARE(other.line(), QByteArray("held"));
        GW_FAILS(open(place.location()), ErrorCode::StoreLocked);
        other.kill();
        auto store = open(place.location());
        GW_OK(store);
        QVERIFY((*store)->verify()->ok);
        QVERIFY(!(*store)->setting("x")->has_value());
    }

    void programKilledInAnAct_leavesNothingOfIt_data() { addEngines(); }
    void programKilledInAnAct_leavesNothingOfIt()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        stock(*openAt(place));
        OtherProgram other([&](int pipe) {
            auto store = open(place.location());
            static_cast<void>((*store)->transact([&]() -> Result<void> {
                static_cast<void>((*store)->addContainer(bottle("c")));
                static_cast<void>((*store)->lockContainer(bottle("a").id));
                const auto done
                    = (*store)->append({ entryOn("c", EntryKind::Arrived, 1, "half", minute(3)) });
                tell(pipe, done ? "between statements" : done.error().sentence);
                for (;;)
                    ::pause();
            }));
        });
        QCOMPARE(other.line(), QByteArray("between statements"));
        other.kill();
        auto store = open(place.location(), 10'000);
        GW_OK(store);
        QCOMPARE((*store)->containers()->size(), 2U);
        QCOMPARE((*store)->entriesUpTo(minute(100))->size(), 2U);
        const auto report = (*store)->verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        // What it held is free again.
        GW_OK((*store)->transact([&] { return (*store)->lockContainer(bottle("a").id); }));
    }

    void programKilledWhileWriting_keepsAllItAnswered_data() { addEngines(); }
    void programKilledWhileWriting_keepsAllItAnswered()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        stock(*openAt(place));
        OtherProgram other([&](int pipe) {
            auto store = open(place.location());
            for (int i = 0;; ++i) {
                const std::string n = std::to_string(i);
                const auto done = (*store)->append({ entryOn("a", EntryKind::Used, -1, "out" + n, minute(10)),
                    entryOn("b", EntryKind::Counted, 1, "in" + n, minute(10)) });
                tell(pipe, done ? n : done.error().sentence);
            }
        });
        QByteArray last;
        for (int i = 0; i < 25; ++i) {
            last = other.line();
            QCOMPARE(last, QByteArray::number(i));
        }
        other.kill();
        auto store = open(place.location(), 10'000);
        GW_OK(store);
        for (int i = 0; i < 25; ++i)
            QVERIFY((*store)->entry({ "entry-out" + std::to_string(i) })->has_value());
        std::int64_t sum = 0;
        const auto entries = (*store)->entriesUpTo(minute(100));
        GW_OK(entries);
        for (const Entry& entry : *entries)
            sum += entry.deltaMilli;
        QCOMPARE(sum, 1'000'000);
        QVERIFY((*store)->verify()->ok);
    }

    void serverThatEndsTheConnection_isAskedAgain()
    {
        StorePlace place(true);
        auto store = openAt(place);
        stock(*store);
        const QString end = QStringLiteral("SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity"
                                           " WHERE datname = current_database() AND pid <> pg_backend_pid()");
        // In the middle of an act: the act is lost as a whole, and told.
        GW_FAILS(store->transact([&]() -> Result<void> {
            if (auto done = store->append({ entryOn("a", EntryKind::Used, -1, "lost", minute(10)) }); !done)
                return done;
            if (const QString said = place.asStranger(end); !said.isEmpty())
                return fail(ErrorCode::StoreFailed, said.toStdString());
            return store->append({ entryOn("a", EntryKind::Used, -2, "lost too", minute(10)) });
        }),
            ErrorCode::StoreUnreachable);
        GW_OK(store->entriesUpTo(minute(100)));
        QCOMPARE(store->entriesUpTo(minute(100))->size(), 2U);
        // At the end of one.
        GW_FAILS(store->transact([&]() -> Result<void> {
            auto done = store->append({ entryOn("a", EntryKind::Used, -1, "lost", minute(10)) });
            static_cast<void>(place.asStranger(end));
            return done;
        }),
            ErrorCode::StoreUnreachable);
        // Between acts: the first call may find out, the next goes through. The entry sent again is the same
        // entry.
        QCOMPARE(place.asStranger(end), QString());
        const Entry used = entryOn("a", EntryKind::Used, -3, "kept", minute(10));
        if (const auto first = store->append({ used }); !first)
            QVERIFY2(first.error().code == ErrorCode::StoreUnreachable, first.error().sentence.c_str());
        GW_OK(store->append({ used }));
        QCOMPARE(store->entriesUpTo(minute(100))->size(), 3U);
        QVERIFY(store->verify()->ok);
    }

    void serverThatIsNotThere_isTold_data()
    {
        QTest::addColumn<QString>("address");
        QTest::newRow("no socket") << QStringLiteral("postgresql:///glue?host=/no/such/folder");
        QTest::newRow("nobody listens") << QStringLiteral("postgresql://127.0.0.1:1/glue");
        QTest::newRow("no such name") << QStringLiteral("postgresql://no-such-host.invalid/glue");
    }
    void serverThatIsNotThere_isTold()
    {
        QFETCH(QString, address);
        const auto opened = open({ address.toStdString() });
        GW_FAILS(opened, ErrorCode::StoreUnreachable);
        QVERIFY2(opened.error().sentence.find("does not answer") != std::string::npos,
            opened.error().sentence.c_str());
    }

    void serverThatRefuses_isTold()
    {
        StorePlace place(true);
        const QString clerk = QStringLiteral("clerk");
        QCOMPARE(place.asStranger(
                     QStringLiteral("DROP ROLE IF EXISTS clerk; CREATE ROLE clerk LOGIN PASSWORD 'right'")),
            QString());
        for (const auto& location : { place.locationFor(clerk, QStringLiteral("wrong")),
                 place.locationFor(clerk), place.locationFor(QStringLiteral("no_such_user")) }) {
            const auto opened = open(location);
            GW_FAILS(opened, ErrorCode::StoreUnreachable);
            QVERIFY2(opened.error().sentence.find("password") != std::string::npos,
                opened.error().sentence.c_str());
            QVERIFY2(
                opened.error().sentence.find("wrong;") == std::string::npos, opened.error().sentence.c_str());
        }
        const QString address = quotedAddress(place);
        const QString none
            = address.section(u'/', 0, 2) + QStringLiteral("/no_such_database?") + address.section(u'?', 1);
        GW_FAILS(open({ none.toStdString() }), ErrorCode::NotFound);
        QCOMPARE(place.asStranger(QStringLiteral("DROP ROLE clerk")), QString());
    }

    void userWithoutRights_isTold()
    {
        StorePlace place(true);
        const StoreLocation clerk = place.locationFor(QStringLiteral("clerk"), QStringLiteral("right"));
        QCOMPARE(place.asStranger(
                     QStringLiteral("DROP ROLE IF EXISTS clerk; CREATE ROLE clerk LOGIN PASSWORD 'right'")),
            QString());
        // Since PostgreSQL 15 nobody may make tables unless allowed to.
        GW_FAILS(open(clerk), ErrorCode::StoreReadOnly);
        stock(*openAt(place));
        QCOMPARE(place.asStranger(QStringLiteral("GRANT USAGE ON SCHEMA public TO clerk; GRANT SELECT ON ALL "
                                                 "TABLES IN SCHEMA public TO clerk")),
            QString());
        auto store = open(clerk);
        GW_OK(store);
        QCOMPARE((*store)->containers()->size(), 2U);
        GW_FAILS((*store)->append({ entryOn("a", EntryKind::Used, -1, "no", minute(10)) }),
            ErrorCode::StoreReadOnly);
        GW_OK((*store)->entriesUpTo(minute(100)));
        store->reset();
        QCOMPARE(place.asStranger(QStringLiteral("DROP OWNED BY clerk; DROP ROLE clerk")), QString());
    }

    void serverThatIsReadOnly_isTold()
    {
        StorePlace place(true);
        stock(*openAt(place));
        const QString set
            = QStringLiteral("DO $$ BEGIN EXECUTE format('ALTER DATABASE %I %s "
                             "default_transaction_read_only%s', current_database(), '%1', '%2'); END $$");
        QCOMPARE(place.asStranger(QString(set)
                         .replace(QStringLiteral("%1"), QStringLiteral("SET"))
                         .replace(QStringLiteral("%2"), QStringLiteral(" = on"))),
            QString());
        {
            auto store = open(place.location());
            GW_OK(store);
            QCOMPARE((*store)->containers()->size(), 2U);
            GW_FAILS((*store)->append({ entryOn("a", EntryKind::Used, -1, "no", minute(10)) }),
                ErrorCode::StoreReadOnly);
        }
        QCOMPARE(place.asStranger(QStringLiteral("SET default_transaction_read_only = off; ")
                     + QString(set)
                         .replace(QStringLiteral("%1"), QStringLiteral("RESET"))
                         .replace(QStringLiteral("%2"), QString())),
            QString());
        QVERIFY(openAt(place)->verify()->ok);
    }

    // Each has what the other wants next: the server ends one of the acts, and the other goes through.
    void actsThatWaitForEachOther_endInOneConflict()
    {
        StorePlace place(true);
        stock(*openAt(place));
        std::barrier both(2);
        std::array<Result<void>, 2> done;
        std::vector<std::thread> threads;
        for (int tablet = 0; tablet < 2; ++tablet) {
            threads.emplace_back([&, tablet] {
                auto store = open(place.location(), 20'000);
                const std::string first = tablet == 0 ? "a" : "b", second = tablet == 0 ? "b" : "a";
                done[static_cast<std::size_t>(tablet)] = (*store)->transact([&]() -> Result<void> {
                    auto taken = (*store)->lockContainer(bottle(first).id);
                    both.arrive_and_wait();
                    if (taken)
                        taken = (*store)->lockContainer(bottle(second).id);
                    if (taken)
                        taken = (*store)->append({ entryOn(first, EntryKind::Used, -1, first, minute(10)) });
                    return taken;
                });
            });
        }
        for (auto& thread : threads)
            thread.join();
        QVERIFY(done[0].has_value() != done[1].has_value());
        GW_FAILS(done[0] ? done[1] : done[0], ErrorCode::Conflict);
        auto store = openAt(place);
        QCOMPARE(store->entriesUpTo(minute(100))->size(), 3U);
        QVERIFY(store->verify()->ok);
    }

    // Six tablets take a gram each, fifteen times, from one bottle: none is lost, none is counted twice.
    void tabletsAtOnce_loseNothing_data() { addEngines(); }
    void tabletsAtOnce_loseNothing()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        stock(*openAt(place));
        constexpr int tablets = 6, acts = 15;
        std::array<std::string, tablets> faults;
        std::vector<std::thread> threads;
        for (int tablet = 0; tablet < tablets; ++tablet) {
            threads.emplace_back([&, tablet] {
                auto store = open(place.location(), 60'000);
                std::string& fault = faults[static_cast<std::size_t>(tablet)];
                for (int i = 0; i < acts && fault.empty(); ++i) {
                    const auto done = (*store)->transact([&]() -> Result<void> {
                        if (auto taken = (*store)->lockContainer(bottle("a").id); !taken)
                            return taken;
                        const auto there = (*store)->entriesOf(bottle("a").id, minute(1000));
                        if (!there)
                            return tl::unexpected(there.error());
                        // The number of the entry says how many were there: two tablets in one act would
                        // clash.
                        Entry used
                            = entryOn("a", EntryKind::Used, -1000, std::to_string(there->size()), minute(10));
                        used.device = "tablet " + std::to_string(tablet);
                        return (*store)->append({ used });
                    });
                    if (!done)
                        fault = done.error().sentence;
                }
            });
        }
        for (auto& thread : threads)
            thread.join();
        for (const auto& fault : faults)
            QCOMPARE(fault, "");
        auto store = openAt(place);
        QCOMPARE(store->entriesOf(bottle("a").id, minute(1000))->size(),
            static_cast<std::size_t>(1 + tablets * acts));
        QVERIFY(store->verify()->ok);
    }
};

QTEST_GUILESS_MAIN(TabletsTest)
#include "tst_tablets.moc"
