#include "store/migrations.h"

#include <map>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>

// Outside the namespace, as the macro asks. A static library's resources are dropped by the linker without
// it.
static void bringResources() { Q_INIT_RESOURCE(migrations); }

namespace gw {

std::vector<std::string> statementsOf(std::string_view text)
{
    std::vector<std::string> statements;
    std::string statement;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        while (!line.empty() && (line.back() == ' ' || line.back() == '\r'))
            line.remove_suffix(1);
        const auto start = line.find_first_not_of(' ');
        if (start == std::string_view::npos || line.substr(start).starts_with("--"))
            continue;
        statement += line;
        statement += '\n';
        if (line.ends_with(';')) {
            statements.push_back(statement.substr(0, statement.size() - 2));
            statement.clear();
        }
    }
    // What is left has no end; it is handed on so that the engine refuses it rather than nobody seeing it.
    if (!statement.empty())
        statements.push_back(statement);
    return statements;
}

std::vector<Migration> migrationsFor(Engine engine)
{
    bringResources();
    const QDir folder(QStringLiteral(":/gluewright/migrations"));
    const QString foreign
        = engine == Engine::Sqlite ? QStringLiteral(".postgres.sql") : QStringLiteral(".sqlite.sql");
    std::map<int, QByteArray> texts;
    std::map<int, QString> topics;
    // NNNN_topic.sql before NNNN_topic.<engine>.sql: p and s come before sql only by name, so the order is
    // made here.
    const QStringList names = folder.entryList({ QStringLiteral("*.sql") }, QDir::Files, QDir::Name);
    for (const bool special : { false, true }) {
        for (const QString& name : names) {
            const bool ofOneEngine = name.count(u'.') == 2;
            if (ofOneEngine != special || name.endsWith(foreign))
                continue;
            QFile file(folder.filePath(name));
            if (!file.open(QIODevice::ReadOnly))
                continue;
            const int version = name.left(4).toInt();
            texts[version] += file.readAll();
            topics[version] = name.section(u'.', 0, 0).mid(5);
        }
    }
    std::vector<Migration> migrations;
    for (const auto& [version, text] : texts) {
        const QByteArray sum = QCryptographicHash::hash(text, QCryptographicHash::Sha256).toHex();
        migrations.push_back({ version, topics[version].toStdString(), sum.toStdString(),
            statementsOf(std::string_view(text.constData(), static_cast<std::size_t>(text.size()))) });
    }
    return migrations;
}

} // namespace gw
