#include "app/arrivalcontroller.h"

#include <utility>

#include "app/words.h"
#include "shop/materialsaid.h"
#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

namespace {

constexpr int latestShown = 24;
/// A walk along more than this is shown by its end only; its numbers count all that is shown.
constexpr int mostTaken = 600;
/// A text longer than this is no maker's article code.
constexpr std::size_t longestArticleCode = 40;

/// Everything the screen offers, read at one go on the shop's thread.
struct OnOffer {
    ArrivalForm::Offers offers;
    std::vector<ChoiceItem> materials, classes;
    std::map<QString, ArrivalKind> kinds;
    std::vector<ArrivalRow> latest, taken;
    bool bookedStands = false; ///< what was booked in last was not taken back
};

Result<OnOffer> onOffer(
    const Shop& shop, const QString& bookedEntry, const QStringList& takenContainers, Moment now)
{
    OnOffer all;
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    auto currency = shop.store().setting("shop_currency");
    if (!currency)
        return tl::unexpected(currency.error());
    auto latest = latestArrivals(shop, latestShown, now);
    if (!latest)
        return tl::unexpected(latest.error());
    if (!takenContainers.isEmpty()) {
        auto taken = latestArrivals(shop, mostTaken, now);
        if (!taken)
            return tl::unexpected(taken.error());
        std::erase_if(
            *taken, [&](const ArrivalRow& row) { return !takenContainers.contains(row.container); });
        all.taken = std::move(*taken);
    }
    for (const PlaceRecord& place : *places)
        all.offers.places.append(q(place.name));
    all.offers.currency = q(currency->value_or(std::string()));
    all.offers.units = shop.units();
    all.materials = materialChoices(*catalogue);
    all.classes = classChoices(*catalogue);
    for (const auto& [id, cls] : catalogue->classes)
        all.kinds.emplace(q(id.text),
            ArrivalKind {
                cls, lotDateContext(cls, MaterialRecord {}, dateOf(now)), partnersFor(*catalogue, id) });
    all.latest = std::move(*latest);
    if (!bookedEntry.isEmpty()) {
        auto entry = shop.store().entry({ bookedEntry.toStdString() });
        auto story = entry && *entry && (*entry)->container
            ? shop.store().entriesOf(*(*entry)->container, Moment::max())
            : Result<std::vector<Entry>> {};
        if (!story)
            return tl::unexpected(story.error());
        all.bookedStands = !reversedAmong(*story).contains({ bookedEntry.toStdString() });
    }
    return all;
}

/// What can be said of a material chosen by name.
struct Chosen {
    ArrivalDraft usual;
    std::vector<PackRecord> packs;
    LotDateContext lot;
};

Result<Chosen> chosen(const Shop& shop, const MaterialId& material, Moment now)
{
    auto proposal = proposeMaterial(shop, material, now);
    if (!proposal)
        return tl::unexpected(proposal.error());
    auto packs = shop.store().packs();
    if (!packs)
        return tl::unexpected(packs.error());
    Chosen answer { proposal->draft, {}, proposal->lotContext };
    for (PackRecord& pack : *packs) {
        if (pack.material == material)
            answer.packs.push_back(std::move(pack));
    }
    std::ranges::sort(answer.packs, {}, [](const PackRecord& pack) { return pack.amount; });
    return answer;
}

/// The label codes and the first container's judgement.
struct BookedIn {
    QStringList labels;
    QString verdict, reason;
};

Result<BookedIn> bookedIn(const Shop& shop, const std::vector<ContainerId>& containers, Moment now)
{
    BookedIn booked;
    for (const ContainerId& id : containers) {
        auto container = shop.store().container(id);
        if (!container)
            return tl::unexpected(container.error());
        if (*container)
            booked.labels.append(q((*container)->label));
    }
    if (containers.empty())
        return booked;
    auto page = containerPage(shop, containers.front().text, now);
    if (!page)
        return tl::unexpected(page.error());
    booked.verdict = verdictKey(page->item.judgement.verdict);
    booked.reason = reasonText(page->item.judgement);
    return booked;
}

} // namespace

ArrivalController::ArrivalController(QObject* parent)
    : Controller(parent)
{
}

void ArrivalController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &ArrivalController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &ArrivalController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &ArrivalController::read);
    connect(services()->settings(), &Settings::unitsChanged, this, &ArrivalController::read);
    connect(services(), &AppServices::proposalWaiting, this, &ArrivalController::takeWaiting);
    read();
}

void ArrivalController::read()
{
    const Moment now = services()->clock().now();
    m_form.setToday(services()->clock().today());
    take(services()->shop().run([now, entry = m_bookedEntry, taken = services()->stockTaking().containers](
                                    const Shop& shop) { return onOffer(shop, entry, taken, now); }),
        [this, entry = m_bookedEntry](OnOffer all) {
            m_form.setOffers(all.offers);
            m_materials.setItems(std::move(all.materials));
            m_classes.setItems(std::move(all.classes));
            m_kinds = std::move(all.kinds);
            m_latest.setRows(std::move(all.latest));
            countTaken(all.taken);
            m_taken.setRows(std::move(all.taken));
            m_loaded = true;
            if (m_state == Booked && entry == m_bookedEntry && !all.bookedStands)
                setState(Waiting);
            takeWaiting();
            Q_EMIT shown();
        });
}

void ArrivalController::takeWaiting()
{
    // What the shop buys has to be known before a proposal can be shown.
    if (!m_loaded)
        return;
    if (auto proposal = services()->takeProposal())
        receive(std::move(*proposal));
}

