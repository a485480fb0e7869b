#include "demand/ordercheck.h"

#include <algorithm>
#include <cmath>

#include "demand/service.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr double mostAmount = 1e9; // base units, as for amounts that are typed in
constexpr double mostJobs = 1e4;
constexpr double mostDays = 3660;
constexpr std::int64_t mostMoney = 1'000'000'000'000;
constexpr int mostPacksSaid = 1000;
constexpr int mostMonthsAhead = 24;

Error bad(std::string sentence) { return { ErrorCode::BadInput, std::move(sentence) }; }

bool within(double value, double low, double high) { return value >= low && value <= high; }

bool isLife(const std::optional<Range<Days>>& life)
{
    return !life || (life->low.count() >= 0 && life->high >= life->low && std::isfinite(life->high.count()));
}

bool areMonths(const std::vector<double>& months)
{
    return std::all_of(
        months.begin(), months.end(), [](double used) { return within(used, -mostAmount, mostAmount); });
}

bool areWeighings(const std::vector<double>& weighed)
{
    return std::all_of(
        weighed.begin(), weighed.end(), [](double each) { return within(each, 0, mostAmount); });
}

std::optional<Error> flawIn(const PackOffer& pack, const std::string& of)
{
    const std::string which = "The pack " + inQuotes(pack.name) + " of " + of;
    if (pack.amount.milli <= 0)
        return bad(which + " holds nothing; enter what it holds.");
    if (pack.amount.value() > mostAmount)
        return bad(which + " holds more than any pack can; correct its amount.");
    if (!within(pack.leadDays, 0, mostDays))
        return bad(which + " has no lead time that can be counted with; enter days from 0 to 3660.");
    if (pack.soldBy < 1 || pack.soldBy > mostPacksSaid || pack.least < 1 || pack.least > mostPacksSaid)
        return bad(which + " is sold in cases, or from a number on, that cannot be; enter 1 to 1000.");
    if (pack.price && !(pack.price->minorUnits >= 0 && pack.price->minorUnits <= mostMoney))
        return bad(which + " has a price that cannot be; correct it or leave it empty.");
    return std::nullopt;
}

} // namespace

std::optional<Error> flawIn(const PlanRequest& request)
{
    if (!isService(request.servicePercent))
        return bad(serviceSentence());
    if (request.budget && !(request.budget->minorUnits >= 0 && request.budget->minorUnits <= mostMoney))
        return bad("The budget must be an amount of money from nothing on; give it as in 150 EUR.");
    if (!within(request.reviewDays, 1, 366))
        return bad("The time to the next list must be 1 to 366 days; a month is usual.");
    if (!request.monthStart.ok())
        return bad("The month of the list does not exist; give it as in 2026-05.");

    const Date first = request.monthStart.year() / request.monthStart.month() / std::chrono::day { 1 };
    const std::string month = "The month from " + spokenDate(first);
    // Somewhere on earth a month ends 12 hours after it does in UTC; a shop there may still be in it.
    if (startOf(addMonths(first, 1)) + std::chrono::hours { 12 } <= request.now)
        return bad(month + " is past; ask for this month or a later one.");
    if (startOf(first) > startOf(addMonths(dateOf(request.now), mostMonthsAhead)))
        return bad(month + " is too far ahead to plan; ask for one within two years.");
    return std::nullopt;
}

std::optional<Error> flawIn(const MaterialDemand& material)
{
    const std::string name = inQuotes(material.name);
    for (const UseOfJob& job : material.jobs) {
        if (!within(job.jobsPerMonth, 0, mostJobs) || !within(job.morePerMonth, 0, mostJobs))
            return bad("The number of " + inQuotes(job.jobName) + " jobs a month for " + name
                + " cannot be; give 0 to 10000.");
        if (!within(job.jobsSeen, 0, mostJobs * 120) || !within(job.monthsSeen, 0, 120))
            return bad(
                "The " + inQuotes(job.jobName) + " jobs on record cannot be counted; check their dates.");
        if (!areWeighings(job.weighed))
            return bad("What " + inQuotes(job.jobName) + " jobs took of " + name
                + " cannot be read; check the entries.");
        if (!within(job.amountPerJob, 0, mostAmount))
            return bad("What a " + inQuotes(job.jobName) + " job takes of " + name
                + " cannot be; give an amount of zero or more.");
    }
    if (!areMonths(material.usedPerMonth) || !areMonths(material.otherUsePerMonth))
        return bad("The use on record of " + name + " cannot be read; check its entries.");
    if (!isLife(material.sealedLife) || !isLife(material.openedLife))
        return bad(
            "The life of " + name + " cannot be; the low figure must be zero or more and the high no lower.");
    if (!within(material.partnerPerUnit, 0, 1e6))
        return bad("The mix ratio of " + name + " and its partner cannot be; give parts over zero.");
    for (const PackOffer& pack : material.packs) {
        if (auto flaw = flawIn(pack, name))
            return flaw;
    }
    return std::nullopt;
}

} // namespace gw
