#include <set>

#include <QDir>
#include <QElapsedTimer>
#include <QTest>

#include "store/smallshop.h"
#include "support/csvrows.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

namespace {

ReferenceTable& table(std::vector<ReferenceTable>& tables, const std::string& name)
{
    return *std::ranges::find(tables, name, &ReferenceTable::name);
}

const ClassRecord* find(const std::vector<ClassRecord>& classes, const std::string& id)
{
    const auto found = std::ranges::find(classes, ClassId { id }, &ClassRecord::id);
    return found == classes.end() ? nullptr : &*found;
}

const Figure* find(const std::vector<Figure>& figures, const std::string& name)
{
    const auto found = std::ranges::find(figures, name, &Figure::figure);
    return found == figures.end() ? nullptr : &*found;
}

// db/reference as it is shipped, every file of it.
std::vector<ReferenceTable> shippedReference()
{
    std::vector<ReferenceTable> tables;
    const QDir folder(QStringLiteral(GW_SOURCE_DIR "/db/reference"));
    for (const QString& name : folder.entryList({ QStringLiteral("*.csv") }, QDir::Files, QDir::Name)) {
        const auto rows = readCsvRows(folder.filePath(name));
        ReferenceTable out;
        out.name = name.chopped(4).toStdString();
        QFile file(folder.filePath(name));
        if (!file.open(QIODevice::ReadOnly))
            qFatal("%s", qPrintable(name));
        const auto columns = QString::fromUtf8(file.readLine()).trimmed().split(u',');
        for (const QString& column : columns)
            out.columns.push_back(column.toStdString());
        for (const auto& row : rows) {
            std::vector<std::string> cells;
            for (const QString& column : columns)
                cells.push_back(row.value(column).toStdString());
            out.rows.push_back(cells);
        }
        tables.push_back(out);
    }
    return tables;
}

} // namespace

