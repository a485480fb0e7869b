#include "app/labelsays.h"

#include <algorithm>
#include <array>

#include "app/labeltext.h"
#include "app/words.h"
#include "shop/hazards.h"
#include "shop/materialsaid.h"

namespace gw {

namespace {

struct Sign {
    const char* code;
    const char* shows; ///< the symbols' names in the UN GHS (from memory)
};
constexpr std::array signsOfGhs { Sign { "GHS01", QT_TRANSLATE_NOOP("gw::LabelSays", "exploding bomb") },
    Sign { "GHS02", QT_TRANSLATE_NOOP("gw::LabelSays", "flame") },
    Sign { "GHS03", QT_TRANSLATE_NOOP("gw::LabelSays", "flame over circle") },
    Sign { "GHS04", QT_TRANSLATE_NOOP("gw::LabelSays", "gas cylinder") },
    Sign { "GHS05", QT_TRANSLATE_NOOP("gw::LabelSays", "corrosion") },
    Sign { "GHS06", QT_TRANSLATE_NOOP("gw::LabelSays", "skull and crossbones") },
    Sign { "GHS07", QT_TRANSLATE_NOOP("gw::LabelSays", "exclamation mark") },
    Sign { "GHS08", QT_TRANSLATE_NOOP("gw::LabelSays", "health hazard") },
    Sign { "GHS09", QT_TRANSLATE_NOOP("gw::LabelSays", "environment") } };

QString nameOf(const std::string& code)
{
    for (const Sign& sign : signsOfGhs) {
        if (code == sign.code)
            return LabelSays::tr(sign.shows);
    }
    return q(code);
}

template <class T> QString shown(bool tried, const Result<T>& said)
{
    return tried && !said ? q(said.error().sentence) : QString();
}

const Figure* figureIn(const MaterialRecord& material, std::string_view key)
{
    const auto found = std::ranges::find(material.labelFigures, key, &Figure::figure);
    return found == material.labelFigures.end() ? nullptr : &*found;
}

QString monthsIn(const MaterialRecord& material, std::string_view key)
{
    const Figure* figure = figureIn(material, key);
    return figure && figure->value ? numberText(*figure->value, 2) : QString();
}

QString degreesIn(const std::optional<double>& celsius, UnitSystem units)
{
    if (!celsius)
        return {};
    return numberText(units == UnitSystem::Us ? *celsius * 9 / 5 + 32 : *celsius, 1);
}

} // namespace

void LabelSays::setUnits(UnitSystem units)
{
    m_units = units;
    Q_EMIT changed();
}

void LabelSays::clear()
{
    load({});
    setKind(nullptr, {});
}

void LabelSays::load(const MaterialRecord& material)
{
    m_sealedMonths = monthsIn(material, "sealed_life");
    m_openedMonths = monthsIn(material, "opened_life");
    const Figure* keep = figureIn(material, "storage_temperature");
    m_keepLow = degreesIn(keep ? keep->low : std::nullopt, m_units);
    m_keepHigh = degreesIn(keep ? keep->high : std::nullopt, m_units);
    m_taken.clear();
    m_noSigns = false;
    m_signalWord = NotRead;
    if (figureIn(material, "pictograms")) {
        const Hazards hazards = hazardsOf({}, material);
        for (const std::string& code : hazards.pictograms)
            m_taken.append(q(code));
        m_noSigns = m_taken.isEmpty();
        if (figureIn(material, "signal_word"))
            m_signalWord = hazards.signalWord == "Danger" ? Danger
                : hazards.signalWord == "Warning"         ? Warning
                                                          : NoWord;
    }
    m_partner = material.partner;
    m_partnerNotKnown = false;
    m_tried = false;
    Q_EMIT changed();
}

void LabelSays::setKind(const ClassRecord* cls, const std::vector<MaterialRecord>& partners)
{
    QStringList usual;
    if (cls) {
        for (const std::string& code : cls->pictograms)
            usual.append(nameOf(code));
    }
    m_usualSigns = usual.join(tr(", "));
    const std::string part = cls ? partOf(*cls) : std::string();
    m_partnerAsked = part == "resin" ? tr("Which hardener goes with it?")
        : part == "hardener"         ? tr("Which resin does it harden?")
                                     : QString();
    m_partners = partners;
    const bool stillOffered
        = m_partner && std::ranges::find(m_partners, *m_partner, &MaterialRecord::id) != m_partners.end();
    if (cls && !stillOffered)
        m_partner.reset();
    Q_EMIT changed();
}

Result<std::vector<Figure>> LabelSays::figures()
{
    m_tried = true;
    Q_EMIT changed();
    auto figures = readLabelLives(m_sealedMonths, m_openedMonths);
    if (!figures)
        return figures;
    auto keep = readKeepBetween(m_keepLow, m_keepHigh, m_units);
    if (!keep)
        return keep;
    figures->insert(figures->end(), keep->begin(), keep->end());
    // A label nobody looked at tells nothing, so that what is usual for its kind goes on counting.
    if (m_taken.isEmpty() && !m_noSigns && m_signalWord == NotRead)
        return figures;
    if (m_taken.isEmpty() && !m_noSigns)
        return fail(ErrorCode::BadInput,
            tr("Say which hazard signs the label shows beside its signal word, or that it shows none.")
                .toStdString());
    std::vector<std::string> codes;
    for (const QString& code : m_taken)
        codes.push_back(code.toStdString());
    auto hazards = hazardFigures(codes,
        m_signalWord == Danger        ? "Danger"
            : m_signalWord == Warning ? "Warning"
                                      : "");
    if (!hazards)
        return hazards;
    // Whoever saw the signs and left the word open has not read that there is none.
    if (m_signalWord == NotRead && !m_taken.isEmpty())
        std::erase_if(*hazards, [](const Figure& figure) { return figure.figure == "signal_word"; });
    figures->insert(figures->end(), hazards->begin(), hazards->end());
    return figures;
}

std::optional<MaterialId> LabelSays::partner() const { return m_partner; }

QString LabelSays::lifeError() const
{
    return shown(m_tried, readLabelLives(m_sealedMonths, m_openedMonths));
}

QString LabelSays::keepError() const
{
    return shown(m_tried, readKeepBetween(m_keepLow, m_keepHigh, m_units));
}

QString LabelSays::degreeUnit() const { return gw::degreeUnit(m_units); }

QStringList LabelSays::signs() const
{
    QStringList codes;
    for (const Sign& sign : signsOfGhs)
        codes.append(QString::fromLatin1(sign.code));
    return codes;
}

QStringList LabelSays::signNames() const
{
    QStringList names;
    for (const Sign& sign : signsOfGhs)
        names.append(tr(sign.shows));
    return names;
}

void LabelSays::toggle(const QString& sign)
{
    if (!signs().contains(sign))
        return;
    if (!m_taken.removeOne(sign)) {
        m_taken.append(sign);
        m_taken.sort();
    }
    m_noSigns = false;
    Q_EMIT changed();
}

void LabelSays::setNoSigns(bool none)
{
    m_noSigns = none;
    if (none)
        m_taken.clear();
    Q_EMIT changed();
}

void LabelSays::setSignalWord(int word)
{
    m_signalWord = std::clamp(word, static_cast<int>(NotRead), static_cast<int>(Danger));
    Q_EMIT changed();
}

QStringList LabelSays::partners() const
{
    QStringList names;
    for (const MaterialRecord& partner : m_partners)
        names.append(q(partner.name));
    if (!names.isEmpty())
        names.append(tr("Not known"));
    return names;
}

int LabelSays::partnerAt() const
{
    if (!m_partner)
        return m_partnerNotKnown ? static_cast<int>(m_partners.size()) : -1;
    const auto at = std::ranges::find(m_partners, *m_partner, &MaterialRecord::id);
    return at == m_partners.end() ? -1 : static_cast<int>(at - m_partners.begin());
}

void LabelSays::setPartnerAt(int at)
{
    const bool named = at >= 0 && at < static_cast<int>(m_partners.size());
    m_partnerNotKnown = !named;
    m_partner = named ? std::optional(m_partners[static_cast<std::size_t>(at)].id) : std::nullopt;
    Q_EMIT changed();
}

} // namespace gw
