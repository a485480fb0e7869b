// How long a month's order list takes. Prints milliseconds for each list; run on a quiet machine.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <random>
#include <string>
#include <vector>

#include "demand/compoundpoisson.h"
#include "demand/orderplan.h"

namespace {

using clock = std::chrono::steady_clock;

const gw::Date june = std::chrono::year { 2026 } / 6 / 1;

gw::MaterialDemand someMaterial(std::mt19937& random, int number)
{
    const auto upTo = [&](double most) { return std::uniform_real_distribution<double>(0, most)(random); };
    gw::MaterialDemand demand;
    demand.material = gw::MaterialId { std::to_string(number) };
    demand.name = "Material " + std::to_string(number);
    for (int job = 0; job < 6; ++job)
        demand.jobs.push_back({ "Job", upTo(5), upTo(60) });
    for (int month = 0; month < 24; ++month) {
        demand.usedPerMonth.push_back(upTo(500));
        demand.otherUsePerMonth.push_back(upTo(3) < 2 ? 0 : upTo(80));
    }
    for (const double size : { 100.0, 250.0, 500.0, 1000.0, 5000.0 })
        demand.packs.push_back({ gw::PackId { std::to_string(size) }, "pack", gw::grams(size),
            gw::Money { static_cast<std::int64_t>(size * 2 + 300), "EUR" }, "supplier", upTo(14) });
    for (int container = 0; container < 8; ++container)
        demand.stock.push_back({ gw::grams(upTo(60)), gw::later(gw::startOf(june), gw::Days { upTo(400) }),
            container % 2 == 0 });
    demand.sealedLife = gw::Range<gw::Days> { gw::Days { 300 }, gw::Days { 400 } };
    demand.openedLife = gw::Range<gw::Days> { gw::Days { 20 + upTo(200) }, gw::Days { 300 } };
    return demand;
}

template <class Work> double leastMilliseconds(int times, const Work& work)
{
    double least = 1e300;
    for (int i = 0; i < times; ++i) {
        const auto start = clock::now();
        work();
        least = std::min(least, std::chrono::duration<double, std::milli>(clock::now() - start).count());
    }
    return least;
}

} // namespace

int main()
{
    std::mt19937 random(7);
    std::vector<gw::MaterialDemand> materials;
    for (int i = 0; i < 200; ++i)
        materials.push_back(someMaterial(random, i));
    // Every other material is the partner of the one before.
    for (std::size_t i = 0; i + 1 < materials.size(); i += 2) {
        materials[i].partner = materials[i + 1].material;
        materials[i].partnerPerUnit = 0.4;
    }
    const gw::PlanRequest request { june, gw::startOf(june) };
    std::size_t lines = 0;
    const double list = leastMilliseconds(5, [&] {
        const auto plan = gw::planOrder(request, materials);
        lines = plan ? plan->lines.size() : 0;
    });
    std::printf("order list of 200 materials, %zu lines   %8.1f ms\n", lines, list);

    const std::vector<gw::AmountChance> severity { { 1, .5 }, { 2, .3 }, { 3, .2 } };
    for (const double jobs : { 3.0, 1000.0, 100'000.0 }) {
        std::size_t points = 0;
        const double spent = leastMilliseconds(5, [&] {
            const auto use = gw::CompoundPoisson::of(jobs, severity);
            points = use ? use->probabilities().size() : 0;
        });
        std::printf("%.0f jobs exactly, %zu points   %8.3f ms\n", jobs, points, spent);
    }
    return lines == 0 ? 1 : 0;
}
