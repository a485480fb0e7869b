#include "faults/surroundings.h"

#include <csignal>

#include <QFile>
#include <QtGlobal>

#include <sys/mount.h>
#include <sys/resource.h>
#include <unistd.h>

namespace gw::test {

namespace {

constexpr uid_t nobody = 65534;

QByteArray sized(int kilobytes) { return "mode=0777,size=" + QByteArray::number(kilobytes) + 'k'; }

} // namespace

SmallDisk::SmallDisk(const QString& folder, int kilobytes)
    : m_folder(folder)
    , m_isThere(
          ::mount("tmpfs", QFile::encodeName(folder).constData(), "tmpfs", 0, sized(kilobytes).constData())
          == 0)
{
}

SmallDisk::~SmallDisk()
{
    if (m_isThere)
        ::umount2(QFile::encodeName(m_folder).constData(), MNT_DETACH);
}

bool SmallDisk::again(const QString& options, unsigned long flags) const
{
    return ::mount("tmpfs", QFile::encodeName(m_folder).constData(), "tmpfs", MS_REMOUNT | flags,
               options.toUtf8().constData())
        == 0;
}

bool SmallDisk::resize(int kilobytes) const { return again(QString::fromUtf8(sized(kilobytes)), 0); }
bool SmallDisk::makeReadOnly() const { return again({}, MS_RDONLY); }

// The real user as well as the effective one: access(2) asks for the real one. The saved one leads back.
OrdinaryUser::OrdinaryUser()
    : m_wasRoot(::getuid() == 0)
{
    if (m_wasRoot && ::setresuid(nobody, nobody, 0) != 0)
        qFatal("root could not become an ordinary user");
}

OrdinaryUser::~OrdinaryUser()
{
    if (m_wasRoot && ::setresuid(0, 0, 0) != 0)
        qFatal("the ordinary user could not become root again");
}

FileSizeLimit::FileSizeLimit(unsigned long bytes)
    : m_before(0)
{
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit limit {};
    if (::getrlimit(RLIMIT_FSIZE, &limit) != 0)
        qFatal("no limit to be had");
    m_before = limit.rlim_cur;
    limit.rlim_cur = bytes;
    if (::setrlimit(RLIMIT_FSIZE, &limit) != 0)
        qFatal("no limit to be set");
}

FileSizeLimit::~FileSizeLimit()
{
    rlimit limit {};
    ::getrlimit(RLIMIT_FSIZE, &limit);
    limit.rlim_cur = m_before;
    ::setrlimit(RLIMIT_FSIZE, &limit);
}

} // namespace gw::test
