#pragma once

#include <boost/math/policies/policy.hpp>

namespace gw {

/// Boost.Math reports faults by exceptions unless told otherwise, and none may leave this room: with this
/// policy the answer is no finite number instead, and callers check for that. Counts keep their real-valued
/// quantile.
namespace policies = boost::math::policies;
using QuietMath = policies::policy<policies::domain_error<policies::errno_on_error>,
    policies::pole_error<policies::errno_on_error>, policies::overflow_error<policies::errno_on_error>,
    policies::evaluation_error<policies::errno_on_error>, policies::rounding_error<policies::errno_on_error>,
    policies::discrete_quantile<policies::real>>;

} // namespace gw
