#include "shop/setup.h"

#include <algorithm>
#include <cmath>

#include <QString>
#include <QStringList>

#include "codes/gtin.h"
#include "shop/actbuilder.h"
#include "shop/climate.h"

namespace gw {

namespace {

bool sameName(const std::string& a, const std::string& b)
{
    return QString::fromStdString(a).simplified().compare(
               QString::fromStdString(b).simplified(), Qt::CaseInsensitive)
        == 0;
}

} // namespace

Result<PlaceRecord> savePlaceNamed(Shop& shop, const std::string& name, const PlaceChange& change)
{
    const std::string plain = QString::fromStdString(name).simplified().toStdString();
    if (plain.empty())
        return fail(ErrorCode::BadInput, "Give the place a name.");
    PlaceRecord place;
    const auto done = shop.store().transact([&]() -> Result<void> {
        auto places = shop.store().places();
        if (!places)
            return tl::unexpected(places.error());
        const auto known = std::ranges::find_if(
            *places, [&](const PlaceRecord& there) { return sameName(there.name, plain); });
        place = known == places->end() ? PlaceRecord {} : *known;
        if (known == places->end()) {
            place.id = PlaceId { newUuid() };
            place.name = plain;
        }
        if (change.assumed.year)
            place.assumed.year = change.assumed.year;
        for (std::size_t i = 0; i < place.assumed.quarters.size(); ++i) {
            if (change.assumed.quarters[i])
                place.assumed.quarters[i] = change.assumed.quarters[i];
        }
        if (change.follows && change.follows->empty()) {
            place.follows.reset();
        } else if (change.follows) {
            auto followed = findPlace(shop, *change.follows);
            if (!followed)
                return tl::unexpected(followed.error());
            place.follows = Follow { followed->id, change.warmer, change.damped };
        }
        if (auto may = placeMayBe(*places, place); !may)
            return may;
        return shop.store().savePlace(place);
    });
    if (!done)
        return tl::unexpected(done.error());
    return place;
}

Result<PlaceRecord> savePlaceNamed(Shop& shop, const std::string& name, const Range<Celsius>& year)
{
    return savePlaceNamed(shop, name, PlaceChange { { year, {} }, {}, 0, 0 });
}

Result<JobTypeRecord> findJobType(const Shop& shop, const std::string& idOrName)
{
    auto jobTypes = shop.store().jobTypes();
    if (!jobTypes)
        return tl::unexpected(jobTypes.error());
    std::string names;
    for (auto& jobType : *jobTypes) {
        if (jobType.id.text == idOrName || sameName(jobType.name, idOrName))
            return std::move(jobType);
        names += (names.empty() ? "" : ", ") + jobType.id.text;
    }
    return fail(ErrorCode::NotFound, "There is no job type \"" + idOrName + "\"; there are: " + names + ".");
}

Result<JobTypeRecord> setJobRate(Shop& shop, const std::string& jobType, double perMonth, Moment now)
{
    if (!(perMonth >= 0 && perMonth <= 10000))
        return fail(ErrorCode::BadInput, "Give how many come in a month as a number from 0 to 10000.");
    auto record = findJobType(shop, jobType);
    if (!record)
        return record;
    record->perMonth = perMonth;
    if (auto saved = shop.store().saveJobType(*record, now); !saved)
        return tl::unexpected(saved.error());
    return record;
}

Result<Money> parsePrice(const std::string& text)
{
    const QStringList parts = QString::fromStdString(text).simplified().split(u' ');
    bool number = false;
    const double value = QString(parts.value(0)).replace(u',', u'.').toDouble(&number);
    if (parts.size() != 2 || !number || !(value >= 0 && value < 1e9) || parts.at(1).size() != 3)
        return fail(ErrorCode::BadInput,
            "Give a price with its currency, such as \"12.50 EUR\", not \"" + text + "\".");
    return Money { static_cast<std::int64_t>(std::llround(value * 100.0)),
        parts.at(1).toUpper().toStdString() };
}

Result<PackRecord> savePackOffered(Shop& shop, const PackOffered& offered)
{
    auto materials = shop.store().materials();
    if (!materials)
        return tl::unexpected(materials.error());
    const MaterialRecord* material = nullptr;
    for (const MaterialRecord& known : *materials) {
        if (known.id.text == offered.material || sameName(known.name, offered.material))
            material = &known;
    }
    if (!material)
        return fail(ErrorCode::NotFound,
            "There is no material \"" + offered.material + "\" in this shop; book one in first.");
    auto amount = parseAmount(offered.amount);
    if (!amount)
        return tl::unexpected(amount.error());
    if (amount->milli <= 0)
        return fail(ErrorCode::BadInput, "A pack holds more than nothing; give its amount.");
    if (offered.leadDays && !(*offered.leadDays >= 0 && *offered.leadDays <= 365))
        return fail(ErrorCode::BadInput, "Give the days from ordering to arrival as a number from 0 to 365.");
    for (const std::optional<int>& packs : { offered.soldBy, offered.least }) {
        if (packs && (*packs < 1 || *packs > 1000))
            return fail(ErrorCode::BadInput, "Give the packs sold together, and the fewest, as 1 to 1000.");
    }
    std::string gtin14;
    if (!offered.gtin.empty()) {
        auto gtin = parseGtin(offered.gtin);
        if (!gtin)
            return tl::unexpected(gtin.error());
        gtin14 = gtin->digits14;
    }

    auto packs = shop.store().packs();
    if (!packs)
        return tl::unexpected(packs.error());
    PackRecord pack;
    pack.id = PackId { newUuid() };
    if (!offered.pack.empty()) {
        pack.id = PackId { offered.pack };
        if (std::none_of(
                packs->begin(), packs->end(), [&](const auto& known) { return known.id == pack.id; }))
            return fail(ErrorCode::NotFound, "That pack is not on offer any more; enter it anew.");
    }
    for (const PackRecord& known : *packs) {
        if (!offered.pack.empty())
            break;
        const bool same = gtin14.empty() ? known.amount == *amount && known.supplier == offered.supplier
                                         : known.gtin14 == gtin14;
        if (known.material == material->id && same)
            pack = known;
    }
    pack.material = material->id;
    pack.amount = *amount;
    if (!gtin14.empty())
        pack.gtin14 = gtin14;
    if (!offered.price.empty()) {
        auto price = parsePrice(offered.price);
        if (!price)
            return tl::unexpected(price.error());
        pack.price = *price;
    }
    if (!offered.supplier.empty())
        pack.supplier = offered.supplier;
    if (offered.leadDays)
        pack.leadDays = offered.leadDays;
    pack.soldBy = offered.soldBy.value_or(pack.soldBy);
    pack.least = offered.least.value_or(pack.least);
    if (auto saved = shop.store().savePack(pack); !saved)
        return tl::unexpected(saved.error());
    return pack;
}

} // namespace gw
