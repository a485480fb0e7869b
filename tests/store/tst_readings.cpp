#include <thread>

#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

namespace {

Reading at(int minutes, double degrees, std::optional<double> humidity = {})
{
    return { minute(minutes), Celsius { degrees }, humidity };
}

std::vector<Reading> everyTenMinutes(int from, int count)
{
    std::vector<Reading> readings;
    for (int i = from; i < from + count; ++i)
        readings.push_back(
            at(i * 10, 12 + i % 90 * 0.13, i % 3 == 0 ? std::optional(40.0 + i % 50) : std::nullopt));
    return readings;
}

std::vector<Reading> all(const Trace& trace)
{
    std::vector<Reading> readings;
    for (std::size_t i = 0; i < trace.size(); ++i)
        readings.push_back(trace.reading(i));
    return readings;
}

bool same(const Reading& a, const Reading& b)
{
    return a.at == b.at && std::abs(a.temperature.value - b.temperature.value) < 0.0051
        && a.humidity.has_value() == b.humidity.has_value()
        && std::abs(a.humidity.value_or(0) - b.humidity.value_or(0)) < 0.251;
}

bool same(const std::vector<Reading>& a, const std::vector<Reading>& b)
{
    return std::ranges::equal(a, b, [](const Reading& x, const Reading& y) { return same(x, y); });
}

std::int64_t markOf(const Store& store)
{
    const auto places = store.places();
    return places ? places->front().readingsMark : -1;
}

} // namespace

