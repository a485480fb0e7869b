#include <QTest>

#include <atomic>
#include <csignal>
#include <cstdlib>
#include <thread>

#include <sys/wait.h>
#include <unistd.h>

#include "scan/abortguard.h"

using namespace gw;

class AbortGuard : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void workThatEnds_isDone()
    {
        int done = 0;
        auto work = [&]() noexcept { ++done; };
        QVERIFY(survivesAbort(work));
        QCOMPARE(done, 1);
    }

    void workThatAborts_isSurvivedAgainAndAgain()
    {
        for (int i = 0; i < 100; ++i) {
            volatile int reached = 0;
            auto work = [&]() noexcept {
                reached = 1;
                std::abort();
            };
            QVERIFY(!survivesAbort(work));
            QCOMPARE(int(reached), 1);
        }
    }

    void abortInside_endsOnlyTheInnerWork()
    {
        bool inner = true;
        auto abort = []() noexcept { std::abort(); };
        auto work = [&]() noexcept { inner = survivesAbort(abort); };
        QVERIFY(survivesAbort(work));
        QVERIFY(!inner);
    }

    void everyThread_isGuardedForItself()
    {
        std::atomic<int> survived = 0;
        std::vector<std::thread> threads;
        for (int i = 0; i < 4; ++i)
            threads.emplace_back([&survived] {
                auto work = []() noexcept { std::abort(); };
                for (int round = 0; round < 50; ++round)
                    survived += survivesAbort(work) ? 0 : 1;
            });
        for (auto& thread : threads)
            thread.join();
        QCOMPARE(int(survived), 200);
    }

    void abortOutside_stillEndsTheProgram()
    {
        auto work = []() noexcept { };
        QVERIFY(survivesAbort(work)); // the handler is in place
        const pid_t child = fork();
        if (child == 0) {
            std::signal(SIGABRT, SIG_DFL); // of the test program's own
            std::abort();
        }
        int status = 0;
        QCOMPARE(waitpid(child, &status, 0), child);
        QVERIFY(WIFSIGNALED(status));
        QCOMPARE(WTERMSIG(status), SIGABRT);
    }
};

QTEST_APPLESS_MAIN(AbortGuard)
#include "tst_abortguard.moc"