/// Reference data: put in, refreshed, overruled by the shop.
class ReferenceTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void shippedFiles_goInAndComeOutWhole_data() { addEngines(); }
    void shippedFiles_goInAndComeOutWhole()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        const auto shipped = shippedReference();
        QCOMPARE(shipped.size(), 19U);
        GW_OK(store->refreshReference(shipped, "shipped"));
        QCOMPARE(store->referenceEdition().value(), "shipped");
        for (const auto& in : shipped) {
            const auto out = store->reference(in.name);
            GW_OK(out);
            QCOMPARE(out->rows.size(), in.rows.size());
            // The same cells, whatever order the rows and columns are in; numbers by their value.
            const auto cellsOf = [](const ReferenceTable& from) {
                std::multiset<std::string> cells;
                for (const auto& row : from.rows) {
                    std::string line;
                    std::map<std::string, std::string> byName;
                    for (std::size_t i = 0; i < from.columns.size(); ++i) {
                        bool number = false;
                        const double value = QString::fromStdString(row[i]).toDouble(&number);
                        byName[from.columns[i]]
                            = number ? QString::number(value, 'g', 17).toStdString() : row[i];
                    }
                    for (const auto& [name, cell] : byName)
                        line += name + "=" + cell + "\n";
                    cells.insert(line);
                }
                return cells;
            };
            const auto there = cellsOf(*out);
            for (const auto& line : cellsOf(in))
                QVERIFY2(there.contains(line), (in.name + ":\n" + line).c_str());
        }
        QVERIFY(store->verify()->ok);
        // And again: nothing doubles, nothing goes.
        GW_OK(store->refreshReference(shipped, "shipped again"));
        for (const auto& in : shipped)
            QCOMPARE(store->reference(in.name)->rows.size(), in.rows.size());
    }

    void classes_carryTheirFiguresAndPictograms_data() { addEngines(); }
    void classes_carryTheirFiguresAndPictograms()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const auto classes = store->classes();
        GW_OK(classes);
        QCOMPARE(classes->size(), 2U);
        QCOMPARE(classes->front().name, "Rags");
        QCOMPARE(classes->front().countedIn, Dimension::Count);
        QCOMPARE(classes->front().pictograms, std::vector<std::string> { "GHS02" });
        const auto* white = find(*classes, "pva_white");
        QVERIFY(white);
        QCOMPARE(white->family.text, "pva");
        QCOMPARE(white->benchTest, "Spread it");
        QVERIFY(white->pictograms.empty());
        QCOMPARE(white->figures.size(), 2U);
        const auto* life = find(white->figures, "opened_life");
        QVERIFY(life && !life->value && !life->changedByShop);
        QCOMPARE(life->low, std::optional(12.0));
        QCOMPARE(life->high, std::optional(24.0));
        QCOMPARE(life->basis, "shop habit");
        QCOMPARE(life->confidence, "low");
        const auto families = store->families();
        GW_OK(families);
        QCOMPARE(families->size(), 1U);
        QCOMPARE(families->front().reversibleWith, "warm water");
        QCOMPARE(families->front().figures.front().high, std::optional(30.0));
        QCOMPARE(store->sources()->front().title, "common practice");
    }

    void shopFigure_standsOverTheReferenceAndSurvivesARefresh_data() { addEngines(); }
    void shopFigure_standsOverTheReferenceAndSurvivesARefresh()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        GW_OK(store->setClassFigure({ "pva_white" }, "opened_life", {}, 6, 9, minute(1)));
        GW_OK(store->setClassFigure({ "pva_white" }, "clamp", 45, {}, {}, minute(1)));
        auto tables = smallReference();
        table(tables, "class_figures").rows[0][3] = "18";
        GW_OK(store->refreshReference(tables, "second"));
        auto classes = store->classes();
        GW_OK(classes);
        const auto* life = find(find(*classes, "pva_white")->figures, "opened_life");
        QVERIFY(life->changedByShop);
        QCOMPARE(life->low, std::optional(6.0));
        QCOMPARE(life->high, std::optional(9.0));
        QCOMPARE(life->unit, "month");
        QCOMPARE(life->source, "shop");
        QCOMPARE(find(find(*classes, "pva_white")->figures, "clamp")->value, std::optional(45.0));
        // Taken away again: the reference shows, as it is by now.
        GW_OK(store->setClassFigure({ "pva_white" }, "opened_life", {}, {}, {}, minute(2)));
        GW_OK(store->setClassFigure({ "pva_white" }, "clamp", {}, {}, {}, minute(2)));
        classes = store->classes();
        GW_OK(classes);
        life = find(find(*classes, "pva_white")->figures, "opened_life");
        QVERIFY(!life->changedByShop);
        QCOMPARE(life->low, std::optional(18.0));
        QCOMPARE(life->source, "CP");
        QVERIFY(!find(find(*classes, "pva_white")->figures, "clamp"));
        GW_FAILS(store->setClassFigure({ "nothing" }, "clamp", 1, {}, {}, minute(2)), ErrorCode::NotFound);
        GW_FAILS(store->setClassFigure({ "pva_white" }, "clamp", {}, 9, 6, minute(2)), ErrorCode::BadInput);
    }

    void rowsGoneFromTheReference_goUnlessTheShopNeedsThem_data() { addEngines(); }
    void rowsGoneFromTheReference_goUnlessTheShopNeedsThem()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store); // white glue is of the class pva_white
        GW_OK(store->setClassFigure({ "pva_white" }, "density", 1.2, {}, {}, minute(1)));
        auto tables = smallReference();
        // A figure the shop changed is gone, one it did not change is gone: the first stays as the shop's
        // own.
        table(tables, "class_figures").rows.clear();
        GW_OK(store->refreshReference(tables, "second"));
        auto classes = store->classes();
        GW_OK(classes);
        auto figures = find(*classes, "pva_white")->figures;
        QCOMPARE(figures.size(), 1U);
        QCOMPARE(figures.front().figure, "density");
        QCOMPARE(figures.front().value, std::optional(1.2));
        GW_OK(store->setClassFigure({ "pva_white" }, "density", {}, {}, {}, minute(2)));
        QVERIFY(find(*store->classes(), "pva_white")->figures.empty());

        // Both classes are gone. What the shop's material is of stays, with its figures; the other goes with
        // its hazards.
        GW_OK(store->refreshReference(smallReference(), "third"));
        tables = smallReference();
        for (const char* name :
            { "classes", "class_figures", "class_hazards", "job_types", "job_type_consumables" })
            table(tables, name).rows.clear();
        GW_OK(store->refreshReference(tables, "fourth"));
        classes = store->classes();
        GW_OK(classes);
        QCOMPARE(classes->size(), 1U);
        QCOMPARE(classes->front().id.text, "pva_white");
        QCOMPARE(classes->front().figures.size(), 2U);
        QVERIFY(store->jobTypes()->empty());
        QVERIFY(store->consumables()->empty());
        QVERIFY(store->verify()->ok);
    }

    void jobType_theShopChanged_staysAsItIs_data() { addEngines(); }
    void jobType_theShopChanged_staysAsItIs()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        JobTypeRecord chair = store->jobTypes()->front();
        QCOMPARE(chair.name, "Reglue a chair");
        QCOMPARE(chair.joint, "mortise");
        QCOMPARE(chair.waste, 0.3);
        QCOMPARE(chair.perMonth, 0.0);
        QVERIFY(!chair.changedByShop);

        // How often is the shop's own from the start; the work itself still follows the reference.
        chair.perMonth = 3.5;
        GW_OK(store->saveJobType(chair, minute(1)));
        auto tables = smallReference();
        table(tables, "job_types").rows[0][5] = "250";
        GW_OK(store->refreshReference(tables, "second"));
        chair = store->jobTypes()->front();
        QCOMPARE(chair.perMonth, 3.5);
        QCOMPARE(chair.areaCm2, 250.0);
        QVERIFY(!chair.changedByShop);

        chair.areaCm2 = 400;
        chair.name = "Reglue a big chair";
        GW_OK(store->saveJobType(chair, minute(2)));
        JobTypeRecord own;
        own.id = { "own-work" };
        own.name = "Own work";
        own.areaCm2 = 100;
        own.spread = 200;
        own.source = "shop";
        GW_OK(store->saveJobType(own, minute(2)));
        GW_OK(store->refreshReference(tables, "third"));
        // By the reference itself: a square decimetre at 200 g/m2 takes 2 g.
        QCOMPARE(store->reference("job_types")->rows.size(), 2U);
        table(tables, "job_types").rows.clear();
        table(tables, "job_type_consumables").rows.clear();
        GW_OK(store->refreshReference(tables, "fourth"));
        const auto types = store->jobTypes();
        GW_OK(types);
        QCOMPARE(types->size(), 2U);
        QCOMPARE(types->at(0).name, "Own work");
        QCOMPARE(types->at(1).name, "Reglue a big chair");
        QCOMPARE(types->at(1).areaCm2, 400.0);
        QCOMPARE(types->at(1).perMonth, 3.5);
        QVERIFY(types->at(0).changedByShop && types->at(1).changedByShop);
    }

    void consumables_comeInPieces_data() { addEngines(); }
    void consumables_comeInPieces()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const auto consumables = store->consumables();
        GW_OK(consumables);
        QCOMPARE(consumables->size(), 2U);
        QCOMPARE(consumables->at(0).item, "gloves");
        QVERIFY(consumables->at(0).classId.empty());
        QCOMPARE(consumables->at(0).amount, pieces(2));
        QCOMPARE(consumables->at(1).classId.text, "rags");
        QCOMPARE(consumables->at(1).amount, pieces(2));
    }

    void wrongFile_isRefusedWhole_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("what");
        QTest::addColumn<QString>("named");
        for (const bool postgres : { false, true }) {
            const auto row = [&](const char* what, const char* named) {
                QTest::addRow("%s: %s", postgres ? "postgresql" : "sqlite", what)
                    << postgres << QString::fromUtf8(what) << QString::fromUtf8(named);
            };
            row("unknown table", "\"glues\"");
            row("unknown column", "\"colour\"");
            row("missing column", "\"unit\"");
            row("column twice", "\"unit\"");
            row("missing key", "line 3");
            row("key twice", "line 3");
            row("no number", "\"1,1\"");
            row("short row", "line 3");
            row("range upside down", "line 2");
            row("unknown class", "line 3");
        }
    }
    void wrongFile_isRefusedWhole()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, what);
        QFETCH(QString, named);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        auto tables = smallReference();
        auto& figures = table(tables, "class_figures");
        table(tables, "classes").rows[0][1] = "Renamed";
        const std::map<QString, std::function<void()>> wrong {
            { QStringLiteral("unknown table"), [&] { figures.name = "glues"; } },
            { QStringLiteral("unknown column"),
                [&] {
                    figures.columns.push_back("colour");
                    for (auto& row : figures.rows)
                        row.push_back("red");
                } },
            { QStringLiteral("missing column"), [&] { figures.columns[6] = "basis"; } },
            { QStringLiteral("column twice"),
                [&] {
                    figures.columns.push_back("unit");
                    for (auto& row : figures.rows)
                        row.push_back("g");
                } },
            { QStringLiteral("missing key"), [&] { figures.rows[1][0].clear(); } },
            { QStringLiteral("key twice"), [&] { figures.rows[1][1] = "opened_life"; } },
            { QStringLiteral("no number"), [&] { figures.rows[1][2] = "1,1"; } },
            { QStringLiteral("short row"), [&] { figures.rows[1].pop_back(); } },
            { QStringLiteral("range upside down"), [&] { figures.rows[0][3] = "36"; } },
            { QStringLiteral("unknown class"), [&] { figures.rows[1][0] = "nobody"; } },
        };
        wrong.at(what)();
        const auto refused = store->refreshReference(tables, "wrong");
        QVERIFY(!refused.has_value());
        const QString sentence = QString::fromStdString(refused.error().sentence);
        QVERIFY2(refused.error().code == ErrorCode::BadInput, qPrintable(sentence));
        QVERIFY2(sentence.contains(named), qPrintable(sentence));
        QCOMPARE(find(*store->classes(), "pva_white")->name, "White PVA");
        QCOMPARE(store->referenceEdition().value(), "small");
    }

    void referenceTable_thatIsUnknown_isNotFound()
    {
        StorePlace place(false);
        auto store = openAt(place);
        GW_FAILS(store->reference("entry; DROP TABLE entry"), ErrorCode::NotFound);
        QCOMPARE(store->referenceEdition().value(), "");
    }

    // Asked for: about 1500 rows in well under a second. The limit leaves room for a busy machine.
    void refresh_isQuick_data() { addEngines(); }
    void refresh_isQuick()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        const auto shipped = shippedReference();
        QElapsedTimer watch;
        watch.start();
        GW_OK(store->refreshReference(shipped, "shipped"));
        const auto first = watch.restart();
        GW_OK(store->refreshReference(shipped, "again"));
        const auto again = watch.elapsed();
        qInfo("put in %lld ms, refreshed %lld ms", static_cast<long long>(first),
            static_cast<long long>(again));
        QVERIFY(first < 5000 && again < 5000);
    }
};

QTEST_GUILESS_MAIN(ReferenceTest)
#include "tst_reference.moc"
