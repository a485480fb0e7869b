// How long a month's plan takes for 2,000 materials of 30 job types with 24 months of history, how that
// grows, and how much longer R's actuar takes over the same compound distributions (aggregateDist for each
// job type, then convolved), where Rscript and actuar are installed. Also a thousand shop-years. Run on a
// quiet machine.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include <QtGlobal>

#include "../demand/shopyears.h"
#include "demand/orderplan.h"
#include "demand/usage.h"

namespace {

using clock = std::chrono::steady_clock;

constexpr int jobTypes = 30;
constexpr int months = 24;
constexpr std::size_t points = 1024; // as the plan takes

gw::MaterialDemand someMaterial(std::mt19937& random, int number)
{
    const auto upTo = [&](double most) { return std::uniform_real_distribution<double>(0, most)(random); };
    gw::MaterialDemand demand = gw::test::material("Material " + std::to_string(number), {}, {});
    for (int job = 0; job < jobTypes; ++job) {
        gw::UseOfJob use { "Job " + std::to_string(job), 0.2 + upTo(3), 2 + upTo(40) };
        use.monthsSeen = months;
        use.jobsSeen = std::poisson_distribution<int>(use.jobsPerMonth * months)(random);
        // A third of the kinds of work are weighed.
        for (int i = 0; job % 3 == 0 && i < use.jobsSeen; ++i)
            use.weighed.push_back(use.amountPerJob * (0.7 + upTo(0.6)));
        demand.jobs.push_back(std::move(use));
    }
    for (int month = 0; month < months; ++month)
        demand.otherUsePerMonth.push_back(upTo(3) < 2 ? 0 : upTo(80));
    for (const double size : { 100.0, 250.0, 1000.0 })
        demand.packs.push_back(
            gw::test::offer("pack", gw::grams(size), static_cast<std::int64_t>(size * 2 + 300), upTo(14)));
    for (int container = 0; container < 4; ++container)
        demand.stock.push_back(gw::test::lot(upTo(200), upTo(400), container % 2 == 0));
    demand.sealedLife = gw::Range<gw::Days> { gw::Days { 300 }, gw::Days { 400 } };
    demand.openedLife = gw::Range<gw::Days> { gw::Days { 120 }, gw::Days { 200 } };
    return demand;
}

double planSeconds(const std::vector<gw::MaterialDemand>& materials, std::size_t count, double review)
{
    const std::vector<gw::MaterialDemand> some(
        materials.begin(), materials.begin() + static_cast<std::ptrdiff_t>(count));
    gw::PlanRequest request = gw::test::juneList();
    request.reviewDays = review;
    const auto start = clock::now();
    const auto plan = gw::planOrder(request, some);
    const double spent = std::chrono::duration<double>(clock::now() - start).count();
    if (!plan)
        std::printf("%s\n", plan.error().sentence.c_str());
    return spent;
}

/// The kinds of work of one material on the lattice the plan takes, as aggregate_oracle.R reads them.
std::string oracleLine(const gw::MaterialDemand& demand, double span, double step)
{
    const gw::UseForecast use = gw::forecastUse(demand);
    std::string line;
    for (const gw::ForecastJob& job : use.jobs) {
        const auto amounts = gw::onSteps(job.amount.chances, step);
        std::vector<double> chances(amounts.back().first + 1, 0);
        for (const auto& [steps, chance] : amounts)
            chances[steps] += chance;
        line += (line.empty() ? "mixed " : " | mixed ") + std::to_string(job.rate.shape) + ' '
            + std::to_string(job.rate.rate / span) + " :";
        for (const double chance : chances)
            line += ' ' + std::to_string(chance);
    }
    return line;
}

void compareWithActuar(const std::vector<gw::MaterialDemand>& materials, std::size_t sample)
{
    if (std::system("Rscript --vanilla -e 'library(actuar)' >/dev/null 2>&1") != 0) {
        std::printf("R with actuar is not installed: nothing to compare with\n");
        return;
    }
    constexpr double span = 44.0 / 30.436875;
    const std::string file = "/tmp/gw_bench_plan_" + std::to_string(sample) + ".txt";
    std::ofstream lines(file);
    double ours = 0;
    for (std::size_t i = 0; i < sample; ++i) {
        const gw::UseForecast use = gw::forecastUse(materials[i]);
        const auto start = clock::now();
        const auto distribution = gw::useOver(use, gw::meanMonth * span);
        ours += std::chrono::duration<double>(clock::now() - start).count();
        lines << oracleLine(materials[i], span, distribution->step()) << '\n';
    }
    lines.close();
    // R times its own sums, without starting and reading.
    const std::string command
        = "Rscript --vanilla '" GW_AGGREGATE_ORACLE "' time " + std::to_string(points) + " < " + file;
    FILE* oracle = popen(command.c_str(), "r");
    double theirs = 0;
    if (!oracle || std::fscanf(oracle, "%lf", &theirs) != 1)
        std::printf("actuar gave no answer\n");
    if (oracle)
        pclose(oracle);
    std::remove(file.c_str());
    std::printf("use of one material, %d job types   ours %8.3f ms   actuar %8.1f ms   ratio %.0f\n",
        jobTypes, 1000 * ours / static_cast<double>(sample), 1000 * theirs / static_cast<double>(sample),
        theirs / ours);
}

} // namespace

int main()
{
    std::mt19937 random(7);
    std::vector<gw::MaterialDemand> materials;
    for (int i = 0; i < 2000; ++i)
        materials.push_back(someMaterial(random, i));
    for (const std::size_t count : { 250U, 500U, 1000U, 2000U })
        std::printf("plan of %4zu materials   %8.3f s\n", count, planSeconds(materials, count, 30.436875));
    for (const double review : { 30.436875, 91.310625, 182.62125 })
        std::printf("plan of  500 materials, next list in %3.0f days   %8.3f s\n", review,
            planSeconds(materials, 500, review));
    for (const std::size_t resolution : { 256U, 1024U, 4096U }) {
        const gw::UseForecast use = gw::forecastUse(materials.front());
        std::vector<gw::UseStream> streams;
        for (const gw::ForecastJob& job : use.jobs)
            streams.push_back({ job.amount.chances, job.rate, 1.44, {}, 0 });
        const auto start = clock::now();
        for (int i = 0; i < 20; ++i)
            (void)gw::compoundUse(streams, resolution);
        std::printf("one material on %4zu points   %8.3f ms\n", resolution,
            std::chrono::duration<double, std::milli>(clock::now() - start).count() / 20);
    }
    compareWithActuar(materials, 10);

    for (const double promised : { 80.0, 95.0 }) {
        const auto planned = gw::test::plannedYears(11, 1000, promised);
        const auto [supply, rule] = gw::test::supplyForService(11, 1000, planned.service());
        std::printf("1,000 shop-years, %.0f %% promised: %.2f %% +- %.2f sufficed, %.2f %% went off; "
                    "%.2f months of supply: %.2f %% sufficed, %.2f %% went off\n",
            promised, planned.service(), planned.error(), planned.waste(), supply, rule.service(),
            rule.waste());
    }
    return 0;
}
