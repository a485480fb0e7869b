#include "demand/orderwords.h"

#include <algorithm>
#include <cmath>

#include "measure/number.h"
#include "measure/temperature.h"

namespace gw {

namespace {

constexpr std::size_t jobsNamed = 3;
constexpr double leastShown = 0.0005; // half of what the ledger can tell apart

std::string amountText(double value, Dimension dimension) { return formatAmount(amountOf(value, dimension)); }

/// "2.3 × Chair at 14 g from 6 jobs"
std::string jobText(const ForecastJob& job, Dimension dimension)
{
    const std::string dated = std::to_string(job.planned) + " planned with a date";
    std::string text;
    if (job.perMonth() > 0)
        text = figure(job.rate.mean()) + " × " + job.jobName + (job.planned > 0 ? " (" + dated + ")" : "");
    else
        text = job.jobName + ", " + dated;
    if (job.amount.jobs > 0)
        text += " at " + amountText(job.amount.mean, dimension) + " from " + std::to_string(job.amount.jobs)
            + (job.amount.jobs == 1 ? " job" : " jobs");
    return text;
}

std::string jobsText(std::vector<ForecastJob> jobs, Dimension dimension)
{
    std::sort(jobs.begin(), jobs.end(), [](const ForecastJob& a, const ForecastJob& b) {
        return a.perMonth() != b.perMonth() ? a.perMonth() > b.perMonth() : a.jobName < b.jobName;
    });
    std::string text;
    for (std::size_t i = 0; i < std::min(jobs.size(), jobsNamed); ++i)
        text += (i == 0 ? "" : "; ") + jobText(jobs[i], dimension);
    if (jobs.size() > jobsNamed)
        text += "; and more";
    return text;
}

std::string useText(const OrderDraft& draft)
{
    const UseForecast& use = draft.use;
    const Dimension dimension = draft.demand->dimension;
    const double fromJobs = use.perMonth - use.otherPerMonth;
    switch (use.basis) {
    case UseBasis::Jobs:
        if (!(fromJobs > 0))
            return "Planned work takes about " + amountText(draft.ahead.mean(), dimension) + " ("
                + jobsText(use.jobs, dimension) + ")";
        return "Jobs take about " + amountText(fromJobs, dimension) + " a month ("
            + jobsText(use.jobs, dimension) + ")";
    case UseBasis::JobsAndOther:
        return "Jobs take about " + amountText(fromJobs, dimension) + " a month ("
            + jobsText(use.jobs, dimension) + ") and other use about "
            + amountText(use.otherPerMonth, dimension);
    case UseBasis::RecentMonths:
        return "Use is about " + amountText(use.otherPerMonth, dimension) + " a month ("
            + (use.months == 1 ? "one month on record"
                               : "mean of the last " + std::to_string(use.months) + " months")
            + ")";
    case UseBasis::NowAndThen:
        return "It is used now and then, about " + amountText(use.otherPerMonth, dimension) + " a month ("
            + std::to_string(use.months) + " months on record)";
    case UseBasis::None:
        break;
    }
    return "No use of its own is planned or on record";
}

std::string needText(const OrderDraft& draft, const PlanRequest& request)
{
    const double days = std::round(draft.lead.count() + request.reviewDays);
    std::string text = useText(draft) + "; " + figure(days) + " days of delivery and use ask for "
        + formatAmount(draft.need) + " at " + figure(request.servicePercent) + " %.";
    if (!draft.leaderName.empty())
        text += " It goes with " + draft.leaderName + ", " + figure(100 * draft.perLeaderUnit) + " to 100.";
    if (draft.matched)
        text += " To match its partner " + formatAmount(*draft.matched) + " is wanted in all.";
    return text;
}

std::string stockText(const OrderDraft& draft)
{
    const Runoff& runoff = draft.runoff;
    const Amount& coming = draft.demand->onOrder;
    std::string ordered = coming.milli > 0 ? " " + formatAmount(coming) + " is on order." : std::string();
    if (runoff.usable.milli == 0 && runoff.past.milli == 0)
        return ordered;
    std::string text = runoff.usable.milli == 0
        ? " Nothing in stock will still pass when needed"
        : " Of the stock " + formatAmount(runoff.usable) + " is good for that";
    if (runoff.past.milli > 0) {
        text += "; " + formatAmount(runoff.past);
        text += runoff.firstPast
            ? " will be past unused, the first from " + spokenDate(dateOf(*runoff.firstPast))
            : std::string(" will go off once opened before it is used");
    }
    return text + "." + ordered;
}

std::string packsText(const PackChoice& choice)
{
    std::string text;
    for (const auto& [offer, count] : choice.packs)
        text += (text.empty() ? "" : " and ") + std::to_string(count) + " × " + offer->name;
    return text;
}

/// Why more are bought than would cover, where the supplier says so.
std::string sellingText(const PackChoice& choice)
{
    std::string text;
    for (const auto& [offer, count] : choice.packs) {
        if (offer->soldBy > 1)
            text += " The " + offer->name + " is sold by the " + std::to_string(offer->soldBy) + ".";
        if (offer->least > 1 && count <= offer->least)
            text += " Fewer than " + std::to_string(offer->least) + " of the " + offer->name
                + " are not delivered.";
    }
    return text;
}

/// A larger pack that looks the better bargain and is not, if there is one.
std::string falseBargain(const OrderDraft& draft)
{
    const std::vector<double> prices = unitPrices(draft.offers);
    const auto priceOf = [&](const PackOffer* offer) {
        const auto at = std::find(draft.offers.begin(), draft.offers.end(), offer) - draft.offers.begin();
        return prices[static_cast<std::size_t>(at)];
    };
    const PackOffer* chosen = draft.choice->packs.front().offer;
    const PackOffer* bargain = nullptr;
    for (const PackOffer* offer : draft.offers) {
        if (offer->amount > chosen->amount && priceOf(offer) < priceOf(chosen)
            && (!bargain || priceOf(offer) < priceOf(bargain)))
            bargain = offer;
    }
    if (!bargain)
        return {};
    const double used = usedInTime(
        { { bargain, 1 } }, draft.limits, draft.usePerMonth / meanMonth.count(), 1, draft.untilUsedUp);
    if (used > bargain->amount.value() - 0.001)
        return {};
    return " Buy the " + chosen->name + ": of the " + bargain->name
        + ", cheaper for its size, you would use about " + amountText(used, draft.demand->dimension)
        + " before it goes off.";
}

std::string choiceText(const OrderDraft& draft)
{
    const Dimension dimension = draft.demand->dimension;
    if (draft.demand->packs.empty())
        return " No pack of it is known: enter one to order it.";
    if (draft.offers.empty())
        return " None of its packs can be ordered as entered.";
    const auto largest = std::max_element(draft.offers.begin(), draft.offers.end(),
        [](const PackOffer* a, const PackOffer* b) { return a->amount < b->amount; });
    if (!draft.choice && draft.target.milli / mostPacks >= (*largest)->amount.milli)
        return " Even of the largest pack it would take more than " + std::to_string(mostPacks)
            + "; check what the packs hold and what is used.";
    if (!draft.choice)
        return " Nothing on offer would be used before it goes off; mind the life entered for it.";

    const PackChoice& choice = *draft.choice;
    const bool allIsMissing = draft.runoff.usable.milli == 0;
    const std::string missing = allIsMissing ? " that" : " the missing " + formatAmount(draft.gap);
    std::string text = " " + packsText(choice);
    const bool one = choice.packs.size() == 1 && choice.packs.front().count == 1;
    const double lost = choice.ordered.value() - choice.used;
    if (draft.target >= draft.gap)
        text += (one ? " covers" : " cover") + missing + ".";
    else if (lost > leastShown)
        text += (one ? " goes towards" : " go towards") + missing + ".";
    else
        text += (one ? " goes towards" : " go towards") + missing + ": only about "
            + amountText(draft.target.value() / lifeCountedOn, dimension)
            + " would be used before it goes off.";
    if (lost > leastShown) {
        text += " Of " + formatAmount(choice.ordered) + " about " + amountText(choice.used, dimension)
            + " would be used before it goes off; " + amountText(lost, dimension) + " ("
            + figure(std::round(100 * lost / choice.ordered.value())) + " %) would be wasted.";
        const bool smallest = std::none_of(draft.offers.begin(), draft.offers.end(),
            [&](const PackOffer* offer) { return offer->amount < choice.packs.back().offer->amount; });
        if (smallest && lost > choice.ordered.value() / 2)
            text += " No smaller pack is on offer.";
    }
    return text + sellingText(choice) + falseBargain(draft);
}

} // namespace

std::string figure(double value)
{
    if (value == 0 || !std::isfinite(value))
        return "0";
    const int whole = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
    const int places = std::clamp(3 - whole, 0, 9);
    return numberWords(value, places);
}

std::string coldText(const ColdArrival& cold, const std::string& doorstep)
{
    std::string text = " Mind the frost: it would come about " + spokenDate(cold.arrives) + ", when "
        + doorstep + " usually goes down to " + formatTemperature(cold.low) + ".";
    if (cold.orderBy)
        return text + " Order by " + spokenDate(*cold.orderBy)
            + " so that it comes before the cold, or ask for heated delivery.";
    text += " Ask for heated delivery";
    if (cold.warmFrom)
        text += ", or let it come after " + spokenDate(*cold.warmFrom);
    return text + ".";
}

std::string whyOrdered(const OrderDraft& draft, const PlanRequest& request)
{
    return needText(draft, request) + stockText(draft) + choiceText(draft);
}

} // namespace gw
