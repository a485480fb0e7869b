#include "cli/quietlibraries.h"

#include <cstdio>

#include <fcntl.h>
#include <unistd.h>

namespace gw {

QuietLibraries::QuietLibraries()
    : m_kept(dup(STDERR_FILENO))
{
    std::fflush(stderr);
    const int nowhere = open("/dev/null", O_WRONLY | O_CLOEXEC);
    if (m_kept >= 0 && nowhere >= 0)
        dup2(nowhere, STDERR_FILENO);
    if (nowhere >= 0)
        close(nowhere);
}

QuietLibraries::~QuietLibraries()
{
    std::fflush(stderr);
    if (m_kept < 0)
        return;
    dup2(m_kept, STDERR_FILENO);
    close(m_kept);
}

} // namespace gw
