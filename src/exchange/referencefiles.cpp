#include "exchange/referencefiles.h"

#include <algorithm>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>

// In a static library nothing else would pull the embedded files in. Must stand outside every namespace.
static void embedReferenceFiles()
{
    Q_INIT_RESOURCE(gluewright_reference);
    Q_INIT_RESOURCE(gluewright_demo);
}

namespace gw {

namespace {

struct EmbeddedFile {
    QString name; ///< without the ending
    QByteArray bytes;
};

std::vector<EmbeddedFile> filesIn(const QString& folder)
{
    embedReferenceFiles();
    std::vector<EmbeddedFile> files;
    const auto entries = QDir(folder).entryInfoList({ QStringLiteral("*.csv") }, QDir::Files, QDir::Name);
    for (const QFileInfo& entry : entries) {
        QFile file(entry.filePath());
        if (file.open(QIODevice::ReadOnly))
            files.push_back({ entry.completeBaseName(), file.readAll() });
    }
    return files;
}

Result<std::vector<CsvTable>> tablesIn(const QString& folder)
{
    std::vector<CsvTable> tables;
    for (const auto& [name, bytes] : filesIn(folder)) {
        auto table
            = readCsv({ bytes.constData(), static_cast<std::size_t>(bytes.size()) }, name.toStdString());
        if (!table)
            return fail(ErrorCode::StoreDamaged, "The built-in table " + table.error().sentence);
        if (table->assumedLatin1)
            return fail(
                ErrorCode::StoreDamaged, "The built-in table " + name.toStdString() + " is not in UTF-8.");
        tables.push_back(std::move(*table));
    }
    if (tables.empty())
        return fail(ErrorCode::StoreDamaged, "The built-in tables are missing; install the program again.");
    return tables;
}

} // namespace

Result<std::vector<CsvTable>> readReference() { return tablesIn(QStringLiteral(":/gluewright/reference")); }
Result<std::vector<CsvTable>> readDemo() { return tablesIn(QStringLiteral(":/gluewright/demo")); }

const CsvTable* tableNamed(const std::vector<CsvTable>& tables, std::string_view name)
{
    const auto found = std::find_if(
        tables.begin(), tables.end(), [name](const CsvTable& table) { return table.name == name; });
    return found == tables.end() ? nullptr : &*found;
}

std::string referenceEdition()
{
    QCryptographicHash hash(QCryptographicHash::Sha256);
    for (const auto& [name, bytes] : filesIn(QStringLiteral(":/gluewright/reference"))) {
        hash.addData(name.toUtf8() + '\n' + QByteArray::number(bytes.size()) + '\n');
        hash.addData(bytes);
    }
    return hash.result().toHex().first(12).toStdString();
}

} // namespace gw
