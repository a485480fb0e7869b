#include "measure/ratio.h"

#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

Result<std::pair<double, double>> parseRatio(std::string_view text)
{
    const auto first = leadingNumber(text);
    if (first && first->rest.starts_with(':')) {
        const auto second = leadingNumber(trimmed(first->rest.substr(1)));
        if (second && second->rest.empty())
            return std::pair { first->value, second->value };
    }
    return fail(ErrorCode::BadInput, "Give a ratio as two numbers such as 2:1, not " + inQuotes(text) + ".");
}

} // namespace gw
