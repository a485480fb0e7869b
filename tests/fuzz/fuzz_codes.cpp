// Any text as a code, and any text as a lot code: no crash, no hang, and what is answered holds together.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "codes/code.h"
#include "codes/lotdate.h"
#include "codes/ownlabel.h"

namespace {

const gw::Date today = std::chrono::year { 2026 } / 11 / 20;

/// Stops the fuzzer, which then keeps the input.
void must(bool holds)
{
    if (!holds)
        std::abort();
}

void tryCode(std::string_view text, std::string_view symbology)
{
    const gw::Code code = gw::readCode(text, symbology, today);
    must(code.text.size() <= 8192);
    if (code.error) {
        must(!code.error->sentence.empty() && code.error->sentence.size() < 1000);
        must(!code.gtin && code.lot.empty() && !code.made && !code.useBy && code.amounts.empty());
    }
    must(!code.gtin || gw::parseGtin(code.gtin->digits14).has_value());
    must(!code.useBy || code.useBy->ok());
    if (code.gtin)
        must(!gw::itemInside(*code.gtin) || gw::parseGtin(gw::itemInside(*code.gtin)->digits14).has_value());
}

void tryLot(std::string_view text)
{
    gw::LotDateContext context;
    context.today = today;
    for (int round = 0; round < 2; ++round) {
        const auto dates = gw::lotDates(text, context);
        must(dates.size() <= 6);
        for (const gw::LotDate& date : dates) {
            must(date.days.low.ok() && date.days.high.ok() && date.days.low <= today);
            must(date.plausibility > 0 && date.plausibility <= 1);
            must(gw::lotDateManner(date.key) == date.manner);
        }
        if (dates.empty())
            return;
        // The least plausible, chosen last time, comes first.
        context.key = dates.back().key;
        if (round == 1)
            must(dates.front().asLastTime);
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    tryCode(text, {});
    for (const std::string_view symbology : { "]d2", "]C1", "]E0", "]E4", "]e0", "]Q1", "]I1" })
        tryCode(text, symbology);
    tryLot(text);
    (void)gw::lotDateManner(text);
    (void)gw::parseOwnLabel(text);
    (void)gw::expandUpcE(text);
    return 0;
}
