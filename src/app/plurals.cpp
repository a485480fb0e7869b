#include "app/plurals.h"

#include <cstring>

namespace gw {

QString Plurals::translate(const char*, const char* source, const char*, int n) const
{
    constexpr auto ending = QLatin1String("(s)");
    if (n < 0 || !std::strstr(source, "(s)"))
        return {};
    return QString::fromUtf8(source).replace(ending, n == 1 ? QLatin1String("") : QLatin1String("s"));
}

} // namespace gw
