#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QTest>

#include "exchange/referencefiles.h"
#include "support/csvrows.h"

using namespace gw;

namespace {

QStringList namesIn(const QString& folder)
{
    QStringList names;
    for (const QString& file : QDir(QStringLiteral(GW_SOURCE_DIR "/db/") + folder)
             .entryList({ QStringLiteral("*.csv") }, QDir::Files, QDir::Name))
        names << file.chopped(4);
    return names;
}

QStringList namesOf(const std::vector<CsvTable>& tables)
{
    QStringList names;
    for (const CsvTable& table : tables)
        names << QString::fromStdString(table.name);
    return names;
}

} // namespace

class ReferenceFiles : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyTable_isInTheProgram()
    {
        const auto reference = readReference();
        QVERIFY2(reference, reference ? "" : reference.error().sentence.c_str());
        QVERIFY(reference->size() >= 10);
        QCOMPARE(namesOf(*reference), namesIn(QStringLiteral("reference")));
        const auto demo = readDemo();
        QVERIFY2(demo, demo ? "" : demo.error().sentence.c_str());
        QVERIFY(demo->size() >= 5);
        QCOMPARE(namesOf(*demo), namesIn(QStringLiteral("demo")));
    }

    void everyCell_isAsInTheFile()
    {
        const auto reference = readReference();
        QVERIFY(reference);
        for (const CsvTable& table : *reference) {
            const auto rows = test::readCsvRows(
                QStringLiteral(GW_SOURCE_DIR "/db/reference/%1.csv").arg(QString::fromStdString(table.name)));
            QCOMPARE(table.rows.size(), std::size_t(rows.size()));
            for (std::size_t r = 0; r < table.rows.size(); ++r)
                for (const std::string& column : table.columns)
                    QCOMPARE(QString::fromStdString(table.cell(r, column)).trimmed(),
                        rows.at(qsizetype(r)).value(QString::fromStdString(column)));
        }
    }

    // db/reference/README.md promises these.
    void tables_haveTheColumnsTheyPromise_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("columns");
        QTest::newRow("sources") << "sources" << "key,title,kind,status";
        QTest::newRow("classes")
            << "classes"
            << "class_id,name,group,family,form,vessel,counted_in,frost,moisture,source,confidence";
        QTest::newRow("class_figures")
            << "class_figures" << "class_id,figure,value,low,high,text,unit,basis,source,confidence";
        QTest::newRow("families") << "families" << "family_id,name,spread_faces,reversible_with";
        QTest::newRow("job_types") << "job_types" << "job_type_id,family_id,joint,typical_class,counted_in";
    }

    void tables_haveTheColumnsTheyPromise()
    {
        QFETCH(QString, name);
        QFETCH(QString, columns);
        const auto reference = readReference();
        QVERIFY(reference);
        const CsvTable* table = tableNamed(*reference, name.toStdString());
        QVERIFY(table);
        QVERIFY(!table->rows.empty());
        for (const QString& column : columns.split(u','))
            QVERIFY2(table->column(column.toStdString()), qPrintable(column));
    }

    void tableThatIsNotThere_isNone()
    {
        QCOMPARE(tableNamed(*readReference(), "no_such_table"), nullptr);
        QCOMPARE(tableNamed({}, "classes"), nullptr);
    }

    void edition_isTheHashOfTheFiles()
    {
        QByteArray bytes;
        for (const QString& name : namesIn(QStringLiteral("reference"))) {
            QFile file(QStringLiteral(GW_SOURCE_DIR "/db/reference/%1.csv").arg(name));
            QVERIFY(file.open(QIODevice::ReadOnly));
            const QByteArray content = file.readAll();
            bytes += name.toUtf8() + '\n' + QByteArray::number(content.size()) + '\n' + content;
        }
        const QByteArray hash = QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex();
        QCOMPARE(QByteArray::fromStdString(referenceEdition()), hash.first(12));
    }
};

QTEST_APPLESS_MAIN(ReferenceFiles)
#include "tst_referencefiles.moc"