/// Readings of a place: kept exactly as they came, sent again without harm.
class ReadingsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void readings_comeBackAsSent_data() { addEngines(); }
    void readings_comeBackAsSent()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        // Over the ends of two months and a year; even steps, and then one that is not.
        std::vector<Reading> sent;
        for (int i = 0; i < 900; ++i)
            sent.push_back({ minute(0) + std::chrono::days { 240 } + std::chrono::hours { i },
                Celsius { -40.0 + i * 0.11 }, i % 2 == 0 ? std::optional(i % 201 / 2.0) : std::nullopt });
        sent.push_back({ sent.back().at + std::chrono::seconds { 61 }, Celsius { 0.005 }, {} });
        {
            auto store = openAt(place);
            GW_OK(store->savePlace(shelf()));
            const auto empty = store->readings(shelf().id);
            GW_OK(empty);
            QVERIFY(empty->empty());
            const auto added = store->addReadings(shelf().id, sent);
            GW_OK(added);
            QCOMPARE(added->added, 901);
            QCOMPARE(added->alreadyThere, 0);
        }
        auto store = openAt(place);
        const auto back = store->readings(shelf().id);
        GW_OK(back);
        QVERIFY(same(all(*back), sent));
        const auto months = store->readingsMonths(shelf().id);
        GW_OK(months);
        QCOMPARE(months->size(), 3U);
        QCOMPARE(formatDate(months->front().first), "2026-12-01");
        QCOMPARE(months->at(1).from, fromMilliseconds(toMilliseconds(startOf(months->at(1).first))));
        QCOMPARE(months->back().to, sent.back().at);
        std::int64_t counted = 0;
        for (const ReadingsMonth& month : *months)
            counted += month.readings;
        QCOMPARE(counted, 901);
        const auto late = store->readings(shelf().id, months->back().to);
        GW_OK(late);
        QCOMPARE(static_cast<std::int64_t>(late->size()), months->back().readings);
    }

    void readings_sentAgain_changeNothing_data() { addEngines(); }
    void readings_sentAgain_changeNothing()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        QCOMPARE(markOf(*store), 0);
        const auto sent = everyTenMinutes(0, 300);
        GW_OK(store->addReadings(shelf().id, sent));
        const auto mark = markOf(*store);
        QVERIFY(mark != 0);
        const auto again = store->addReadings(shelf().id, sent);
        GW_OK(again);
        QCOMPARE(again->added, 0);
        QCOMPARE(again->alreadyThere, 300);
        QCOMPARE(markOf(*store), mark);
        // Saving the place is no change of its readings, nor the other way round.
        PlaceRecord renamed = shelf();
        renamed.name = "Board";
        GW_OK(store->savePlace(renamed));
        QCOMPARE(markOf(*store), mark);
        GW_OK(store->addReadings(shelf().id, everyTenMinutes(300, 1)));
        QVERIFY(markOf(*store) != mark);
    }

    void order_doesNotMatter_data() { addEngines(); }
    void order_doesNotMatter()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        auto sent = everyTenMinutes(0, 400);
        const auto inOrder = sent;
        std::ranges::reverse(sent);
        // In pieces that lie between each other.
        for (const std::size_t begin : { 300U, 0U, 100U, 200U }) {
            const auto added = store->addReadings(shelf().id, std::span(sent).subspan(begin, 100));
            GW_OK(added);
            QCOMPARE(added->added, 100);
        }
        const auto back = store->readings(shelf().id);
        GW_OK(back);
        QVERIFY(same(all(*back), inOrder));
    }

    void another_atThatSecond_doesNotReplaceTheFirst_data() { addEngines(); }
    void another_atThatSecond_doesNotReplaceTheFirst()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        // Within one sending, too; a humidity is part of a reading.
        const auto first
            = store->addReadings(shelf().id, std::vector { at(1, 18), at(2, 19, 55), at(1, 18), at(1, 21) });
        GW_OK(first);
        QVERIFY(*first == (ReadingsAdded { 2, 1, 1 }));
        const auto second
            = store->addReadings(shelf().id, std::vector { at(1, 18.004), at(2, 19, 60), at(3, 7) });
        GW_OK(second);
        QVERIFY(*second == (ReadingsAdded { 1, 1, 1 }));
        const auto back = store->readings(shelf().id);
        GW_OK(back);
        QVERIFY(same(all(*back), { at(1, 18), at(2, 19, 55), at(3, 7) }));
    }

    void impossibleReadings_areRefusedWhole_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<int>("what");
        for (const bool postgres : { false, true }) {
            const QByteArray engine = postgres ? "postgresql: " : "sqlite: ";
            QTest::newRow(engine + "500 C") << postgres << 0;
            QTest::newRow(engine + "no number") << postgres << 1;
            QTest::newRow(engine + "humidity of 101 %") << postgres << 2;
            QTest::newRow(engine + "year 1969") << postgres << 3;
            QTest::newRow(engine + "year 2200") << postgres << 4;
        }
    }
    void impossibleReadings_areRefusedWhole()
    {
        QFETCH(bool, postgres);
        QFETCH(int, what);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        Reading bad = at(2, 20);
        switch (what) {
        case 0:
            bad.temperature.value = 500;
            break;
        case 1:
            bad.temperature.value = std::numeric_limits<double>::quiet_NaN();
            break;
        case 2:
            bad.humidity = 101;
            break;
        case 3:
            bad.at = startOf(Date { std::chrono::December / 31 / 1969 });
            break;
        default:
            bad.at = startOf(Date { std::chrono::January / 1 / 2200 });
            break;
        }
        GW_FAILS(store->addReadings(shelf().id, std::vector { at(1, 20), bad }), ErrorCode::BadInput);
        const auto back = store->readings(shelf().id);
        GW_OK(back);
        QVERIFY(back->empty());
        GW_FAILS(store->addReadings({ "nowhere" }, std::vector { at(1, 20) }), ErrorCode::NotFound);
    }

    void failedAct_leavesNoReading_data() { addEngines(); }
    void failedAct_leavesNoReading()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        GW_OK(store->addReadings(shelf().id, everyTenMinutes(0, 10)));
        const auto done = store->transact([&]() -> Result<void> {
            for (int i = 1; i < 5; ++i) {
                if (auto added = store->addReadings(shelf().id, everyTenMinutes(i * 10, 10)); !added)
                    return tl::unexpected(added.error());
            }
            return fail(ErrorCode::BadInput, "The file ends in the middle of a line.");
        });
        GW_FAILS(done, ErrorCode::BadInput);
        const auto back = store->readings(shelf().id);
        GW_OK(back);
        QVERIFY(same(all(*back), everyTenMinutes(0, 10)));
    }

    void twoTablets_addToOneMonth_andBothStand_data() { addEngines(); }
    void twoTablets_addToOneMonth_andBothStand()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        {
            auto store = openAt(place);
            GW_OK(store->savePlace(shelf()));
        }
        constexpr int rounds = 30;
        std::atomic<int> failed = 0;
        const auto tablet = [&](int which) {
            auto store = openAt(place);
            for (int i = 0; i < rounds; ++i) {
                if (!store->addReadings(shelf().id, everyTenMinutes((2 * i + which) * 5, 5)))
                    ++failed;
            }
        };
        std::thread one(tablet, 0), two(tablet, 1);
        one.join();
        two.join();
        QCOMPARE(failed.load(), 0);
        const auto back = openAt(place)->readings(shelf().id);
        GW_OK(back);
        QVERIFY(same(all(*back), everyTenMinutes(0, rounds * 10)));
    }

    void damagedMonth_isRefusedAndNamed_data() { addEngines(); }
    void damagedMonth_isRefusedAndNamed()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        GW_OK(store->addReadings(shelf().id, everyTenMinutes(0, 10)));
        QCOMPARE(place.asStranger(postgres ? QStringLiteral("UPDATE reading_month SET packed = '\\x4752'")
                                           : QStringLiteral("UPDATE reading_month SET packed = x'4752'")),
            QString());
        const auto back = store->readings(shelf().id);
        GW_FAILS(back, ErrorCode::StoreDamaged);
        QVERIFY(back.error().sentence.find("\"Shelf\" for 2026-05") != std::string::npos);
        GW_FAILS(store->addReadings(shelf().id, everyTenMinutes(10, 1)), ErrorCode::StoreDamaged);
    }

    void climateOfAPlace_comesBackAsSaved_data() { addEngines(); }
    void climateOfAPlace_comesBackAsSaved()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->savePlace(shelf()));
        PlaceRecord leanTo;
        leanTo.id = { "lean-to" };
        leanTo.name = "Lean-to";
        leanTo.assumed.quarters[0] = Range<Celsius> { Celsius { -8 }, Celsius { 6.5 } };
        leanTo.assumed.quarters[2] = Range<Celsius> { Celsius { 10 }, Celsius { 34 } };
        leanTo.follows = Follow { shelf().id, 1.5, 0.25 };
        GW_OK(store->savePlace(leanTo));
        auto places = store->places();
        GW_OK(places);
        QVERIFY(places->at(0).assumed == leanTo.assumed);
        QVERIFY(places->at(0).follows == leanTo.follows);
        QVERIFY(places->at(1).assumed == shelf().assumed && !places->at(1).follows);

        leanTo.assumed.quarters[0].reset();
        leanTo.follows.reset();
        GW_OK(store->savePlace(leanTo));
        places = store->places();
        GW_OK(places);
        QVERIFY(places->at(0).assumed == leanTo.assumed && !places->at(0).follows);

        // What cannot be leaves the place as it was.
        PlaceRecord wrong = leanTo;
        wrong.note = "wrong";
        wrong.follows = Follow { { "nowhere" }, 0, 0 };
        GW_FAILS(store->savePlace(wrong), ErrorCode::NotFound);
        wrong.follows = Follow { wrong.id, 0, 0 };
        GW_FAILS(store->savePlace(wrong), ErrorCode::BadInput);
        wrong.follows = Follow { shelf().id, 0, 1.5 };
        GW_FAILS(store->savePlace(wrong), ErrorCode::BadInput);
        wrong.follows.reset();
        wrong.assumed.quarters[1] = Range<Celsius> { Celsius { 9 }, Celsius { 8 } };
        GW_FAILS(store->savePlace(wrong), ErrorCode::BadInput);
        places = store->places();
        GW_OK(places);
        QCOMPARE(places->at(0).note, "");
        QVERIFY(places->at(0).assumed == leanTo.assumed);
    }
};

QTEST_GUILESS_MAIN(ReadingsTest)
#include "tst_readings.moc"
