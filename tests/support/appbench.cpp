#include "support/appbench.h"

#include "shop/care.h"
#include "shop/setup.h"

namespace gw::test {

Moment AppBench::noon()
{
    return startOf(Date { std::chrono::year { 2026 }, std::chrono::month { 3 }, std::chrono::day { 2 } })
        + std::chrono::hours(12);
}

AppBench::AppBench(Stock stock)
{
    shop.open({ storeFile() });
    ask([stock, at = now](Shop& open) -> Result<bool> {
        if (stock == Stock::Demo)
            return fillDemo(open, at).map([](const DemoCounts&) { return true; });
        const auto bench = savePlaceNamed(open, "Bench", Range<Celsius> { Celsius { 18 }, Celsius { 22 } });
        const auto leanTo
            = savePlaceNamed(open, "Lean-to", Range<Celsius> { Celsius { -8 }, Celsius { 34 } });
        return bench && leanTo
            ? Result<bool>(true)
            : Result<bool>(fail(ErrorCode::StoreFailed, "The places of the test could not be saved."));
    });
    ask([](Shop& open) { return open.store().setSetting("started", "1").map([] { return true; }); });
}

} // namespace gw::test
