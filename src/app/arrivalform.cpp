#include "app/arrivalform.h"

#include <algorithm>

#include "app/clock.h"
#include "app/labeltext.h"
#include "app/words.h"

namespace gw {

namespace {

QStringList unitsFor(Dimension dimension, UnitSystem units)
{
    if (dimension == Dimension::Count)
        return { ArrivalForm::tr("pieces") };
    if (dimension == Dimension::Length)
        return units == UnitSystem::Us ? QStringList { QStringLiteral("ft"), QStringLiteral("m") }
                                       : QStringList { QStringLiteral("m") };
    // Glues are counted by mass and sold by volume as often as not.
    if (units == UnitSystem::Us)
        return { QStringLiteral("oz"), QStringLiteral("lb"), QStringLiteral("fl oz"), QStringLiteral("qt") };
    return { QStringLiteral("g"), QStringLiteral("kg"), QStringLiteral("ml"), QStringLiteral("l") };
}

QString shown(bool tried, const std::optional<Error>& error)
{
    return tried && error ? q(error->sentence) : QString();
}

template <class T> std::optional<Error> errorOf(const Result<T>& said)
{
    return said ? std::nullopt : std::optional(said.error());
}

} // namespace

void ArrivalForm::setOffers(const Offers& offers)
{
    m_offers = offers;
    m_says.setUnits(offers.units);
    Q_EMIT changed();
}

void ArrivalForm::load(const ArrivalDraft& draft, const ChoiceItem* material)
{
    m_read = draft;
    m_materialKey = material ? material->key : QString();
    m_name = material ? material->name : q(draft.newName);
    m_className = material ? material->note : QString();
    m_shape = material ? material->shape : QStringLiteral("bottle");
    m_contents = material ? material->contents : QStringLiteral("unknown");
    m_classKey.clear();
    m_articleCode = q(draft.newArticleCode);
    m_countedIn = material ? material->countedIn : draft.amount ? draft.amount->dimension : Dimension::Mass;
    m_packs.clear();
    m_lot = q(draft.lot);
    m_count = draft.count;
    m_noLotDate = false;
    m_place = q(draft.place);
    m_placeKind = m_place.isEmpty() ? PlaceNotSaid : NamedPlace;
    m_says.clear();
    loadAmount();

    loadDate();
    m_asksAmount = !draft.amount;
    m_changing = false;
    m_tried = false;
    Q_EMIT changed();
}

void ArrivalForm::loadDate()
{
    const auto& date = m_read.printed ? m_read.printed : m_read.made;
    m_date = date ? q(formatDate(*date)) : QString();
    m_dateKind = m_read.printed ? (m_read.printedIsUseBy ? UseBy : BestBefore)
        : m_read.made           ? MadeOn
        : m_read.foundUndated   ? FoundUndated
                                : -1;
    m_asksDate = m_dateKind < 0;
}

void ArrivalForm::loadAmount()
{
    m_price = m_read.price ? q(formatMoney(*m_read.price)) : QString();
    m_priceLoaded = m_price;
    m_amount.clear();
    m_amountUnit.clear();
    m_amountLoaded.clear();
    if (!m_read.amount) {
        m_amountUnit = amountUnits().value(m_countedIn == Dimension::Volume ? 2 : 0);
        return;
    }
    const QString words = q(formatAmount(*m_read.amount, m_offers.units));
    m_amount = words.section(u' ', 0, 0);
    m_amountUnit = m_read.amount->dimension == Dimension::Count ? tr("pieces") : words.section(u' ', 1);
    m_amountLoaded = m_amount + u' ' + m_amountUnit;
}

void ArrivalForm::chooseMaterial(
    const ChoiceItem& material, const ArrivalDraft& usual, const std::vector<PackRecord>& packs)
{
    ArrivalDraft draft = m_read;
    draft.lot = m_lot.trimmed().toStdString();
    draft.count = m_count;
    if (draft.place.empty())
        draft.place = usual.place;
    // The number on the pack says another size than those the shop has learned.
    if (!draft.gtin && !draft.amount) {
        draft.pack = usual.pack;
        draft.amount = usual.amount;
        draft.price = usual.price;
    }
    load(draft, &material);
    if (!draft.gtin && packs.size() > 1)
        m_packs = packs;
    Q_EMIT changed();
}

void ArrivalForm::chooseClass(const ChoiceItem& cls)
{
    m_classKey = cls.key;
    m_className = cls.name;
    m_shape = cls.shape;
    m_contents = cls.contents;
    const bool otherUnits = cls.countedIn != m_countedIn && !m_read.amount;
    m_countedIn = cls.countedIn;
    if (otherUnits) {
        m_amountUnit.clear();
        m_amountUnit = amountUnits().value(m_countedIn == Dimension::Volume ? 2 : 0);
    }
    Q_EMIT changed();
}

void ArrivalForm::chooseNew(const QString& name)
{
    m_materialKey.clear();
    m_classKey.clear();
    m_className.clear();
    m_shape = QStringLiteral("bottle");
    m_contents = QStringLiteral("unknown");
    m_name = name;
    m_says.setKind(nullptr, {});
    Q_EMIT changed();
}

bool ArrivalForm::addFrom(const ArrivalDraft& more)
{
    bool added = false;
    if (m_lot.isEmpty() && !more.lot.empty()) {
        m_lot = q(more.lot);
        readLotAsLastTime();
        added = true;
    }
    if (m_read.serial.empty() && !more.serial.empty()) {
        m_read.serial = more.serial;
        added = true;
    }
    const bool onlyFromLot = !m_read.lotReadAs.empty() && !m_read.printed;
    if ((m_dateKind < 0 || onlyFromLot) && (more.made || more.printed)) {
        // What the label prints plainly goes before what was read into its lot code.
        if (more.made || (more.printed && m_read.made && *m_read.made > *more.printed))
            m_read.lotReadAs.clear();
        if (m_read.lotReadAs.empty())
            m_read.made = more.made;
        m_read.printed = more.printed;
        m_read.printedIsUseBy = more.printedIsUseBy;
        loadDate();
        added = true;
    }
    if (!m_read.amount && m_amount.isEmpty() && more.amount) {
        m_read.amount = more.amount;
        loadAmount();
        m_asksAmount = false;
        added = true;
    }
    Q_EMIT changed();
    return added;
}

void ArrivalForm::setName(const QString& name)
{
    if (name == m_name)
        return;
    m_name = name;
    Q_EMIT changed();
}

QString ArrivalForm::amountWords() const
{
    const auto amount = amountSaid();
    return amount && *amount ? amountText(**amount, m_offers.units) : QString();
}

QStringList ArrivalForm::facts() const
{
    QStringList facts;
    ArrivalDraft draft = m_read;
    if (putDate(draft)) {
        if (draft.printed)
            facts.append((draft.printedIsUseBy ? tr("Use by %1") : tr("Best before %1"))
                    .arg(dateText(*draft.printed)));
        if (draft.made)
            facts.append(tr("Made on %1").arg(dateText(*draft.made)));
    }
    if (!m_lot.trimmed().isEmpty())
        facts.append(tr("Lot %1").arg(m_lot.trimmed()));
    if (!m_read.serial.empty())
        facts.append(tr("Serial number %1").arg(q(m_read.serial)));
    return facts;
}

QString ArrivalForm::caution() const
{
    ArrivalDraft draft = m_read;
    if (!putDate(draft) || !draft.printed || toQDate(*draft.printed) >= m_today)
        return {};
    return tr("That day has passed: it will stand on the shelf as do not use.");
}

QStringList ArrivalForm::amountUnits() const
{
    QStringList units = unitsFor(m_countedIn, m_offers.units);
    if (!m_amountUnit.isEmpty() && !units.contains(m_amountUnit))
        units.append(m_amountUnit);
    return units;
}

Result<std::optional<Amount>> ArrivalForm::amountSaid() const
{
    // Untouched it stays exactly what the code said: the words for it may be rounded.
    if (m_read.amount && m_amount + u' ' + m_amountUnit == m_amountLoaded)
        return m_read.amount;
    if (m_amount.trimmed().isEmpty())
        return std::optional<Amount> {};
    const QString unit = m_amountUnit == tr("pieces") ? QStringLiteral("pieces") : m_amountUnit;
    auto amount = readAmount(m_amount, unit);
    if (!amount)
        return tl::unexpected(amount.error());
    return std::optional(*amount);
}

QStringList ArrivalForm::packs() const
{
    QStringList words;
    for (const PackRecord& pack : m_packs)
        words.append(amountText(pack.amount, m_offers.units));
    return words;
}

int ArrivalForm::packAt() const
{
    const ArrivalDraft draft = draftSoFar();
    const auto at = std::find_if(
        m_packs.begin(), m_packs.end(), [&](const PackRecord& pack) { return pack.id == draft.pack; });
    return at == m_packs.end() ? -1 : static_cast<int>(at - m_packs.begin());
}

void ArrivalForm::setPackAt(int at)
{
    if (at < 0 || at >= static_cast<int>(m_packs.size()))
        return;
    m_read.pack = m_packs[at].id;
    m_read.amount = m_packs[at].amount;
    m_read.price = m_packs[at].price;
    loadAmount();
    Q_EMIT changed();
}

QString ArrivalForm::amountError() const { return shown(m_tried, errorOf(amountSaid())); }

QStringList ArrivalForm::places() const
{
    return m_offers.places + QStringList { tr("Another place"), tr("Not known") };
}

int ArrivalForm::placeAt() const
{
    switch (m_placeKind) {
    case NamedPlace:
        return static_cast<int>(m_offers.places.indexOf(m_place));
    case OtherPlace:
        return static_cast<int>(m_offers.places.size());
    case NoPlace:
        return static_cast<int>(m_offers.places.size()) + 1;
    default:
        return -1;
    }
}

void ArrivalForm::setPlaceAt(int at)
{
    const int named = static_cast<int>(m_offers.places.size());
    m_place = m_offers.places.value(at);
    m_placeKind = at < 0 ? PlaceNotSaid : at < named ? NamedPlace : at == named ? OtherPlace : NoPlace;
    Q_EMIT changed();
}

Result<void> ArrivalForm::putDate(ArrivalDraft& draft) const
{
    if (!dateWanted()) {
        draft.foundUndated = m_dateKind == FoundUndated;
        if (m_dateKind >= 0) {
            draft.made.reset();
            draft.printed.reset();
            draft.lotReadAs.clear();
        }
        return {};
    }
    auto date = readLabelDate(m_date);
    if (!date)
        return tl::unexpected(date.error());
    // A month stands for its last day where stock may be used until it, for its first where its life began in
    // it.
    if (m_dateKind == MadeOn) {
        if (draft.made != date->low)
            draft.lotReadAs.clear();
        draft.made = date->low;
        draft.printed.reset();
    } else {
        draft.printed = date->high;
        draft.printedIsUseBy = m_dateKind == UseBy;
    }
    return {};
}

QString ArrivalForm::dateError() const
{
    ArrivalDraft draft;
    constexpr int wholeDate = 10; // characters; a date half typed is not yet wrong
    return shown(m_tried || m_date.size() >= wholeDate, errorOf(putDate(draft)));
}

Result<std::optional<Money>> ArrivalForm::priceSaid() const
{
    return m_price == m_priceLoaded ? Result<std::optional<Money>>(m_read.price)
                                    : readPrice(m_price, m_offers.currency);
}

QString ArrivalForm::priceError() const { return shown(m_tried, errorOf(priceSaid())); }

} // namespace gw
