#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

/// The records of glue-ups: kept whole, and never changed.
class GlueUpsTest : public QObject {
    Q_OBJECT

private:
    static void prepare(Store& store)
    {
        stock(store);
        const auto saved = store.saveJob({ { "job-1" }, { "chair" }, "Reglue", "Chair", minute(9) });
        if (!saved)
            qFatal("%s", saved.error().sentence.c_str());
    }

private Q_SLOTS:
    void record_comesBackWhole_data() { addEngines(); }
    void record_comesBackWhole()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        prepare(*store);
        const GlueUpRecord kept = gluedChair();
        std::string picture;
        for (int i = 0; i < 50'000; ++i)
            picture += static_cast<char>(i * 7 + i / 256); // every byte, 0 among them
        GW_OK(store->addGlueUp(kept, { picture, "second" }));
        const auto found = store->glueUp(kept.id);
        GW_OK(found);
        QVERIFY(found->has_value());
        const GlueUpRecord& read = **found;
        QCOMPARE(read.act, kept.act);
        QCOMPARE(read.at, kept.at);
        QCOMPARE(read.recorded, kept.recorded);
        QCOMPARE(read.piece, kept.piece);
        QCOMPARE(read.pieces, 2);
        QCOMPARE(read.answer, kept.answer);
        QCOMPARE(read.comesApart, kept.comesApart);
        QCOMPARE(read.note, kept.note);
        QCOMPARE(read.photos, 2);
        QVERIFY(!read.undone);
        QCOMPARE(read.fact("air")->value, std::optional(1.0 / 3));
        QCOMPARE(read.fact("who")->text, kept.fact("who")->text);
        QVERIFY(!read.fact("wood")); // not said is no row
        QCOMPARE(read.gates.size(), 2U);
        QCOMPARE(read.gates[1].result, std::string("stop"));
        QCOMPARE(read.containers.size(), 2U);
        QCOMPARE(read.containers[0].frostEvents, std::optional(1));
        QCOMPARE(read.containers[0].verdict, Verdict::TestFirst);
        QVERIFY(!read.containers[1].frostEvents);
        const auto photos = store->glueUpPhotos(kept.id);
        GW_OK(photos);
        QVERIFY(*photos == std::vector<std::string>({ picture, "second" }));
        QCOMPARE(**store->glueUpOfAct(kept.act), kept.id);
        QVERIFY(!store->glueUpOfAct({ "another" })->has_value());
        QVERIFY(!store->glueUp({ "another" })->has_value());
        QVERIFY(store->verify()->ok);
    }

    void record_isNeverChanged_data() { addEngines(); }
    void record_isNeverChanged()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        prepare(*store);
        GW_OK(store->addGlueUp(gluedChair(), { "picture" }));
        GW_OK(store->undoGlueUp(gluedChair().id, { "act-2" }, minute(20), "bench"));
        for (const char* table : { "glue_up", "glue_up_fact", "glue_up_gate", "glue_up_container",
                 "glue_up_photo", "glue_up_undone" }) {
            const QString name = QString::fromLatin1(table);
            const QString column
                = name == QStringLiteral("glue_up") ? QStringLiteral("id") : QStringLiteral("glue_up_id");
            for (const QString& change : { QStringLiteral("UPDATE %1 SET %2 = %2").arg(name, column),
                     QStringLiteral("DELETE FROM %1").arg(name) })
                QVERIFY2(!place.asStranger(change).isEmpty(), qPrintable(change));
            if (!postgres)
                QVERIFY(
                    !place.asStranger(QStringLiteral("INSERT OR REPLACE INTO %1 SELECT * FROM %1").arg(name))
                        .isEmpty());
        }
        QCOMPARE(store->glueUps()->front().undone, std::optional(minute(20)));
        QVERIFY(store->verify()->ok);
    }

    void secondUndoing_andSecondWriting_fail_data() { addEngines(); }
    void secondUndoing_andSecondWriting_fail()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        prepare(*store);
        GW_OK(store->addGlueUp(gluedChair(), {}));
        QVERIFY(!store->addGlueUp(gluedChair(), {}));
        GW_OK(store->undoGlueUp(gluedChair().id, { "act-2" }, minute(20), "bench"));
        QVERIFY(!store->undoGlueUp(gluedChair().id, { "act-3" }, minute(21), "bench"));
        GlueUpRecord other = gluedChair();
        other.id = { "glueup-2" };
        QVERIFY(!store->addGlueUp(other, {})); // two of one act
        QCOMPARE(store->glueUps()->size(), 1U);
    }

    void failedWrite_leavesNothing_data() { addEngines(); }
    void failedWrite_leavesNothing()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        prepare(*store);
        GlueUpRecord broken = gluedChair();
        broken.containers.push_back({ { "no such container" }, Verdict::Good, "", {} });
        QVERIFY(!store->addGlueUp(broken, {}));
        broken = gluedChair();
        broken.gates[0].result = "perhaps";
        QVERIFY(!store->addGlueUp(broken, {}));
        GW_FAILS(store->addGlueUp(gluedChair(), { std::string(LabelPhoto::mostBytes + 1, 'x') }),
            ErrorCode::BadInput);
        GW_FAILS(store->addGlueUp(gluedChair(), { "" }), ErrorCode::BadInput);
        QVERIFY(store->glueUps()->empty());
        GW_OK(store->addGlueUp(gluedChair(), {}));
    }
};

QTEST_GUILESS_MAIN(GlueUpsTest)
#include "tst_glueups.moc"