void ArrivalController::receive(ArrivalProposal proposal)
{
    if (m_state != Offered) {
        show(proposal);
        return;
    }
    const auto& gtin = proposal.draft.gtin;
    if (gtin ? gtin == m_form.asRead().gtin : proposal.code.text == m_code.text) {
        if (!m_form.addFrom(proposal.draft))
            m_say = tr("Scanned again. For two or more of the same, raise the count.");
    } else if (proposal.kind == ArrivalProposal::Kind::NothingToBookIn) {
        services()->say(q(proposal.say));
    } else {
        m_other = std::move(proposal);
    }
    Q_EMIT shown();
}

void ArrivalController::show(const ArrivalProposal& proposal)
{
    setError(QString());
    m_code = proposal.code;
    m_say = q(proposal.say);
    if (proposal.kind == ArrivalProposal::Kind::NothingToBookIn) {
        setState(Unusable);
        return;
    }
    m_photo = {};
    ArrivalDraft draft = proposal.draft;
    if (stockTaking())
        standOnShelf(draft);
    const ChoiceItem* material
        = proposal.draft.material ? m_materials.item(q(proposal.draft.material->text)) : nullptr;
    if (proposal.draft.material && !material) {
        // Learned a moment ago, and not read yet.
        ChoiceItem fresh;
        fresh.key = q(proposal.draft.material->text);
        fresh.name = q(proposal.materialName);
        m_form.load(draft, &fresh);
    } else {
        m_form.load(draft, material);
    }
    m_form.setLotContext(proposal.lotContext);
    setState(Offered);
}

void ArrivalController::byHand()
{
    ArrivalProposal proposal;
    proposal.lotContext.today = dateOf(services()->clock().now());
    // A text that named no product may well be the maker's own code for it.
    if (m_state == Unusable && !faulty() && m_code.kind == CodeKind::Plain
        && m_code.text.size() <= longestArticleCode)
        proposal.draft.newArticleCode = m_code.text;
    proposal.kind = ArrivalProposal::Kind::NewMaterial;
    show(proposal);
}

void ArrivalController::chooseMaterial(const QString& key)
{
    const Moment now = services()->clock().now();
    take(services()->shop().run([id = MaterialId { key.toStdString() }, now](
                                    const Shop& shop) { return chosen(shop, id, now); }),
        [this, key](const Chosen& answer) {
            if (const ChoiceItem* material = m_materials.item(key); material && m_state == Offered) {
                m_form.chooseMaterial(*material, answer.usual, answer.packs);
                m_form.setLotContext(answer.lot);
            }
        });
}

void ArrivalController::chooseClass(const QString& key)
{
    const ChoiceItem* cls = m_classes.item(key);
    if (!cls)
        return;
    m_form.chooseClass(*cls);
    if (const auto kind = m_kinds.find(key); kind != m_kinds.end()) {
        m_form.setLotContext(kind->second.lot);
        m_form.says()->setKind(&kind->second.cls, kind->second.partners);
    }
}

void ArrivalController::bookIn()
{
    if (busy() || m_state != Offered)
        return;
    auto draft = m_form.submit();
    if (!draft) {
        setError(draft.error());
        return;
    }
    draft->photo = photoToKeep();
    draft->leftShare = std::exchange(m_leftShare, 1);
    act([draft = std::move(*draft)](Shop& shop, ActTime time) { return gw::bookIn(shop, draft, time); },
        [this](const ActDone& done) { tellBooked(done); });
}

void ArrivalController::tellBooked(const ActDone& done)
{
    m_bookedEntry = q(done.entry.text);
    m_booked = q(done.said);
    m_photo = {};
    noteTaken(done);
    m_labels.clear();
    m_verdict.clear();
    m_reason.clear();
    setState(Booked);
    const Moment now = services()->clock().now();
    take(services()->shop().run([containers = done.containers, now](
                                    const Shop& shop) { return bookedIn(shop, containers, now); }),
        [this, entry = m_bookedEntry](const BookedIn& booked) {
            if (entry != m_bookedEntry)
                return;
            m_labels = booked.labels;
            m_verdict = booked.verdict;
            m_reason = booked.reason;
            Q_EMIT shown();
        });
}

void ArrivalController::putAside()
{
    setError(QString());
    if (m_other)
        takeOther();
    else
        setState(Waiting);
}

void ArrivalController::takeOther()
{
    if (m_other)
        show(*std::exchange(m_other, std::nullopt));
}

void ArrivalController::leaveOther()
{
    m_other.reset();
    Q_EMIT shown();
}

void ArrivalController::setState(State state)
{
    // What was scanned meanwhile comes next once this one is booked in.
    m_state = state;
    if (state == Waiting) {
        m_code = {};
        m_say.clear();
        m_bookedEntry.clear();
    }
    Q_EMIT shown();
}

QString ArrivalController::codeText() const
{
    if (m_code.gtin)
        return q(printedForm(*m_code.gtin));
    // The separator is no character to show.
    return q(m_code.text).replace(QChar(29), u' ').left(80);
}

QStringList ArrivalController::warnings() const
{
    QStringList words;
    for (const std::string& warning : m_code.warnings)
        words.append(q(warning));
    return words;
}

QString ArrivalController::other() const
{
    if (!m_other)
        return {};
    return m_other->materialName.empty() ? tr("A product that is new here") : q(m_other->materialName);
}

} // namespace gw
