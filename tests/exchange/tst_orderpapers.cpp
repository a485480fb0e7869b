#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include "exchange/orderpapers.h"

using namespace gw;

/// The order list on pages and as a message. The pages are read back by poppler's pdftotext where it is
/// installed.
class TestOrderPapers : public QObject {
    Q_OBJECT

private:
    static OrderLine line(const std::string& name, std::vector<PackCount> packs)
    {
        OrderLine made;
        made.material = MaterialId { name };
        made.name = name;
        made.packs = std::move(packs);
        made.need = made.ordered = grams(500);
        made.usable = grams(0);
        made.why = "Jobs take <180 g> a month & more.";
        return made;
    }
    static PackCount pack(const std::string& name, int count, std::int64_t minor, const std::string& supplier)
    {
        PackCount made { PackId { name }, name, supplier, count, std::nullopt };
        if (minor > 0)
            made.price = Money { minor, "EUR" };
        return made;
    }
    static OrderPlan plan()
    {
        OrderPlan made;
        made.lines = { line("White glue", { pack("1 kg", 1, 1450, "Harbour Lane") }),
            line("Hide glue", { pack("250 g", 3, 900, "Tallow Yard"), pack("50 g", 1, 0, "Harbour Lane") }),
            line("Fish glue", {}), line("Casein", { pack("400 g", 2, 700, "") }) };
        made.lines[0].packs[0].gtin = "09520001377310";
        made.left = { line("Silica", { pack("100 g", 1, 500, "Tallow Yard") }) };
        made.totals = { { 1450 + 2700 + 1400, "EUR" } };
        made.notes = { "The price of \"50 g\" is not known." };
        return made;
    }
    static OrderHeading heading()
    {
        const auto day = [](unsigned month, unsigned of) {
            return Date { std::chrono::year { 2026 }, std::chrono::month { month }, std::chrono::day { of } };
        };
        return { "Three Cauls", day(6, 1), day(5, 28), UnitSystem::Metric };
    }

private Q_SLOTS:
    void suppliers_haveTheirOwnLinesAndTotals()
    {
        const OrderPlan made = plan();
        const auto orders = bySupplier(made);
        QCOMPARE(orders.size(), std::size_t { 3 });
        QCOMPARE(orders[0].supplier, std::string("Harbour Lane"));
        QCOMPARE(orders[0].items.size(), std::size_t { 2 });
        QCOMPARE(orders[0].items[0].line->name, std::string("Hide glue"));
        QVERIFY(orders[0].unpriced);
        QCOMPARE(orders[0].totals, (std::vector<Money> { { 1450, "EUR" } }));
        QCOMPARE(orders[1].totals, (std::vector<Money> { { 2700, "EUR" } }));
        // Nobody knows where: last.
        QVERIFY(orders[2].supplier.empty());
        QVERIFY(bySupplier({}).empty());
    }

    void message_saysWhatToSendAndNotWhy()
    {
        const QString text = QString::fromStdString(orderMessage(plan(), heading()));
        QVERIFY(text.contains(QStringLiteral("Harbour Lane\nOrder of Three Cauls, 28 May 2026\n")));
        QVERIFY(text.contains(QStringLiteral("1 \u00d7 1 kg  White glue  (GTIN 09520001377310)\n")));
        QVERIFY(text.contains(QStringLiteral("3 \u00d7 250 g  Hide glue\n")));
        QVERIFY(!text.contains(QStringLiteral("Jobs take")));
        QVERIFY(!text.contains(QStringLiteral("Silica")));
        QCOMPARE(orderMessage({}, heading()), std::string("Nothing wants buying.\n"));
    }

    void pages_holdEverything()
    {
        const QByteArray bytes = orderPdf(plan(), heading());
        QVERIFY(bytes.startsWith("%PDF-"));
        QVERIFY(bytes.trimmed().endsWith("%%EOF"));
        const QString reader = QStandardPaths::findExecutable(QStringLiteral("pdftotext"));
        if (reader.isEmpty())
            QSKIP("pdftotext is not installed; poppler-utils would bring it.");
        QTemporaryDir folder;
        const QString file = folder.filePath(QStringLiteral("order.pdf"));
        const auto written = writeOrderPdf(plan(), heading(), file);
        QVERIFY(written);
        QProcess reads;
        reads.start(reader, { QStringLiteral("-layout"), file, QStringLiteral("-") });
        QVERIFY(reads.waitForFinished());
        const QString text = QString::fromUtf8(reads.readAllStandardOutput());
        for (const char* part : { "Order list for June 2026", "Three Cauls", "28 May 2026", "Harbour Lane",
                 "Tallow Yard", "Supplier not known", "White glue", "14.50 EUR", "27.00 EUR",
                 "price not known", "Jobs take <180 g> a month & more.", "Needed, but not to be had",
                 "Fish glue", "Left for the next list", "Silica", "55.50 EUR", "The price of" })
            QVERIFY2(text.contains(QString::fromUtf8(part)), part);
    }

    void longList_takesSeveralPages()
    {
        OrderPlan many;
        for (int i = 0; i < 120; ++i)
            many.lines.push_back(
                line("Material " + std::to_string(i), { pack("1 kg", 1, 500, "Harbour Lane") }));
        QVERIFY(orderPdf(many, heading()).count("/Type /Page\n") > 2);
    }

    void folderThatIsNotThere_isSaid()
    {
        const auto written = writeOrderPdf(plan(), heading(), QStringLiteral("/no/such/folder/order.pdf"));
        QVERIFY(!written);
        QCOMPARE(written.error().code, ErrorCode::FileUnwritable);
    }
};

QTEST_MAIN(TestOrderPapers)
#include "tst_orderpapers.moc"
