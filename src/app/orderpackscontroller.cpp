#include "app/orderpackscontroller.h"

#include <algorithm>

#include "app/words.h"
#include "measure/number.h"

namespace gw {

namespace {

/// All the sheet needs to know, read at one moment.
struct Known {
    std::vector<ShownRow> packs;
    std::vector<std::pair<std::string, QString>> materials;
    std::map<std::string, PackOffered> offers;
    std::map<std::string, std::string> exact;
    QStringList suppliers;
    QString currency;
};

/// Prices are typed without their currency where the shop has one of its own.
std::string typedPrice(const std::optional<Money>& price, const std::string& currency)
{
    if (!price)
        return {};
    const QString text = moneyText(*price).replace(QChar::Nbsp, u' ');
    return (price->currency == currency ? text.section(u' ', 0, 0) : text).toStdString();
}

Result<Known> readKnown(const Shop& shop)
{
    Known known;
    auto rows = orderPacks(shop);
    if (!rows)
        return tl::unexpected(rows.error());
    known.packs = std::move(*rows);
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto currency = shop.store().setting("shop_currency");
    if (!currency)
        return tl::unexpected(currency.error());
    known.currency = q(currency->value_or(std::string()));

    for (const auto& [id, material] : catalogue->materials)
        known.materials.emplace_back(id.text, q(material.name));
    std::sort(known.materials.begin(), known.materials.end(),
        [](const auto& a, const auto& b) { return a.second.localeAwareCompare(b.second) < 0; });
    for (const auto& [id, pack] : catalogue->packs) {
        PackOffered offer;
        offer.pack = id.text;
        offer.material = pack.material.text;
        offer.amount = amountText(pack.amount, shop.units()).replace(QChar::Nbsp, u' ').toStdString();
        known.exact.emplace(id.text,
            QString::number(pack.amount.value(), 'f', 3).toStdString() + ' '
                + std::string(baseUnit(pack.amount.dimension)));
        offer.gtin = pack.gtin14;
        offer.price = typedPrice(pack.price, known.currency.toStdString());
        offer.supplier = pack.supplier;
        offer.leadDays = pack.leadDays;
        known.offers.emplace(id.text, std::move(offer));
        if (const QString supplier = q(pack.supplier);
            !supplier.isEmpty() && !known.suppliers.contains(supplier))
            known.suppliers.append(supplier);
    }
    known.suppliers.sort(Qt::CaseInsensitive);
    return known;
}

} // namespace

OrderPacksController::OrderPacksController(QObject* parent)
    : Controller(parent)
    , m_packs(orderPackRoles)
{
}

void OrderPacksController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &OrderPacksController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &OrderPacksController::read);
    read();
}

void OrderPacksController::read()
{
    take(services()->shop().run(readKnown), [this](Known now) {
        m_packs.setRows(std::move(now.packs));
        m_materials.clear();
        m_materialIds.clear();
        for (auto& [id, name] : now.materials) {
            m_materialIds.push_back(id);
            m_materials.append(name);
        }
        m_suppliers = now.suppliers;
        m_currency = now.currency;
        m_offers = std::move(now.offers);
        m_exact = std::move(now.exact);
        Q_EMIT known();
        Q_EMIT draftChanged(); // a material's index may be another now
    });
}

int OrderPacksController::material() const
{
    const auto found = std::find(m_materialIds.begin(), m_materialIds.end(), m_draft.material);
    return found == m_materialIds.end() ? -1 : static_cast<int>(found - m_materialIds.begin());
}

void OrderPacksController::setMaterial(int material)
{
    if (material >= 0 && material < static_cast<int>(m_materialIds.size()))
        change(m_draft.material, q(m_materialIds[static_cast<std::size_t>(material)]));
}

void OrderPacksController::change(std::string& field, const QString& text)
{
    if (field == text.toStdString())
        return;
    field = text.toStdString();
    Q_EMIT draftChanged();
}

void OrderPacksController::draftNew()
{
    m_draft = {};
    m_leadDays.clear();
    clearError();
    Q_EMIT draftChanged();
}

void OrderPacksController::draftOf(const QString& pack)
{
    const auto offer = m_offers.find(pack.toStdString());
    m_draft = offer == m_offers.end() ? PackOffered {} : offer->second;
    m_leadDays = m_draft.leadDays ? numberText(*m_draft.leadDays, 1).toStdString() : std::string();
    clearError();
    Q_EMIT draftChanged();
}

void OrderPacksController::save()
{
    setError(QString());
    PackOffered offered = m_draft;
    // An amount nobody touched stays what it is, whatever unit it is shown in.
    const auto before = m_offers.find(offered.pack);
    if (before != m_offers.end() && before->second.amount == offered.amount)
        offered.amount = m_exact[offered.pack];
    for (std::string* text : { &offered.gtin, &offered.price, &offered.supplier })
        *text = q(*text).simplified().toStdString();
    offered.leadDays.reset();
    if (!q(m_leadDays).trimmed().isEmpty()) {
        const auto days = leadingNumber(m_leadDays);
        if (!days) {
            setError(days.error());
            return;
        }
        offered.leadDays = days->value;
    }
    // A number alone is in the shop's own currency.
    const bool bare = !offered.price.empty() && offered.price.find(' ') == std::string::npos;
    if (bare && !m_currency.isEmpty())
        offered.price += ' ' + m_currency.toStdString();
    take(services()->shop().change([offered](Shop& shop) { return savePackOffered(shop, offered); }),
        [this](const PackRecord&) { Q_EMIT saved(); });
}

} // namespace gw
