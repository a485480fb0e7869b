#pragma once

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

namespace gw::test {

/// What one run of the program printed and how it ended.
struct Ran {
    int status = -1;
    QByteArray out, err;
    QJsonObject json() const { return QJsonDocument::fromJson(out).object(); }
};

/// The program on a store of the test's own, in a data folder of its own.
class Program {
public:
    Program()
        : m_store(m_folder.filePath(QStringLiteral("shop.gluewright")))
    {
    }

    QString file(const QString& name) const { return m_folder.filePath(name); }
    QString store() const { return m_store; }
    void setStore(const QString& store) { m_store = store; }

    /// Runs a command with --json on the store.
    Ran operator()(QStringList arguments) const
    {
        arguments << QStringLiteral("--json") << QStringLiteral("--store") << m_store;
        return plain(arguments);
    }

    /// Runs it with just these arguments.
    Ran plain(const QStringList& arguments) const
    {
        QProcess process;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("HOME"), m_folder.path());
        environment.insert(QStringLiteral("XDG_DATA_HOME"), m_folder.path());
        process.setProcessEnvironment(environment);
        process.start(QStringLiteral(GW_PROGRAM), arguments);
        if (!process.waitForFinished(60000))
            qFatal("the program does not end");
        return { process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            process.readAllStandardOutput(), process.readAllStandardError() };
    }

private:
    QTemporaryDir m_folder;
    QString m_store;
};

} // namespace gw::test
