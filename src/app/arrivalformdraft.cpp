// What the form comes to: the draft to book in, and what it still lacks.
#include "app/arrivalform.h"

namespace gw {

ArrivalDraft ArrivalForm::draftSoFar() const
{
    ArrivalDraft draft = m_read;
    draft.material.reset();
    if (!m_materialKey.isEmpty())
        draft.material = MaterialId { m_materialKey.toStdString() };
    draft.newName = isNew() ? m_name.simplified().toStdString() : std::string();
    draft.newClass = isNew() ? ClassId { m_classKey.toStdString() } : ClassId {};
    draft.newArticleCode = isNew() ? m_articleCode.trimmed().toStdString() : std::string();
    draft.place = m_place.simplified().toStdString();
    draft.count = m_count;
    draft.lot = m_lot.trimmed().toStdString();
    draft.amount = amountSaid().value_or(std::nullopt);
    // A pack that was learned with another amount is not this one.
    if (draft.pack && draft.amount != m_read.amount && !m_read.gtin)
        draft.pack.reset();
    return draft;
}

Result<ArrivalDraft> ArrivalForm::submit()
{
    m_tried = true;
    Q_EMIT changed();
    ArrivalDraft draft = draftSoFar();
    if (auto amount = amountSaid(); !amount)
        return tl::unexpected(amount.error());
    if (auto date = putDate(draft); !date)
        return tl::unexpected(date.error());
    auto price = priceSaid();
    if (!price)
        return tl::unexpected(price.error());
    draft.price = *price;
    if (isNew()) {
        auto figures = m_says.figures();
        if (!figures)
            return tl::unexpected(figures.error());
        draft.newLabelFigures = std::move(*figures);
        draft.newPartner = m_says.partner();
    }
    return draft;
}

QStringList ArrivalForm::lackingWords() const
{
    QStringList words;
    ArrivalDraft draft = draftSoFar();
    // What cannot be read yet is said already; what is wrong with it is told when it is handed in.
    const bool amountTyped = !m_amount.trimmed().isEmpty();
    const bool dateTyped = dateWanted() && !m_date.trimmed().isEmpty();
    if (dateTyped || !dateWanted())
        (void)putDate(draft);
    for (const std::string& ask : missingFrom(draft)) {
        if (ask == "material")
            words.append(tr("what it is called"));
        else if (ask == "class")
            words.append(tr("what kind of stuff it is"));
        else if (ask == "amount" && !amountTyped)
            words.append(tr("how much is in it"));
        else if (ask == "count")
            words.append(tr("how many are in the case"));
        else if (ask == "place" && m_placeKind != NoPlace)
            words.append(tr("where it will stand"));
        else if (ask == "label_date" && m_dateKind != NoDate && !dateTyped)
            words.append(tr("what date the label gives"));
    }
    return words;
}

QString ArrivalForm::lacking() const
{
    const QStringList words = lackingWords();
    return words.isEmpty() ? QString() : tr("Still to say: %1.").arg(words.join(tr(", ")));
}

} // namespace gw
