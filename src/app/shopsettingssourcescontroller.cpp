#include "app/shopsettingssourcescontroller.h"

#include <map>

#include "app/words.h"
#include "shop/cautions.h"

namespace gw {

namespace {

/// How many figures rest on something, by the confidence put in them.
struct Trust {
    int high = 0, medium = 0, low = 0, other = 0;

    void add(const std::string& confidence)
    {
        ++(confidence == "high" ? high : confidence == "medium" ? medium : confidence == "low" ? low : other);
    }
    int all() const { return high + medium + low + other; }
};

struct Known {
    std::vector<SourceRecord> sources;
    std::map<std::string, Trust> trust; ///< by source; a figure may rest on several
    Trust together;
    std::vector<Caution> cautions;
};

Result<Known> readKnown(const Shop& shop)
{
    auto sources = shop.store().sources();
    if (!sources)
        return tl::unexpected(sources.error());
    auto cautions = allCautions(shop);
    if (!cautions)
        return tl::unexpected(cautions.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    Known known;
    known.sources = std::move(*sources);
    known.cautions = std::move(*cautions);
    const auto add = [&known](const std::vector<Figure>& figures) {
        for (const Figure& figure : figures) {
            known.together.add(figure.confidence);
            for (const QString& source : q(figure.source).split(u';', Qt::SkipEmptyParts))
                known.trust[source.trimmed().toStdString()].add(figure.confidence);
        }
    };
    for (const auto& [id, cls] : catalogue->classes)
        add(cls.figures);
    for (const auto& [id, family] : catalogue->families)
        add(family.figures);
    return known;
}

QString trustText(const Trust& trust)
{
    QStringList parts;
    const auto add = [&parts](int count, const QString& what) {
        if (count > 0)
            parts.append(what.arg(count));
    };
    using S = ShopSettingsSourcesController;
    add(trust.high, S::tr("%1 of high confidence"));
    add(trust.medium, S::tr("%1 of medium"));
    add(trust.low, S::tr("%1 of low"));
    add(trust.other, S::tr("%1 not rated"));
    return S::tr("%1: %2").arg(S::tr("%n figure(s)", nullptr, trust.all()), parts.join(QStringLiteral(", ")));
}

QString momentName(const std::string& moment)
{
    using S = ShopSettingsSourcesController;
    static const std::map<std::string, const char*> names { { "storing", QT_TR_NOOP("Storing") },
        { "opening", QT_TR_NOOP("Opening") }, { "mixing", QT_TR_NOOP("Mixing") },
        { "gluing", QT_TR_NOOP("Gluing") }, { "sanding", QT_TR_NOOP("Sanding") },
        { "disposing", QT_TR_NOOP("Disposing") } };
    const auto found = names.find(moment);
    return found == names.end() ? q(moment) : S::tr(found->second);
}

} // namespace

ShopSettingsSourcesController::ShopSettingsSourcesController(QObject* parent)
    : Controller(parent)
    , m_sources(shopSourceRoles)
    , m_cautions(shopCautionRoles)
{
}

void ShopSettingsSourcesController::begin()
{
    connect(&services()->shop(), &ShopThread::opened, this, &ShopSettingsSourcesController::read);
    read();
}

void ShopSettingsSourcesController::read()
{
    take(services()->shop().run(readKnown), [this](const Known& known) {
        std::vector<ShownRow> sources;
        for (const SourceRecord& source : known.sources) {
            const auto trust = known.trust.find(source.key);
            sources.push_back({ q(source.key),
                { q(source.title), tr("%1 · %2 · %3").arg(q(source.key), q(source.kind), q(source.status)),
                    trust == known.trust.end() ? QString() : trustText(trust->second) } });
        }
        std::vector<ShownRow> cautions;
        std::string moment;
        for (const Caution& caution : known.cautions) {
            QStringList of;
            for (const std::string& cls : caution.classes)
                of.append(q(cls));
            cautions.push_back({ QString::number(cautions.size()),
                { momentName(caution.moment), q(caution.text), of.join(QStringLiteral(" · ")),
                    caution.moment != moment } });
            moment = caution.moment;
        }
        m_sources.setRows(std::move(sources));
        m_cautions.setRows(std::move(cautions));
        m_summary = trustText(known.together);
        Q_EMIT shown();
    });
}

} // namespace gw
