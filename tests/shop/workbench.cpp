#include "shop/workbench.h"

#include <algorithm>

#include "shop/setup.h"

namespace gw::test {

namespace {

template <class T> T orStop(Result<T> result)
{
    if (!result)
        qFatal("%s", result.error().sentence.c_str());
    return std::move(*result);
}

} // namespace

Workbench::Workbench(bool postgres)
    : place(postgres)
{
    reopen();
    orStop(savePlaceNamed(*shop, "Bench", Range<Celsius> { Celsius { 18 }, Celsius { 22 } }));
    orStop(savePlaceNamed(*shop, "Lean-to", Range<Celsius> { Celsius { -8 }, Celsius { 34 } }));
}

void Workbench::reopen()
{
    shop.reset();
    OpenOptions options;
    options.now = day(0);
    shop = orStop(Shop::open(place.location(), options));
}

Moment Workbench::day(double days)
{
    return later(startOf(dateIn2026(3, 1)) + std::chrono::hours(12), Days { days });
}

std::string Workbench::arrive(const char* name, const char* cls, const char* amount, double days,
    const std::function<void(ArrivalDraft&)>& change)
{
    ArrivalDraft draft;
    draft.newName = name;
    draft.newClass = ClassId { cls };
    draft.amount = orStop(parseAmount(amount));
    draft.place = "Bench";
    draft.made = dateOf(day(days - 10));
    if (change)
        change(draft);
    const ActDone done = orStop(bookIn(*shop, draft, on(days)));
    return page(done.containers.front().text, days).item.label;
}

ContainerPage Workbench::page(const std::string& container, double days) const
{
    return orStop(containerPage(*shop, container, day(days)));
}

bool Workbench::says(const std::string& container, double days, std::string_view reason) const
{
    const auto reasons = page(container, days).item.judgement.reasons;
    return std::any_of(reasons.begin(), reasons.end(), [&](const Reason& r) { return r.code == reason; });
}

} // namespace gw::test
