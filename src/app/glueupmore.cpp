#include "app/glueupmore.h"

#include <array>

#include "app/words.h"

namespace gw {

namespace {

QList<QString> namesOf(const std::vector<NamedKey>& all, const QString& notSaid)
{
    QList<QString> names { notSaid };
    for (const NamedKey& one : all)
        names.append(q(one.name));
    return names;
}

/// The key behind a choice; empty for "Not said".
std::string keyAt(const std::vector<NamedKey>& all, int choice)
{
    const auto at = static_cast<std::size_t>(choice);
    return choice > 0 && at <= all.size() ? all[at - 1].key : std::string();
}

std::optional<bool> firstOfTwo(int choice) { return choice == 0 ? std::nullopt : std::optional(choice == 1); }

std::optional<ServicePlace> placeAt(int choice)
{
    constexpr std::array places { ServicePlace::Dry, ServicePlace::Damp, ServicePlace::Outdoor,
        ServicePlace::Hot };
    const auto at = static_cast<std::size_t>(choice);
    return choice > 0 && at <= places.size() ? std::optional(places[at - 1]) : std::nullopt;
}

std::optional<Load> loadAt(int choice)
{
    constexpr std::array loads { Load::Light, Load::Lasting, Load::Shock };
    const auto at = static_cast<std::size_t>(choice);
    return choice > 0 && at <= loads.size() ? std::optional(loads[at - 1]) : std::nullopt;
}

} // namespace

GlueUpMore::GlueUpMore(QObject* parent)
    : QObject(parent)
    , m_surfaceAge(GlueUpCondition::Kind::SurfaceAge, tr("Faces cut"))
{
    connect(&m_surfaceAge, &GlueUpCondition::changed, this, &GlueUpMore::changed);
}

Result<GlueUpMore::Choices> GlueUpMore::read(const Shop& shop)
{
    const auto tables = SuitabilityTables::read(shop);
    if (!tables)
        return tl::unexpected(tables.error());
    const auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    Choices choices { tables->joints(), tables->residues(), {} };
    for (const PlaceRecord& place : *places)
        choices.places.push_back(place.name);
    return choices;
}

QList<QString> GlueUpMore::joints() const { return namesOf(m_choices.joints, tr("Not said")); }

QList<QString> GlueUpMore::residues() const { return namesOf(m_choices.residues, tr("Not said")); }

QList<QString> GlueUpMore::places() const
{
    QList<QString> names { tr("Not said") };
    for (const std::string& place : m_choices.places)
        names.append(q(place));
    return names;
}

int GlueUpMore::count() const
{
    int said = m_surfaceAge.said() ? 1 : 0;
    for (const int choice : { m_joint, m_residue, m_stood, m_period, m_aired, m_place, m_load })
        said += choice > 0 ? 1 : 0;
    return said;
}

void GlueUpMore::setChoices(Choices choices)
{
    // A place may come or go while another is chosen: the choice keeps its name, not its number.
    const std::string stood
        = m_stood > 0 ? m_choices.places[static_cast<std::size_t>(m_stood) - 1] : std::string();
    m_choices = std::move(choices);
    m_stood = 0;
    for (std::size_t i = 0; i < m_choices.places.size(); ++i) {
        if (!stood.empty() && m_choices.places[i] == stood)
            m_stood = static_cast<int>(i) + 1;
    }
    Q_EMIT changed();
}

void GlueUpMore::addTo(Conditions& conditions) const
{
    conditions.joint = keyAt(m_choices.joints, m_joint);
    conditions.residue = keyAt(m_choices.residues, m_residue);
    conditions.period = firstOfTwo(m_period);
    conditions.ventilated = firstOfTwo(m_aired);
    conditions.servicePlace = placeAt(m_place);
    conditions.load = loadAt(m_load);
    conditions.surfaceAgeHours = m_surfaceAge.value();
    if (m_stood > 0)
        conditions.woodStood = m_choices.places[static_cast<std::size_t>(m_stood) - 1];
}

GlueAsked GlueUpMore::asked(std::optional<double> gapMm) const
{
    return { keyAt(m_choices.joints, m_joint), keyAt(m_choices.residues, m_residue), firstOfTwo(m_period), {},
        gapMm, placeAt(m_place), loadAt(m_load) };
}

void GlueUpMore::take(int& into, int value)
{
    if (value == into || value < 0)
        return;
    into = value;
    Q_EMIT changed();
}

void GlueUpMore::forget()
{
    m_joint = m_residue = m_stood = m_period = m_aired = m_place = m_load = 0;
    m_surfaceAge.forget();
    Q_EMIT changed();
}

} // namespace gw
