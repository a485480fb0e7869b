#include "app/orderkeptcontroller.h"

#include <algorithm>

#include <QLocale>

#include "app/words.h"
#include "shop/orders.h"

namespace gw {

namespace {

bool isOpen(OrderState state)
{
    return state == OrderState::Ordered || state == OrderState::PartArrived || state == OrderState::Late;
}

bool canBe(const KeptOrderLine& line, OrderEventKind kind)
{
    switch (kind) {
    case OrderEventKind::Counted:
        return !line.orderedAt;
    case OrderEventKind::Ordered:
        return line.state == OrderState::Made;
    case OrderEventKind::Recalled:
        return line.orderedAt && line.arrived == 0 && line.state != OrderState::Closed;
    case OrderEventKind::Closed:
        return isOpen(line.state);
    }
    return false;
}

QString stateText(const KeptOrderLine& line)
{
    using Page = OrderKeptController;
    switch (line.state) {
    case OrderState::Made:
        return Page::tr("On the list");
    case OrderState::TakenOff:
        return Page::tr("Taken off");
    case OrderState::Ordered:
        return Page::tr("Ordered, due %1").arg(dateText(*line.due));
    case OrderState::PartArrived:
        return Page::tr("%1 of %2 came, due %3").arg(line.arrived).arg(line.wanted).arg(dateText(*line.due));
    case OrderState::Arrived:
        return Page::tr("Arrived");
    case OrderState::Late:
        return Page::tr("%n day(s) late, %1 of %2 came", nullptr, line.lateDays)
            .arg(line.arrived)
            .arg(line.wanted);
    case OrderState::Closed:
        return Page::tr("Closed, %1 of %2 came").arg(line.arrived).arg(line.wanted);
    }
    return {};
}

ShownRow lineRow(const KeptOrderLine& line)
{
    QString note = q(line.record.packName);
    if (!line.record.supplier.empty())
        note += QStringLiteral(" · ") + q(line.record.supplier);
    return { q(line.record.id.text),
        { QStringLiteral("line"), q(line.materialName), note, QStringLiteral("%1 ×").arg(line.wanted),
            stateText(line), canBe(line, OrderEventKind::Ordered), canBe(line, OrderEventKind::Counted),
            canBe(line, OrderEventKind::Recalled), canBe(line, OrderEventKind::Closed) } };
}

Result<std::vector<ShownRow>> keptRows(const Shop& shop, Moment now)
{
    using Page = OrderKeptController;
    const auto lists = keptOrderLists(shop, now);
    if (!lists)
        return tl::unexpected(lists.error());
    std::vector<ShownRow> rows;
    for (const KeptOrderList& list : *lists) {
        const bool any = std::any_of(list.lines.begin(), list.lines.end(),
            [](const KeptOrderLine& line) { return canBe(line, OrderEventKind::Ordered); });
        rows.push_back({ q(list.id.text),
            { QStringLiteral("list"), QLocale().toString(toQDate(list.month), Page::tr("MMMM yyyy")),
                Page::tr("Made %1").arg(dateText(dateOf(list.made))), QString(), QString(), any, false, false,
                false } });
        for (const KeptOrderLine& line : list.lines)
            rows.push_back(lineRow(line));
        if (startOf(list.month) > now)
            continue;
        const auto happened = whatHappened(shop, list, now);
        if (!happened)
            return tl::unexpected(happened.error());
        for (const OrderHappened& each : *happened)
            rows.push_back({ q(list.id.text + each.material.text),
                { QStringLiteral("happened"), q(each.materialName), q(each.text), QString(), QString(), false,
                    false, false, false } });
    }
    return rows;
}

/// The lines a key stands for, as far as this can be said of them.
Result<std::vector<KeptOrderLine>> linesFor(
    const Shop& shop, const std::string& key, OrderEventKind kind, Moment now)
{
    const auto lists = keptOrderLists(shop, now);
    if (!lists)
        return tl::unexpected(lists.error());
    std::vector<KeptOrderLine> lines;
    for (const KeptOrderList& list : *lists) {
        for (const KeptOrderLine& line : list.lines) {
            if ((list.id.text == key || line.record.id.text == key) && canBe(line, kind))
                lines.push_back(line);
        }
    }
    return lines;
}

} // namespace

OrderKeptController::OrderKeptController(QObject* parent)
    : Controller(parent)
    , m_rows(orderKeptRoles)
{
}

void OrderKeptController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &OrderKeptController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &OrderKeptController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &OrderKeptController::read);
    read();
}

void OrderKeptController::read()
{
    take(services()->shop().run(
             [now = services()->clock().now()](const Shop& shop) { return keptRows(shop, now); }),
        [this](std::vector<ShownRow> rows) {
            m_rows.setRows(std::move(rows));
            m_loaded = true;
            Q_EMIT shown();
        });
}

void OrderKeptController::ordered(const QString& key) { change(key, OrderEventKind::Ordered); }
void OrderKeptController::recall(const QString& key) { change(key, OrderEventKind::Recalled); }
void OrderKeptController::close(const QString& key) { change(key, OrderEventKind::Closed); }

void OrderKeptController::count(const QString& key, int direction)
{
    change(key, OrderEventKind::Counted, direction);
}

void OrderKeptController::change(const QString& key, OrderEventKind kind, int direction)
{
    setError(QString());
    const Moment now = services()->clock().now();
    take(
        services()->shop().change([id = key.toStdString(), kind, direction, now](Shop& shop) -> Result<void> {
            const auto lines = linesFor(shop, id, kind, now);
            if (!lines)
                return tl::unexpected(lines.error());
            std::vector<OrderLineId> ids;
            std::optional<int> pieces;
            for (const KeptOrderLine& line : *lines) {
                ids.push_back(line.record.id);
                if (kind == OrderEventKind::Counted)
                    pieces = std::max(0, line.wanted + direction);
            }
            return changeOrder(shop, ids, kind, pieces, { now, now });
        }),
        [] {});
}

} // namespace gw
