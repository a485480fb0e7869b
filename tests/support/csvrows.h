#pragma once

#include <QHash>
#include <QList>
#include <QString>

namespace gw::test {

/// One row of a check table, by column name. A column the table lacks reads as an empty text.
using CsvRow = QHash<QString, QString>;

/// The rows of a CSV file with a header line, in the file's order, for data-driven tests.
/// A file that is missing or has no rows stops the test program: a table that vanished must not pass.
QList<CsvRow> readCsvRows(const QString& path);

/// The same for a file in tests/data.
QList<CsvRow> readCheckTable(const QString& name);

} // namespace gw::test
