#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <QTest>

#include <csignal>

#include <sys/mount.h>
#include <sys/resource.h>
#include <unistd.h>

#include "exchange/savefile.h"

using namespace gw;

namespace {

QByteArray contentOf(const QString& path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray("unreadable");
}

} // namespace

class SaveFile : public QObject {
    Q_OBJECT

private:
    QTemporaryDir m_dir;

private Q_SLOTS:
    void bytes_areWrittenAsTheyAre()
    {
        const QString path = m_dir.filePath(QStringLiteral("a.csv"));
        const std::string bytes("a\r\n\0\xC3\xA9", 6);
        QVERIFY(saveFile(path, bytes));
        QCOMPARE(contentOf(path), QByteArray::fromStdString(bytes));
    }

    void olderFile_isReplaced()
    {
        const QString path = m_dir.filePath(QStringLiteral("b.csv"));
        QVERIFY(saveFile(path, "first and longer"));
        QVERIFY(saveFile(path, "second"));
        QCOMPARE(contentOf(path), QByteArray("second"));
        QCOMPARE(QDir(m_dir.path()).entryList({ QStringLiteral("b.csv*") }).size(),
            1); // nothing is left beside it
    }

    void folderThatIsNotThere_isSaid()
    {
        const auto saved = saveFile(m_dir.filePath(QStringLiteral("none/a.csv")), "x");
        QVERIFY(!saved);
        QCOMPARE(int(saved.error().code), int(ErrorCode::FileUnwritable));
        QVERIFY(QString::fromStdString(saved.error().sentence).contains(QStringLiteral("no such folder")));
    }

    void nameOfAFolder_isSaid()
    {
        const QString path = m_dir.filePath(QStringLiteral("folder"));
        QVERIFY(QDir().mkdir(path));
        const auto saved = saveFile(path, "x");
        QVERIFY(!saved);
        QCOMPARE(int(saved.error().code), int(ErrorCode::FileUnwritable));
        QVERIFY(QString::fromStdString(saved.error().sentence).contains(QStringLiteral("is a folder")));
    }

    void folderThatMayNotBeWritten_isSaid()
    {
        const QString folder = m_dir.filePath(QStringLiteral("locked"));
        QVERIFY(QDir().mkdir(folder));
        const auto readable = QFile::ReadOwner | QFile::ExeOwner | QFile::ReadOther | QFile::ExeOther;
        QVERIFY(QFile::setPermissions(folder, readable));
        QVERIFY(QFile::setPermissions(m_dir.path(), readable | QFile::WriteOwner));
        // The administrator may write everywhere, so somebody else tries.
        const uid_t before = geteuid();
        const bool changed = before == 0 && seteuid(65534) == 0;
        const auto saved = saveFile(folder + QStringLiteral("/a.csv"), "x");
        if (changed)
            QCOMPARE(seteuid(before), 0);
        QVERIFY(QFile::setPermissions(folder, readable | QFile::WriteOwner));
        QVERIFY(!saved);
        QCOMPARE(int(saved.error().code), int(ErrorCode::FileUnwritable));
    }

    // The kernel refuses to let the file grow: a write that fails half way.
    void writeThatFailsHalfWay_leavesTheOlderFile()
    {
        const QString path = m_dir.filePath(QStringLiteral("c.csv"));
        QVERIFY(saveFile(path, "older"));
        rlimit before {};
        QCOMPARE(getrlimit(RLIMIT_FSIZE, &before), 0);
        const auto old = std::signal(SIGXFSZ, SIG_IGN);
        const rlimit small { 4096, before.rlim_max };
        QCOMPARE(setrlimit(RLIMIT_FSIZE, &small), 0);
        const auto saved = saveFile(path, std::string(200'000, 'x'));
        QCOMPARE(setrlimit(RLIMIT_FSIZE, &before), 0);
        std::signal(SIGXFSZ, old);
        QVERIFY(!saved);
        QCOMPARE(int(saved.error().code), int(ErrorCode::FileUnwritable));
        QCOMPARE(contentOf(path), QByteArray("older"));
        QCOMPARE(QDir(m_dir.path()).entryList({ QStringLiteral("c.csv*") }).size(), 1);
    }

    void fullDisk_isSaidAndLeavesTheOlderFile()
    {
        const QString disk = m_dir.filePath(QStringLiteral("disk"));
        QVERIFY(QDir().mkdir(disk));
        const QByteArray where = QFile::encodeName(disk);
        if (mount("tmpfs", where.constData(), "tmpfs", 0, "size=64k") != 0)
            QSKIP("only the administrator can make a small disk");
        const QString path = disk + QStringLiteral("/d.csv");
        const bool first = saveFile(path, "older").has_value();
        const auto saved = saveFile(path, std::string(200'000, 'x'));
        const QByteArray left = contentOf(path);
        umount(where.constData());
        QVERIFY(first);
        QVERIFY(!saved);
        QCOMPARE(int(saved.error().code), int(ErrorCode::StoreFull));
        QVERIFY(QString::fromStdString(saved.error().sentence).contains(QStringLiteral("disk is full")));
        QCOMPARE(left, QByteArray("older"));
    }
};

QTEST_APPLESS_MAIN(SaveFile)
#include "tst_savefile.moc"
