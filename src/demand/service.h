#pragma once

#include <string>

namespace gw {

/// Whether a service level can be asked for: over 0 and under 100 percent.
inline bool isService(double percent) { return percent > 0 && percent < 100; }

/// What to say when it cannot.
inline std::string serviceSentence()
{
    return "The service level must be over 0 and under 100 percent; 95 is usual.";
}

} // namespace gw
