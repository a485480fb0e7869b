#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "demand/orderplan.h"
#include "demands.h"

namespace gw::test {

/// Invented shops that order one glue each month for a year, after a year of work that nobody planned: how
/// often what was bought was enough until the next delivery, and how much of it went off. The true rates are
/// drawn from what the shop believes of them, so a plan that reckons rightly keeps its promise.
struct ShopYears {
    int cycles = 0; ///< from one delivery to the next
    int sufficed = 0;
    double bought = 0, wasted = 0; ///< grams
    double service() const { return 100.0 * sufficed / cycles; }
    /// One standard error of the service, percent.
    double error() const { return 100 * std::sqrt(service() / 100 * (1 - service() / 100) / cycles); }
    double waste() const { return 100 * wasted / bought; }
};

inline constexpr double cycleDays = 30;
inline constexpr double deliveryDays = 7;
inline constexpr double glueLife = 110; ///< days, sealed or not
inline constexpr double packGrams = 20;
inline constexpr int monthsBefore = 12;
inline constexpr int monthsPlanned = 12;

/// One kind of work of one shop, with every job of both years.
struct KindOfWork {
    double expected = 0; ///< a month, as the shop says
    double estimate = 0; ///< grams a job
    struct Job {
        double day, grams;
    };
    std::vector<Job> jobs; ///< by day
};

inline std::vector<KindOfWork> someShop(std::mt19937& random)
{
    std::vector<KindOfWork> kinds(3);
    constexpr double days = (monthsBefore + monthsPlanned + 2) * cycleDays;
    for (KindOfWork& kind : kinds) {
        kind.expected = std::uniform_real_distribution<double>(0.4, 4)(random);
        kind.estimate = std::round(std::uniform_real_distribution<double>(5, 40)(random));
        const double rate = std::gamma_distribution<double>(3 * kind.expected, 1.0 / 3)(random) / cycleDays;
        const double own = kind.estimate * std::lognormal_distribution<double>(0, 0.3)(random);
        std::exponential_distribution<double> gap(rate);
        std::lognormal_distribution<double> spread(-0.03, 0.25);
        for (double day = gap(random); day < days; day += gap(random))
            kind.jobs.push_back({ day, std::max(1.0, std::round(own * spread(random))) });
    }
    return kinds;
}

struct GlueLot {
    double grams, until; ///< day
};

/// Uses what is there, first to expire first; answers how much was short.
inline double takeFrom(std::vector<GlueLot>& stock, double grams)
{
    std::sort(
        stock.begin(), stock.end(), [](const GlueLot& a, const GlueLot& b) { return a.until < b.until; });
    for (GlueLot& each : stock) {
        const double taken = std::min(each.grams, grams);
        each.grams -= taken;
        grams -= taken;
    }
    return grams;
}

inline double throwAway(std::vector<GlueLot>& stock, double day)
{
    double gone = 0;
    for (GlueLot& each : stock) {
        if (each.until <= day) {
            gone += each.grams;
            each.grams = 0;
        }
    }
    std::erase_if(stock, [](const GlueLot& each) { return each.grams <= 0; });
    return gone;
}

/// A year of one shop. `order` says how many grams to buy on a day, with what there is.
template <class Order>
void runShop(const std::vector<KindOfWork>& kinds, const Order& order, ShopYears& years)
{
    std::vector<KindOfWork::Job> jobs;
    for (const KindOfWork& kind : kinds)
        jobs.insert(jobs.end(), kind.jobs.begin(), kind.jobs.end());
    std::sort(jobs.begin(), jobs.end(), [](const auto& a, const auto& b) { return a.day < b.day; });
    auto job = std::find_if(
        jobs.begin(), jobs.end(), [](const auto& each) { return each.day >= monthsBefore * cycleDays; });

    std::vector<GlueLot> stock;
    bool counted = false; // the first order meets an empty shelf
    bool enough = true;
    const auto workUntil = [&](double day) {
        for (; job != jobs.end() && job->day < day; ++job) {
            years.wasted += throwAway(stock, job->day);
            if (takeFrom(stock, job->grams) > 0)
                enough = false;
        }
        years.wasted += throwAway(stock, day);
    };
    for (int month = 0; month <= monthsPlanned; ++month) {
        const double today = (monthsBefore + month) * cycleDays;
        workUntil(today);
        const double grams = order(today, stock);
        workUntil(today + deliveryDays);
        if (counted) {
            ++years.cycles;
            years.sufficed += enough;
        }
        counted = true;
        enough = true;
        years.bought += grams;
        if (grams > 0)
            stock.push_back({ grams, today + deliveryDays + glueLife });
    }
}

/// What a shop knows on a day, as the plan takes it.
inline MaterialDemand demandOn(
    double day, const std::vector<KindOfWork>& kinds, const std::vector<GlueLot>& stock)
{
    MaterialDemand demand = material("glue", {}, { offer("tube", grams(packGrams), 200, deliveryDays) });
    for (const KindOfWork& kind : kinds) {
        UseOfJob use { "work", kind.expected, kind.estimate };
        use.monthsSeen = std::min(12.0, day / cycleDays);
        for (const auto& job : kind.jobs) {
            if (job.day >= day)
                break;
            use.weighed.push_back(job.grams);
            use.jobsSeen += job.day >= day - use.monthsSeen * cycleDays;
        }
        // The plan's month is a little longer than the cycle here.
        use.monthsSeen *= cycleDays / meanMonth.count();
        use.jobsPerMonth *= meanMonth.count() / cycleDays;
        demand.jobs.push_back(std::move(use));
    }
    for (const GlueLot& each : stock)
        demand.stock.push_back({ grams(each.grams), later(june, Days { each.until - day }), false });
    demand.sealedLife = Range<Days> { Days { glueLife }, Days { glueLife } };
    return demand;
}

/// Shops that buy by the order plan.
inline ShopYears plannedYears(unsigned seed, int shops, double service)
{
    std::mt19937 random(seed);
    ShopYears years;
    for (int shop = 0; shop < shops; ++shop) {
        const auto kinds = someShop(random);
        runShop(
            kinds,
            [&](double day, const std::vector<GlueLot>& stock) {
                PlanRequest request = juneList(service);
                request.reviewDays = cycleDays;
                request.now = startOf(request.monthStart);
                const MaterialDemand demand = demandOn(day, kinds, stock);
                const auto plan = planOrder(request, { demand });
                if (!plan)
                    qFatal("%s", plan.error().sentence.c_str());
                return plan->lines.empty() ? 0.0 : plan->lines.front().ordered.value();
            },
            years);
    }
    return years;
}

/// The same shops buying up to so many months of supply, by the mean of the last three months.
inline ShopYears yearsOfSupply(unsigned seed, int shops, double monthsOfSupply)
{
    std::mt19937 random(seed);
    ShopYears years;
    for (int shop = 0; shop < shops; ++shop) {
        const auto kinds = someShop(random);
        runShop(
            kinds,
            [&](double day, const std::vector<GlueLot>& stock) {
                double used = 0;
                for (const KindOfWork& kind : kinds)
                    for (const auto& job : kind.jobs)
                        used += job.day < day && job.day >= day - 3 * cycleDays ? job.grams : 0;
                double there = 0;
                for (const GlueLot& each : stock)
                    there += each.grams;
                const double gap = monthsOfSupply * used / 3 - there;
                return gap > 0 ? std::ceil(gap / packGrams) * packGrams : 0;
            },
            years);
    }
    return years;
}

/// The months of supply that reach a service, and what then goes off.
inline std::pair<double, ShopYears> supplyForService(unsigned seed, int shops, double service)
{
    double low = 0.5;
    double high = 12;
    for (int i = 0; i < 12; ++i) {
        const double middle = (low + high) / 2;
        (yearsOfSupply(seed, shops, middle).service() < service ? low : high) = middle;
    }
    return { high, yearsOfSupply(seed, shops, high) };
}

} // namespace gw::test
