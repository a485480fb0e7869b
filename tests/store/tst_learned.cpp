#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

/// What arrivals taught about the labels of a material: how a lot code gives its date, and a photograph.
class LearnedTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void lotDateReading_isKeptAndChanged_data() { addEngines(); }
    void lotDateReading_isKeptAndChanged()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const MaterialId material = whiteGlue().id;
        auto none = store->lotDateReading(material);
        GW_OK(none);
        QVERIFY(!none->has_value());
        GW_OK(store->setLotDateReading(material, "YYJJJ@1"));
        GW_OK(store->setLotDateReading(material, "DDMMYY@0"));
        GW_OK(store->saveMaterial(whiteGlue())); // saving it again leaves what was learned
        QCOMPARE(**store->lotDateReading(material), std::string("DDMMYY@0"));
        QVERIFY(!store->setLotDateReading(MaterialId { "no such" }, "YYJJJ@1"));
    }

    void labelPhoto_comesBackByteForByte_data() { addEngines(); }
    void labelPhoto_comesBackByteForByte()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const MaterialId material = whiteGlue().id;
        QVERIFY(!store->labelPhoto(material)->has_value());
        LabelPhoto photo { minute(5), {} };
        for (int i = 0; i < 100'000; ++i)
            photo.jpeg += static_cast<char>(i * 7 + i / 256); // every byte, 0 among them
        GW_OK(store->saveLabelPhoto(material, photo));
        auto read = store->labelPhoto(material);
        GW_OK(read);
        QVERIFY((*read)->jpeg == photo.jpeg);
        QCOMPARE((*read)->taken, photo.taken);
        GW_OK(store->saveLabelPhoto(material, { minute(6), "new" }));
        QCOMPARE((*store->labelPhoto(material))->jpeg, std::string("new"));

        GW_FAILS(store->saveLabelPhoto(material, { minute(7), {} }), ErrorCode::BadInput);
        GW_FAILS(store->saveLabelPhoto(material, { minute(7), std::string(LabelPhoto::mostBytes + 1, 'x') }),
            ErrorCode::BadInput);
        GW_OK(store->saveLabelPhoto(material, { minute(8), std::string(LabelPhoto::mostBytes, 'x') }));
        auto report = store->verify();
        GW_OK(report);
        QVERIFY(report->ok);
    }
};

QTEST_GUILESS_MAIN(LearnedTest)
#include "tst_learned.moc"
