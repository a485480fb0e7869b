#include "app/mixcontroller.h"

#include <array>

#include "app/labeltext.h"
#include "app/words.h"
#include "measure/number.h"
#include "measure/ratio.h"

namespace gw {

namespace {

constexpr auto pause = std::chrono::milliseconds(150); // long enough to gather what is being typed

template <class T, std::size_t N> T nth(const std::array<T, N>& all, int index)
{
    const auto at = static_cast<std::size_t>(index);
    return at < N ? all[at] : all.front();
}

/// A number over nothing as typed; none when nothing is.
Result<std::optional<double>> typedNumber(const QString& text, const QString& what)
{
    const std::string typed = text.trimmed().toStdString();
    if (typed.empty())
        return std::optional<double>();
    const auto number = leadingNumber(typed);
    if (!number || number->value <= 0)
        return fail(ErrorCode::BadInput,
            MixController::tr("Write %1 as a number over nothing, such as 25.").arg(what).toStdString());
    return std::optional(number->value);
}

} // namespace

MixController::MixController(QObject* parent)
    : Controller(parent)
    , m_room(GlueUpCondition::Kind::Temperature, tr("Room"))
    , m_parts(mixPartRoles)
{
    m_pause.setSingleShot(true);
    m_pause.setInterval(pause);
    connect(&m_pause, &QTimer::timeout, this, &MixController::reckon);
    connect(this, &MixController::askedChanged, this, &MixController::ask);
    connect(&m_room, &GlueUpCondition::changed, this, &MixController::ask);
}

void MixController::begin()
{
    m_who = services()->settings()->who();
    const auto takeUnits = [this] { m_room.setUnits(services()->settings()->unitSystem()); };
    takeUnits();
    connect(services()->settings(), &Settings::unitsChanged, this, takeUnits);
    Q_EMIT whoChanged();
}

void MixController::look()
{
    take(services()->shop().run([](const Shop& shop) { return gw::recipes(shop); }),
        [this](const std::vector<Recipe>& all) {
            const std::string chosen = recipeId();
            m_recipes.clear();
            m_recipe = 0;
            for (const Recipe& recipe : all) {
                if (recipe.id == chosen)
                    m_recipe = static_cast<int>(m_recipes.size());
                m_recipes.push_back({ recipe.id, q(recipe.name) });
            }
            Q_EMIT recipesChanged();
            Q_EMIT askedChanged();
        });
}

QStringList MixController::recipes() const
{
    QStringList names;
    for (const Choice& choice : m_recipes)
        names.append(choice.name);
    return names;
}

std::string MixController::recipeId() const
{
    const auto at = static_cast<std::size_t>(m_recipe);
    return at < m_recipes.size() ? m_recipes[at].id : std::string();
}

void MixController::setRecipe(int recipe)
{
    if (recipe == m_recipe || recipe < 0)
        return;
    m_recipe = recipe;
    m_need.clear(); // grams of glue are no millilitres of shellac
    Q_EMIT askedChanged();
}

QString MixController::kind() const
{
    const std::string id = recipeId();
    if (id.starts_with("hot_hide"))
        return QStringLiteral("hot");
    if (id.starts_with("epoxy"))
        return QStringLiteral("epoxy");
    return id == "shellac" ? QStringLiteral("shellac") : QString();
}

QString MixController::needUnit() const
{
    const std::string id = recipeId();
    return id == "shellac" || id == "dye_solution" ? QStringLiteral("ml") : QStringLiteral("g");
}

Result<MixAsked> MixController::asked() const
{
    MixAsked asked;
    asked.recipe = recipeId();
    if (!m_need.trimmed().isEmpty()) {
        const auto need = readAmount(m_need, needUnit());
        if (!need)
            return tl::unexpected(need.error());
        asked.need = *need;
    }
    if (const auto room = m_room.value())
        asked.room = Celsius { *room };
    asked.form = nth(std::array { GlueForm::Granules, GlueForm::Pearls, GlueForm::Cake }, m_form);
    asked.assemblySeconds
        = nth(std::array<std::optional<double>, 3> { std::nullopt, 15.0, 60.0 }, m_pressing);
    asked.hardenerKind = nth(std::array<std::string, 3> { "", "slow", "fast" }, m_hardener);
    asked.filler = nth(
        std::array { Filler::None, Filler::Silica, Filler::WoodFlour, Filler::Microspheres, Filler::Whiting },
        m_filler);
    asked.consistency = nth(std::array { Consistency::Syrup, Consistency::Ketchup, Consistency::Mayonnaise,
                                Consistency::PeanutButter },
        m_consistency);
    const auto potLife = typedNumber(m_potLife, tr("the pot life"));
    if (!potLife)
        return tl::unexpected(potLife.error());
    asked.potLifeMinutes = *potLife;
    const auto cut = typedNumber(m_cut, tr("the cut"));
    if (!cut)
        return tl::unexpected(cut.error());
    asked.cut = *cut;
    asked.waxy = m_waxy;
    if (!m_massRatio.trimmed().isEmpty()) {
        const auto ratio = parseRatio(m_massRatio.trimmed().toStdString());
        if (!ratio)
            return tl::unexpected(ratio.error());
        if (!(ratio->first > 0))
            return fail(ErrorCode::BadInput,
                tr("A mix with no resin cannot be: take the ratio from the label.").toStdString());
        asked.ratio.hardenerPer100 = 100 * ratio->second / ratio->first;
    }
    return asked;
}

void MixController::ask()
{
    ++m_turn;
    m_pause.start();
    Q_EMIT shown(); // what is shown is no longer fresh
}

void MixController::reckon()
{
    if (!services() || m_recipes.empty())
        return;
    const auto wish = asked();
    if (!wish || !wish->need) {
        m_turnShown = m_turn;
        return show(wish ? Result<MixShown>(MixShown {}) : tl::unexpected(wish.error()));
    }
    using Answer = Result<MixShown>;
    take(services()->shop().run(
             [wish = *wish, now = services()->clock().now()](
                 const Shop& shop) -> Result<Answer> { return Answer(mixShown(shop, wish, now)); }),
        [this, turn = m_turn](Answer answer) {
            if (turn != m_turn)
                return;
            m_turnShown = turn;
            show(std::move(answer));
        });
}

void MixController::show(Result<MixShown> answer)
{
    m_problem = answer ? QString() : q(answer.error().sentence);
    m_shown = answer ? std::move(*answer) : MixShown {};
    m_parts.setRows(m_shown.parts);
    Q_EMIT shown();
}

void MixController::record()
{
    const auto wish = asked();
    if (!canRecord() || !wish)
        return;
    const MixRecording recording { {}, m_who.trimmed().toStdString(), {}, {} };
    services()->settings()->setWho(m_who.trimmed());
    act([wish = *wish, recording](Shop& shop, ActTime time) { return mixBatch(shop, wish, recording, time); },
        [this](const ActDone&) {
            m_need.clear();
            Q_EMIT recorded();
            Q_EMIT askedChanged();
        });
    ask(); // until the act is done there is nothing to record twice
}

} // namespace gw
