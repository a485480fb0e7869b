#pragma once

#include "ageing/clocks.h"
#include "ageing/verdict.h"

namespace gw {

/// judge() of a container whose spans stay at hand for what is asked of it next.
Judgement judge(const AgeCase& item);

/// How long one passed test extends: a share of the opened low life, or of the sealed where opening does not
/// matter.
Days grantLength(const LifeFigures& figures);

} // namespace gw
