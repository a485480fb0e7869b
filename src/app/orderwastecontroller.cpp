#include "app/orderwastecontroller.h"

#include <QDir>
#include <QUrl>

#include "app/ordershown.h"
#include "app/words.h"
#include "shop/shopcalendar.h"
#include "shop/waste.h"

namespace gw {

namespace {

using Page = OrderWasteController;
constexpr int daysAhead = 60;

struct Known {
    std::vector<ShownRow> soon, past, gone;
    QString soonTotal, goneTotal;
};

QString sums(const std::vector<Money>& all)
{
    QStringList texts;
    for (const Money& money : all)
        texts.append(moneyText(money));
    return texts.join(QStringLiteral(" + "));
}

QString worthText(const std::optional<Money>& money)
{
    return money ? moneyText(*money) : Page::tr("Price not known");
}

void addSoon(const ExpiringList& list, UnitSystem units, Known& known)
{
    for (const Expiring& item : list.items) {
        QStringList note {
            Page::tr("%1 left, until %2").arg(amountText(item.left, units), dateText(dateOf(item.until))),
            item.useOn.empty() ? Page::tr("no work of yours takes it")
                               : Page::tr("use it on: %1").arg(q(item.useOn))
        };
        known.soon.push_back({ q(item.label),
            { QStringLiteral("soon"), q(item.materialName), note.join(QStringLiteral(" · ")),
                worthText(item.worth) } });
    }
    known.soonTotal = sums(list.worth);
}

void addPast(const std::vector<DisposalGroup>& groups, UnitSystem units, Known& known)
{
    for (const DisposalGroup& group : groups) {
        QStringList handling;
        for (const std::string& text : group.handling)
            handling.append(q(text));
        known.past.push_back({ QStringLiteral("group %1").arg(known.past.size()),
            { QStringLiteral("group"),
                handling.isEmpty()
                    ? Page::tr("Nothing is on record of how these are handled; read the label.")
                    : handling.join(u' '),
                QString(), QString() } });
        for (const ToDispose& item : group.items)
            known.past.push_back({ q(item.label),
                { QStringLiteral("past"), q(item.materialName), q(item.why),
                    amountText(item.left, units) } });
    }
}

void addGone(const WasteOfYear& year, UnitSystem units, Known& known)
{
    for (const Wasted& item : year.items)
        known.gone.push_back({ q(item.label),
            { QStringLiteral("gone"), q(item.materialName),
                Page::tr("%1 on %2: %3")
                    .arg(amountText(item.amount, units), dateText(dateOf(item.at)), q(item.why)),
                worthText(item.cost) } });
    if (!year.cost.empty())
        known.goneTotal
            = Page::tr("%1 thrown away, %2 used in %3")
                  .arg(sums(year.cost), year.usedCost.empty() ? Page::tr("not known") : sums(year.usedCost))
                  .arg(year.year);
}

Result<Known> readKnown(const Shop& shop, Moment now)
{
    const auto soon = expiringSoon(shop, daysAhead, now);
    if (!soon)
        return tl::unexpected(soon.error());
    const auto past = disposalList(shop, now);
    if (!past)
        return tl::unexpected(past.error());
    const auto year = wasteOfYear(shop, now);
    if (!year)
        return tl::unexpected(year.error());
    Known known;
    addSoon(*soon, shop.units(), known);
    addPast(*past, shop.units(), known);
    addGone(*year, shop.units(), known);
    return known;
}

} // namespace

OrderWasteController::OrderWasteController(QObject* parent)
    : Controller(parent)
    , m_soon(orderWasteRoles)
    , m_past(orderWasteRoles)
    , m_gone(orderWasteRoles)
{
}

QString OrderWasteController::caution() const { return q(localRulesDecide()); }

void OrderWasteController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &OrderWasteController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &OrderWasteController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &OrderWasteController::read);
    read();
}

void OrderWasteController::read()
{
    take(services()->shop().run(
             [now = services()->clock().now()](const Shop& shop) { return readKnown(shop, now); }),
        [this](Known now) {
            m_soon.setRows(std::move(now.soon));
            m_past.setRows(std::move(now.past));
            m_gone.setRows(std::move(now.gone));
            m_soonTotal = now.soonTotal;
            m_goneTotal = now.goneTotal;
            m_loaded = true;
            Q_EMIT shown();
        });
}

void OrderWasteController::saveCalendar(const QUrl& file)
{
    const QString path = file.toLocalFile();
    if (path.isEmpty())
        return;
    setError(QString());
    take(services()->shop().run([path, now = services()->clock().now()](const Shop& shop) -> Result<void> {
        const auto days = shopCalendar(shop, now);
        if (!days)
            return tl::unexpected(days.error());
        const auto name = shop.store().setting("shop_name");
        if (!name)
            return tl::unexpected(name.error());
        return writeCalendar(*days, name->value_or(std::string()), now, path);
    }),
        [this, path] { services()->say(tr("The calendar is in %1.").arg(QDir::toNativeSeparators(path))); });
}

} // namespace gw
