#include "app/choicemodel.h"

#include <algorithm>
#include <array>

#include <QCoreApplication>

#include "app/shelfrow.h"
#include "app/words.h"

namespace gw {

namespace {

struct Group {
    std::string_view key; ///< as in db/reference/classes.csv
    const char* words;
};

/// In the order a restorer reaches for them.
constexpr std::array groups {
    Group { "hot_hide", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Hot hide and bone glues") },
    Group { "liquid_protein", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Liquid hide and fish glues") },
    Group { "pva", QT_TRANSLATE_NOOP("gw::ChoiceModel", "PVA glues") },
    Group { "epoxy", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Epoxies") },
    Group { "ca", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Cyanoacrylates") },
    Group { "pur", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Other glues") },
    Group { "casein", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Other glues") },
    Group { "uf", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Other glues") },
    Group { "contact", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Other glues") },
    Group { "finish", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Finishes") },
    Group { "colour", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Dyes and pigments") },
    Group { "solvent", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Solvents") },
    Group { "filler", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Fillers and thickeners") },
    Group { "additive", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Additives") },
    Group { "consumable", QT_TRANSLATE_NOOP("gw::ChoiceModel", "Tools and consumables") },
};

QString groupWords(const ClassRecord* cls)
{
    const auto* group = cls ? std::find_if(groups.begin(), groups.end(),
                                  [&](const Group& known) { return known.key == cls->group; })
                            : groups.end();
    // A group the shop's own reference data added keeps its own name.
    if (group == groups.end())
        return cls ? q(cls->group) : QString();
    return QCoreApplication::translate("gw::ChoiceModel", group->words);
}

/// Rows of one heading together, headings in the order above, names in their own.
void sortChoices(std::vector<ChoiceItem>& items)
{
    const auto place = [](const ChoiceItem& item) {
        const auto* group = std::find_if(groups.begin(), groups.end(), [&](const Group& known) {
            return QCoreApplication::translate("gw::ChoiceModel", known.words) == item.group;
        });
        return group - groups.begin();
    };
    std::stable_sort(items.begin(), items.end(), [&](const ChoiceItem& a, const ChoiceItem& b) {
        const auto left = place(a), right = place(b);
        return left != right     ? left < right
            : a.group != b.group ? a.group < b.group
                                 : a.name.localeAwareCompare(b.name) < 0;
    });
}

} // namespace

std::vector<ChoiceItem> classChoices(const Catalogue& catalogue)
{
    std::vector<ChoiceItem> items;
    for (const auto& [id, cls] : catalogue.classes) {
        ChoiceItem item { q(id.text), q(cls.name), q(cls.form), groupWords(&cls), q(cls.vessel),
            contentsKind(&cls), cls.countedIn, {} };
        item.sought = QStringList { item.name, item.note, item.group }.join(u'\n').toLower();
        items.push_back(std::move(item));
    }
    sortChoices(items);
    return items;
}

std::vector<ChoiceItem> materialChoices(const Catalogue& catalogue)
{
    std::vector<ChoiceItem> items;
    for (const auto& [id, material] : catalogue.materials) {
        const ClassRecord* cls = catalogue.classOf(id);
        const std::string& vessel = material.vessel.empty() && cls ? cls->vessel : material.vessel;
        ChoiceItem item { q(id.text), q(material.name), cls ? q(cls->name) : QString(), groupWords(cls),
            q(vessel), contentsKind(cls), cls ? cls->countedIn : Dimension::Mass, {} };
        item.sought
            = QStringList { item.name, item.note, item.group, q(material.articleCode) }.join(u'\n').toLower();
        items.push_back(std::move(item));
    }
    sortChoices(items);
    return items;
}

int ChoiceModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant ChoiceModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const ChoiceItem& item = m_rows[index.row()];
    switch (role) {
    case Key:
        return item.key;
    case Qt::DisplayRole:
    case Name:
        return item.name;
    case Note:
        return item.note;
    case Group:
        return item.group;
    case Shape:
        return item.shape;
    case Contents:
        return item.contents;
    default:
        return {};
    }
}

QHash<int, QByteArray> ChoiceModel::roleNames() const
{
    return { { Key, "key" }, { Name, "name" }, { Note, "note" }, { Group, "group" }, { Shape, "shape" },
        { Contents, "contents" } };
}

void ChoiceModel::setSought(const QString& sought)
{
    if (sought == m_sought)
        return;
    m_sought = sought;
    Q_EMIT soughtChanged();
    narrow();
}

void ChoiceModel::setItems(std::vector<ChoiceItem> items)
{
    m_all = std::move(items);
    narrow();
}

const ChoiceItem* ChoiceModel::item(const QString& key) const
{
    const auto found
        = std::find_if(m_all.begin(), m_all.end(), [&](const ChoiceItem& item) { return item.key == key; });
    return found == m_all.end() ? nullptr : &*found;
}

void ChoiceModel::narrow()
{
    // Every word has to be found, in whatever order they are typed.
    const QStringList words = m_sought.toLower().split(u' ', Qt::SkipEmptyParts);
    std::vector<ChoiceItem> rows;
    for (const ChoiceItem& item : m_all) {
        if (std::all_of(
                words.begin(), words.end(), [&](const QString& word) { return item.sought.contains(word); }))
            rows.push_back(item);
    }
    takeOver(m_rows, std::move(rows));
}

} // namespace gw
