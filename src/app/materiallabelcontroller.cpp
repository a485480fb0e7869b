#include "app/materiallabelcontroller.h"

#include "app/words.h"
#include "shop/materialsaid.h"
#include "shop/stock.h"

namespace gw {

namespace {

struct Known {
    MaterialRecord material;
    ClassRecord cls;
    std::vector<MaterialRecord> partners;
    UnitSystem units = UnitSystem::Metric;
};

Result<Known> knownOf(const Shop& shop, const std::string& container)
{
    auto found = findContainer(shop, container);
    if (!found)
        return tl::unexpected(found.error());
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const MaterialRecord* material = catalogue->material(found->material);
    const ClassRecord* cls = catalogue->classOf(found->material);
    if (!material || !cls)
        return fail(ErrorCode::NotFound, "That material is not known in this shop any more.");
    return Known { *material, *cls, partnersFor(*catalogue, cls->id), shop.units() };
}

} // namespace

void MaterialLabelController::setContainer(const QString& container)
{
    if (container == m_container)
        return;
    m_container = container;
    m_material = {};
    Q_EMIT containerChanged();
    Q_EMIT shown();
}

void MaterialLabelController::read()
{
    setError(QString());
    take(services()->shop().run(
             [id = m_container.toStdString()](const Shop& shop) { return knownOf(shop, id); }),
        [this](const Known& known) {
            m_material = known.material.id;
            m_name = q(known.material.name);
            m_says.setUnits(known.units);
            m_says.load(known.material);
            m_says.setKind(&known.cls, known.partners);
            Q_EMIT shown();
        });
}

void MaterialLabelController::save()
{
    if (busy() || !loaded())
        return;
    setError(QString());
    auto figures = m_says.figures();
    if (!figures)
        return setError(figures.error());
    const MaterialSaid said { std::move(*figures), m_says.partner() };
    take(services()->shop().change(
             [id = m_material, said](Shop& shop) { return sayOfMaterial(shop, id, said); }),
        [this](const MaterialRecord& material) {
            services()->say(tr("Kept what the label of %1 says.").arg(q(material.name)));
            Q_EMIT saved();
        });
}

} // namespace gw
