#include "app/containershown.h"

#include <cmath>

#include <QCoreApplication>

#include "app/clock.h"
#include "app/figurewords.h"
#include "app/shelfrow.h"
#include "app/words.h"

namespace gw {

namespace {

struct Page {
    Q_DECLARE_TR_FUNCTIONS(gw::ContainerShown)
};

QString iconOf(EntryKind kind)
{
    switch (kind) {
    case EntryKind::Arrived:
        return QStringLiteral("arrivals");
    case EntryKind::Opened:
        return QStringLiteral("open");
    case EntryKind::Used:
        return QStringLiteral("use");
    case EntryKind::Counted:
        return QStringLiteral("count");
    case EntryKind::Moved:
        return QStringLiteral("move");
    case EntryKind::Decanted:
        return QStringLiteral("decant");
    case EntryKind::Mixed:
        return QStringLiteral("pot");
    case EntryKind::Tested:
        return QStringLiteral("bench-test");
    case EntryKind::Retired:
        return QStringLiteral("retire");
    case EntryKind::Held:
        return QStringLiteral("hold");
    case EntryKind::Released:
        return QStringLiteral("release");
    case EntryKind::Reversed:
        break;
    }
    return QStringLiteral("undo");
}

QStringList unitsOf(Dimension dimension, UnitSystem units)
{
    const bool us = units == UnitSystem::Us;
    switch (dimension) {
    case Dimension::Mass:
        return us ? QStringList { QStringLiteral("oz"), QStringLiteral("lb") }
                  : QStringList { QStringLiteral("g"), QStringLiteral("kg") };
    case Dimension::Volume:
        return us ? QStringList { QStringLiteral("fl oz"), QStringLiteral("qt") }
                  : QStringList { QStringLiteral("ml"), QStringLiteral("l") };
    case Dimension::Count:
        return { QStringLiteral("pieces") };
    case Dimension::Length:
        return { QStringLiteral("m") };
    }
    return {};
}

void addFacts(ContainerShown& shown, const ContainerPage& page, QDate today)
{
    const auto add = [&](const QString& name, const QString& value) {
        shown.factNames.append(name);
        shown.factValues.append(value);
    };
    const ShelfItem& item = page.item;
    add(Page::tr("Stands in"), item.placeName.empty() ? Page::tr("not known") : q(item.placeName));
    if (item.printed)
        add(item.printedIsUseBy ? Page::tr("Use by") : Page::tr("Best before"), dateText(*item.printed));
    add(Page::tr("Made"), item.made ? dateText(*item.made) : Page::tr("not known"));
    if (item.arrived)
        add(Page::tr("Arrived"), momentText(*item.arrived, today));
    add(Page::tr("Opened"), item.openedAt ? momentText(*item.openedAt, today) : Page::tr("still sealed"));
    if (item.retiredAt)
        add(Page::tr("Retired"), momentText(*item.retiredAt, today));
    if (!item.lot.empty())
        add(Page::tr("Lot"), q(item.lot));
    if (!page.parentLabel.empty())
        add(Page::tr("Poured over from"), q(page.parentLabel));
}

/// What the clock alone says: the verdict of its reason, since whether a life is over is judged in one place
/// only.
Verdict verdictOf(const Judgement& judgement, std::string_view code, const ClockUse& clock)
{
    for (const Reason& reason : judgement.reasons) {
        if (reason.code == code)
            return reason.verdict;
    }
    return clock.known ? Verdict::Good : Verdict::NotKnown;
}

/// Rounded outwards and cut off at 999 %, as in the reasons.
QString shareText(const Range<double>& used)
{
    constexpr int most = 999;
    constexpr double nearly = 1e-6;
    const double low = std::floor(used.low * 100 + nearly);
    const double high = std::max(low, std::ceil(used.high * 100 - nearly));
    if (low > most)
        return Page::tr("more than %1 %").arg(most);
    if (high > most)
        return Page::tr("%1 to more than %2 %").arg(low).arg(most);
    return low == high ? Page::tr("%1 %").arg(low) : Page::tr("%1 to %2 %").arg(low).arg(high);
}

void addClock(ContainerShown& shown, const QString& name, const ClockUse& clock, Verdict verdict)
{
    if (!clock.applies)
        return;
    shown.clockNames.append(name);
    shown.clockVerdicts.append(verdictKey(verdict));
    shown.clockLevels.append(clock.known ? clock.used.high : -1);
    if (!clock.known) {
        shown.clockTexts.append(Page::tr("not known"));
        return;
    }
    QString text = Page::tr("%1 used").arg(shareText(clock.used));
    const int unwatched = static_cast<int>(clock.unwatched.count() + 1e-6); // whole days, as the reasons say
    if (unwatched > 0)
        text += Page::tr(", %n day(s) of it unwatched", nullptr, unwatched);
    shown.clockTexts.append(text);
}

QStringList cautionsOf(const ContainerPage& page, const ReferenceTable& pictograms)
{
    QStringList cautions;
    for (const std::string& code : page.pictograms) {
        for (const auto& row : pictograms.rows) {
            if (row.size() > 2 && row[0] == code)
                cautions.append(q(row[2]));
        }
    }
    if (!page.hazardNote.empty())
        cautions.append(q(page.hazardNote));
    return cautions;
}

std::vector<ShownRow> entryRows(const ContainerPage& page, UnitSystem units, QDate today)
{
    std::vector<ShownRow> rows;
    rows.reserve(page.entries.size());
    for (const EntryLine& line : page.entries) {
        rows.push_back({ q(line.entry.text),
            { q(line.text), momentText(line.at, today), amountText(line.after, units), iconOf(line.kind),
                line.undone, line.undoable } });
    }
    return rows;
}

} // namespace

QByteArrayList entryRoles() { return { "text", "when", "after", "icon", "undone", "undoable" }; }

Result<ContainerShown> containerShown(
    const Shop& shop, const std::string& idOrLabel, Moment asOf, QDate today)
{
    auto page = containerPage(shop, idOrLabel, asOf);
    if (!page)
        return tl::unexpected(page.error());
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto sources = shop.store().sources();
    if (!sources)
        return tl::unexpected(sources.error());
    auto pictograms = shop.store().reference("pictograms");
    if (!pictograms)
        return tl::unexpected(pictograms.error());

    const ShelfItem& item = page->item;
    const ShelfRow row = shelfRow(item, *catalogue, shop.units());
    ContainerShown shown;
    shown.id = row.key;
    shown.label = row.label;
    shown.name = row.name;
    shown.className = q(item.className);
    shown.shape = row.shape;
    shown.contents = row.contents;
    shown.level = row.level;
    shown.capacity = Page::tr("of %1").arg(amountText(item.capacity, shop.units()));
    shown.amountLeft = amountText(item.left, shop.units());
    shown.place = row.place;
    shown.lot = q(item.lot);
    shown.parentLabel = q(page->parentLabel);
    shown.verdict = row.verdict;
    if (item.judgement.verdict == Verdict::Good && item.judgement.goodUntil)
        shown.headline = Page::tr("until %1").arg(dayText(*item.judgement.goodUntil));
    for (const Reason& reason : item.judgement.reasons) {
        shown.reasons.append(q(reason.text));
        shown.reasonVerdicts.append(verdictKey(reason.verdict));
    }
    addFacts(shown, *page, today);
    const Judgement& judgement = item.judgement;
    addClock(shown, Page::tr("Life unopened"), judgement.sealed,
        verdictOf(judgement, "sealed_life", judgement.sealed));
    addClock(shown, Page::tr("Life since opening"), judgement.opened,
        verdictOf(judgement, "opened_life", judgement.opened));
    for (const std::string& step : page->benchTest)
        shown.benchTest.append(q(step));
    for (const auto& place : catalogue->places)
        shown.places.append(q(place.second.name));
    shown.places.sort(Qt::CaseInsensitive);
    shown.units = unitsOf(item.left.dimension, shop.units());
    shown.spoilageSigns = q(page->spoilageSigns);
    shown.cautions = cautionsOf(*page, *pictograms);
    const auto* cls = catalogue->classOf(item.material);
    const auto* material = catalogue->material(item.material);
    shown.frostHarms = cls && material && lifeFiguresOf(*cls, *material).frost == Frost::Harms;
    shown.opened = item.openedAt.has_value();
    shown.retired = item.retiredAt.has_value();
    shown.onHold = item.onHold;
    shown.dimension = item.left.dimension;
    shown.entries = entryRows(*page, shop.units(), today);
    std::map<std::string, std::string> titles;
    for (const SourceRecord& source : *sources)
        titles.emplace(source.key, source.title);
    shown.figures = figureRows(page->figures, titles, shop.units());
    return shown;
}

} // namespace gw
