#include "app/ordershown.h"

#include <algorithm>

#include <QCoreApplication>
#include <QLocale>

#include "app/words.h"

namespace gw {

namespace {

struct Says {
    Q_DECLARE_TR_FUNCTIONS(gw::Order)
};

QString packsText(const OrderLine& line)
{
    QStringList texts;
    for (const PackCount& pack : line.packs) {
        //: how many of a pack: 2 × 500 g
        const QString text = Says::tr("%1 × %2").arg(QString::number(pack.count), q(pack.name));
        const bool elsewhere = pack.supplier != line.packs.front().supplier && !pack.supplier.empty();
        texts.append(elsewhere ? Says::tr("%1 from %2").arg(text, q(pack.supplier)) : text);
    }
    return texts.join(QStringLiteral(", "));
}

/// What a line costs; a sum is only given where every price is known and in one currency.
QString priceText(const OrderLine& line)
{
    Money sum;
    for (const PackCount& pack : line.packs) {
        if (!pack.price || (!sum.currency.empty() && sum.currency != pack.price->currency))
            return Says::tr("Price not known");
        sum.currency = pack.price->currency;
        sum.minorUnits += pack.price->minorUnits * pack.count;
    }
    return line.packs.empty() ? QString() : moneyText(sum);
}

QString supplierOf(const OrderLine& line)
{
    if (line.packs.empty())
        return Says::tr("Nothing on offer");
    const QString supplier = q(line.packs.front().supplier);
    return supplier.isEmpty() ? Says::tr("Supplier not known") : supplier;
}

ShownRow lineRow(const OrderLine& line, UnitSystem units)
{
    // The bar is as long as the larger of what is needed and what there will be.
    const double all = std::max(
        { line.need.value(), line.usable.value() + line.ordered.value(), line.usable.value(), 1e-9 });
    return { q(line.material.text),
        { supplierOf(line), q(line.name), packsText(line), priceText(line), amountText(line.need, units),
            amountText(line.usable, units),
            line.ordered.milli > 0 ? amountText(line.ordered, units) : QString(), line.usable.value() / all,
            line.need.value() / all, q(line.why),
            line.latestUse ? Says::tr("Use it by %1").arg(dateText(*line.latestUse)) : QString() } };
}

} // namespace

QString moneyText(const Money& money)
{
    QString text = q(formatMoney(money));
    text.replace(u'.', QLocale().decimalPoint());
    return text.replace(u' ', QChar::Nbsp);
}

Result<OrderSupposable> orderSupposable(const Shop& shop)
{
    OrderSupposable all;
    const auto types = shop.store().jobTypes();
    if (!types)
        return tl::unexpected(types.error());
    for (const JobTypeRecord& type : *types)
        all.jobTypes.emplace_back(type.id.text, q(type.name));
    const auto packs = shop.store().packs();
    if (!packs)
        return tl::unexpected(packs.error());
    for (const PackRecord& pack : *packs) {
        if (!pack.supplier.empty() && !all.suppliers.contains(q(pack.supplier)))
            all.suppliers.append(q(pack.supplier));
    }
    all.suppliers.sort(Qt::CaseInsensitive);
    return all;
}

Result<OrderShown> orderShown(const Shop& shop, const OrderAsked& asked, Moment now)
{
    auto plan = orderForMonth(shop, asked, now);
    if (!plan)
        return tl::unexpected(plan.error());
    const auto types = shop.store().jobTypes();
    if (!types)
        return tl::unexpected(types.error());
    OrderShown shown;
    shown.workExpected = std::any_of(
        types->begin(), types->end(), [](const JobTypeRecord& type) { return type.perMonth > 0; });
    // What cannot be had comes last; the rest by supplier, as it will be sent.
    std::vector<const OrderLine*> lines;
    for (const OrderLine& line : plan->lines) {
        lines.push_back(&line);
        for (const PackCount& pack : line.packs)
            shown.packs += pack.count;
    }
    std::stable_sort(lines.begin(), lines.end(), [](const OrderLine* a, const OrderLine* b) {
        if (a->packs.empty() != b->packs.empty())
            return b->packs.empty();
        const int suppliers = supplierOf(*a).localeAwareCompare(supplierOf(*b));
        return suppliers != 0 ? suppliers < 0 : q(a->name).localeAwareCompare(q(b->name)) < 0;
    });
    for (const OrderLine* line : lines)
        shown.lines.push_back(lineRow(*line, shop.units()));
    for (const Money& total : plan->totals)
        shown.totals.append(moneyText(total));
    for (const std::string& note : plan->notes)
        shown.notes.append(q(note));
    shown.plan = std::move(*plan);
    return shown;
}

Result<std::vector<ShownRow>> orderRates(const Shop& shop)
{
    const auto types = shop.store().jobTypes();
    if (!types)
        return tl::unexpected(types.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    std::vector<ShownRow> rows;
    rows.reserve(types->size());
    for (const JobTypeRecord& type : *types) {
        const auto family = catalogue->families.find(type.family);
        rows.push_back({ q(type.id.text),
            { q(type.name),
                family == catalogue->families.end() ? Says::tr("Finishes") : q(family->second.name),
                numberText(type.perMonth, 2) } });
    }
    return rows;
}

Result<std::vector<ShownRow>> orderPacks(const Shop& shop)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    std::vector<ShownRow> rows;
    for (const auto& [id, pack] : catalogue->packs) {
        const MaterialRecord* material = catalogue->material(pack.material);
        QStringList note { amountText(pack.amount, shop.units()),
            pack.supplier.empty() ? Says::tr("Supplier not known") : q(pack.supplier) };
        if (pack.leadDays)
            note.append(Says::tr("%n day(s) to come", nullptr, static_cast<int>(*pack.leadDays)));
        if (!pack.gtin14.empty())
            note.append(Says::tr("GTIN\u00a0%1").arg(q(pack.gtin14)));
        rows.push_back({ q(id.text),
            { material ? q(material->name) : QString(), note.join(QStringLiteral(" · ")),
                pack.price ? moneyText(*pack.price) : Says::tr("Price not known") } });
    }
    std::sort(rows.begin(), rows.end(), [](const ShownRow& a, const ShownRow& b) {
        const int materials = a.values[0].toString().localeAwareCompare(b.values[0].toString());
        return materials != 0 ? materials < 0 : a.values[1].toString() < b.values[1].toString();
    });
    return rows;
}

} // namespace gw
