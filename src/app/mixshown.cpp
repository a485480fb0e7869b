#include <algorithm>

#include <QCoreApplication>
#include <QLocale>

#include "app/mixcontroller.h"
#include "app/words.h"

namespace gw {

namespace {

struct Mix {
    Q_DECLARE_TR_FUNCTIONS(gw::Mix)
};

QStringList texts(const std::vector<std::string>& all)
{
    QStringList list;
    for (const std::string& text : all)
        list.append(q(text));
    return list;
}

ShownRow partRow(const MixPart& part, const MixAnswer& mix, UnitSystem units)
{
    const auto source = std::ranges::find(mix.sources, part.key, &PartSource::key);
    QString from, result = QStringLiteral("pass");
    if (source != mix.sources.end()) {
        result = q(word(source->result));
        QStringList takes;
        for (const Take& take : source->takes)
            takes.append(source->takes.size() == 1
                    ? q(take.label)
                    : Mix::tr("%1 of %2").arg(amountText(take.amount, units), q(take.label)));
        if (source->result == GateResult::Pass)
            //: a material, and the containers it is taken from
            from = Mix::tr("%1, from %2").arg(q(source->material), QLocale().createSeparatedList(takes));
        else
            from = q(source->text);
    }
    return { q(part.key), { q(part.what), amountText(part.amount, units), from, result } };
}

} // namespace

Result<MixShown> mixShown(const Shop& shop, const MixAsked& asked, Moment now)
{
    const auto mix = mixFromShelf(shop, asked, now);
    if (!mix)
        return tl::unexpected(mix.error());
    MixShown shown;
    shown.name = Mix::tr("%1, %2").arg(q(mix->plan.name), amountText(mix->plan.makes, shop.units()));
    for (const MixPart& part : mix->plan.parts)
        shown.parts.push_back(partRow(part, *mix, shop.units()));
    shown.steps = texts(mix->plan.steps);
    for (const MixLimit& limit : mix->plan.limits)
        shown.limits.append(q(limit.text));
    shown.warnings = texts(mix->plan.warnings);
    shown.cautions = texts(mix->cautions);
    if (!mix->hazards.empty())
        shown.cautions.prepend(
            Mix::tr("Hazards are recorded for %1. Read the label and the safety data sheet before "
                    "you begin; they decide, and so do local rules.")
                .arg(QLocale().createSeparatedList(texts(mix->hazards))));
    shown.covered = std::ranges::all_of(
        mix->sources, [](const PartSource& source) { return source.result == GateResult::Pass; });
    return shown;
}

} // namespace gw
