#include "support/csvrows.h"

#include <QFile>
#include <QStringList>

#include <csv.h>

namespace gw::test {

namespace {

struct Sheet {
    QList<QStringList> rows;
    QStringList row;
};

void onField(void* text, std::size_t length, void* sheet)
{
    static_cast<Sheet*>(sheet)->row.append(
        QString::fromUtf8(static_cast<const char*>(text), static_cast<qsizetype>(length)));
}

void onRow(int, void* sheet)
{
    auto* s = static_cast<Sheet*>(sheet);
    s->rows.append(s->row);
    s->row.clear();
}

} // namespace

QList<CsvRow> readCsvRows(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        qFatal("check table %s cannot be opened", qPrintable(path));
    const QByteArray bytes = file.readAll();

    Sheet sheet;
    csv_parser parser;
    csv_init(&parser, CSV_APPEND_NULL);
    csv_parse(&parser, bytes.constData(), static_cast<std::size_t>(bytes.size()), onField, onRow, &sheet);
    csv_fini(&parser, onField, onRow, &sheet);
    csv_free(&parser);
    if (sheet.rows.size() < 2)
        qFatal("check table %s has no rows", qPrintable(path));

    QList<CsvRow> rows;
    const QStringList header = sheet.rows.first();
    for (qsizetype i = 1; i < sheet.rows.size(); ++i) {
        CsvRow row;
        for (qsizetype c = 0; c < header.size(); ++c)
            row.insert(header.at(c), sheet.rows.at(i).value(c));
        rows.append(row);
    }
    return rows;
}

QList<CsvRow> readCheckTable(const QString& name)
{
    return readCsvRows(QStringLiteral(GW_TEST_DATA "/") + name);
}

} // namespace gw::test
