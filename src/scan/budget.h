#pragma once

#include <ctime>

namespace gw {

/// How much processor time this thread may still spend on a picture: what else the machine does does not
/// count.
class Budget {
public:
    explicit Budget(double milliseconds)
        : m_end(spent() + milliseconds)
    {
    }
    bool isLeft() const { return spent() < m_end; }

private:
    static double spent()
    {
        timespec time {};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
        return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
    }
    double m_end;
};

} // namespace gw
