// How long reading one code takes, by kind. Prints nanoseconds per text; run on a quiet machine.
#include <chrono>
#include <cstdio>
#include <string>

#include "codes/code.h"

namespace {

struct Case {
    const char* name;
    std::string text;
    const char* symbology;
};

double nanosecondsEach(const Case& c, int times)
{
    using clock = std::chrono::steady_clock;
    const gw::Date today = std::chrono::year { 2026 } / 7 / 1;
    std::size_t seen = 0;
    const auto start = clock::now();
    for (int i = 0; i < times; ++i)
        seen += gw::readCode(c.text, c.symbology, today).elements.size() + 1;
    const std::chrono::duration<double, std::nano> spent = clock::now() - start;
    return seen == 0 ? 0 : spent.count() / times;
}

} // namespace

int main()
{
    std::string crowded = "0109520123456788";
    while (crowded.size() < 8000)
        crowded += "90A\x1D";
    const Case cases[] = {
        { "element string, item date lot", "01095201234567881726123110ABC123", "]d2" },
        { "element string, five elements",
            "010952012345678810ABC123\x1D"
            "1726123131030007502112345",
            "]d2" },
        { "bracketed", "(01)09520123456788(17)261231(10)ABC123", "" },
        { "digital link", "https://example.com/01/09520123456788/10/ABC1/21/12345?17=261231", "]Q1" },
        { "item number", "2112345678900", "]E0" },
        { "own label", "GW74EG8B7", "]Q1" },
        { "plain", "hide glue, 192 g, second shelf", "" },
        { "wrong check digit", "01095201234567891726123110ABC123", "]d2" },
        { "8 kB of elements", crowded, "]d2" },
        { "5 MB of digits", std::string(5'000'000, '7'), "" },
    };
    for (const Case& c : cases)
        std::printf("%-32s %12.0f ns\n", c.name, nanosecondsEach(c, c.text.size() > 1000 ? 200 : 200'000));
}
