#include "shop/arrivallot.h"

#include <algorithm>

namespace gw {

LotDateContext lotDateContext(const ClassRecord& cls, const MaterialRecord& material, Date today)
{
    LotDateContext context;
    context.today = today;
    const LifeFigures figures = lifeFiguresOf(cls, material);
    if (figures.timeInTrade.high > Days { 0 })
        context.timeInTrade = figures.timeInTrade.high;
    if (figures.sealed.kind == Life::Kind::Ages)
        context.life = figures.sealed.span.high;
    return context;
}

Result<LotDateContext> lotDateContext(
    const Shop& shop, const std::optional<MaterialId>& material, const ClassId& cls, Moment now)
{
    LotDateContext context;
    context.today = dateOf(now);
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    static const MaterialRecord noLabel;
    const MaterialRecord* known = material ? catalogue->material(*material) : nullptr;
    const auto found = catalogue->classes.find(known ? known->classId : cls);
    if (found != catalogue->classes.end())
        context = lotDateContext(found->second, known ? *known : noLabel, context.today);
    if (known) {
        auto key = shop.store().lotDateReading(known->id);
        if (!key)
            return tl::unexpected(key.error());
        context.key = key->value_or(std::string());
    }
    return context;
}

std::vector<LotDate> lotDatesOf(const ArrivalDraft& draft, LotDateContext context)
{
    if (draft.lot.empty() || (draft.made && draft.lotReadAs.empty()))
        return {};
    context.notAfter = draft.printed;
    return lotDates(draft.lot, context);
}

void takeLotDate(ArrivalDraft& draft, const LotDate& date)
{
    draft.made = date.days.low;
    draft.lotReadAs = date.key;
    draft.foundUndated = false;
}

bool readLotAsLastTime(ArrivalDraft& draft, const std::vector<LotDate>& dates)
{
    if (draft.made || dates.empty() || !dates.front().asLastTime)
        return false;
    takeLotDate(draft, dates.front());
    return true;
}

} // namespace gw
