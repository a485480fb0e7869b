#include <QDir>
#include <QTest>

#include "shop/care.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// The demonstration shop, and the daily backup.
class CareTest : public QObject {
    Q_OBJECT

private:
    static std::unique_ptr<Shop> emptyShop(const StorePlace& place)
    {
        OpenOptions options;
        options.now = Workbench::day(0);
        auto shop = Shop::open(place.location(), options);
        if (!shop)
            qFatal("%s", shop.error().sentence.c_str());
        return std::move(*shop);
    }

private Q_SLOTS:
    void demo_fillsAnEmptyStoreOnce_data() { addEngines(); }
    void demo_fillsAnEmptyStoreOnce()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto shop = emptyShop(place);
        QVERIFY(*isEmpty(*shop));
        const auto counts = fillDemo(*shop, Workbench::day(0));
        GW_OK(counts);
        QVERIFY(counts->containers >= 32);
        QVERIFY(counts->jobs >= 50);
        QVERIFY(!*isEmpty(*shop));
        GW_FAILS(fillDemo(*shop, Workbench::day(0)), ErrorCode::Refused);

        const auto report = shop->store().verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        const auto day = today(*shop, Workbench::day(0));
        GW_OK(day);
        // Every verdict has something to show for it.
        for (const Verdict verdict :
            { Verdict::Good, Verdict::TestFirst, Verdict::DoNotUse, Verdict::NotKnown })
            QVERIFY2(day->counts.contains(verdict), std::string(word(verdict)).c_str());
        QVERIFY(!day->items.empty());
        const auto plan = orderForMonth(*shop, { dateIn2026(4, 1), 95 }, Workbench::day(0));
        GW_OK(plan);
        QVERIFY(!plan->lines.empty());
        const auto jobTypes = shop->store().jobTypes();
        GW_OK(jobTypes);
        for (const JobTypeRecord& jobType : *jobTypes) {
            Conditions conditions;
            conditions.air = Celsius { 22 };
            GW_OK(checkJob(*shop, jobType.id.text, 1, conditions, Workbench::day(0)));
        }
    }

    void dailyBackup_isWrittenOnceADayAndFourteenAreKept_data() { addEngines(); }
    void dailyBackup_isWrittenOnceADayAndFourteenAreKept()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("White PVA", "pva_white", "500 g");
        const std::string folder = bench.place.file(QStringLiteral("kept"));
        const QDir dir(QString::fromStdString(folder));
        const auto first = dailyBackup(*bench.shop, folder, Workbench::day(0));
        GW_OK(first);
        QVERIFY(QFile::exists(QString::fromStdString(*first)));
        const auto again = dailyBackup(*bench.shop, folder, Workbench::day(0.2));
        GW_OK(again);
        QVERIFY(again->empty());
        QFile stranger(dir.filePath(QStringLiteral("a note of mine.txt")));
        QVERIFY(stranger.open(QIODevice::WriteOnly));
        stranger.close();
        for (int day = 1; day < 20; ++day)
            GW_OK(dailyBackup(*bench.shop, folder, Workbench::day(day)));
        QCOMPARE(dir.entryList({ QStringLiteral("*.backup") }, QDir::Files).size(), 14);
        QVERIFY(stranger.exists());
        QVERIFY(!QFile::exists(QString::fromStdString(*first)));
        GW_FAILS(dailyBackup(*bench.shop, "/proc/nowhere", Workbench::day(30)), ErrorCode::FileUnwritable);
    }

    void backup_bringsTheShopBack_data() { addEngines(); }
    void backup_bringsTheShopBack()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        const std::string file = bench.place.file(QStringLiteral("one.backup"));
        GW_OK(bench.shop->store().backup(file));
        GW_OK(useSome(*bench.shop, pva, grams(100), {}, bench.on(1)));
        QCOMPARE(bench.left(pva), 400.0);
        const std::string folder = bench.place.file(QStringLiteral("kept/here"));
        const auto restored = restoreBackup(*bench.shop, file, folder, Workbench::day(1));
        GW_OK(restored);
        QVERIFY(QFile::exists(QString::fromStdString(restored->kept)));
        QCOMPARE(bench.left(pva), 500.0);
        // And what was there before comes back the same way.
        GW_OK(restoreBackup(*bench.shop, restored->kept, folder, Workbench::day(1.1)));
        QCOMPARE(bench.left(pva), 400.0);
        GW_OK(restoreBackup(*bench.shop, file, folder, Workbench::day(1.2)));
        GW_OK(useSome(*bench.shop, pva, grams(10), {}, bench.on(2)));
        bench.reopen();
        QCOMPARE(bench.left(pva), 490.0);
    }
};

QTEST_GUILESS_MAIN(CareTest)
#include "tst_care.moc"
