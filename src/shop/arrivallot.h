#pragma once

#include <vector>

#include "codes/lotdate.h"
#include "shop/arrival.h"

/// The made date that a maker printed into the lot code.
namespace gw {

/// What the dates of a material's lot codes are judged by: its class's usual times, and how its lot code was
/// read last time. Either may be empty.
Result<LotDateContext> lotDateContext(
    const Shop& shop, const std::optional<MaterialId>& material, const ClassId& cls, Moment now);

/// The same for a material of a class that nothing was read from yet.
LotDateContext lotDateContext(const ClassRecord& cls, const MaterialRecord& material, Date today);

/// The dates the draft's lot code could mean, most plausible first; none where the label gives a made date.
std::vector<LotDate> lotDatesOf(const ArrivalDraft& draft, LotDateContext context);

/// A person chose this one: it sets the made date, and is how the next lot of that material is read.
void takeLotDate(ArrivalDraft& draft, const LotDate& date);

/// Reads the lot code as last time, when it was ever read and this one fits; whether it did. Shown as such,
/// it is still a person who books it in.
bool readLotAsLastTime(ArrivalDraft& draft, const std::vector<LotDate>& dates);

} // namespace gw
