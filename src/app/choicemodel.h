#pragma once

#include "app/listmodel.h"
#include "shop/shop.h"

namespace gw {

/// A kind of stuff to choose: what it is called, what it looks like, and among what it stands.
struct ChoiceItem {
    QString key; ///< id of the class or material
    QString name;
    QString note;
    QString group; ///< heading it stands under
    QString shape; ///< vessel
    QString contents; ///< kind of stuff, see contentsKind()
    Dimension countedIn = Dimension::Mass;
    QString sought; ///< everything it can be found by, in lower case

    friend bool operator==(const ChoiceItem&, const ChoiceItem&) = default;
};

/// Every class of the reference data, glues first, in groups.
std::vector<ChoiceItem> classChoices(const Catalogue& catalogue);
/// Every material the shop buys, in the same groups.
std::vector<ChoiceItem> materialChoices(const Catalogue& catalogue);

/// A long list to choose from, narrowed by what is typed; rows of one group stand together.
class ChoiceModel : public gw::ListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by a controller")
    Q_PROPERTY(QString sought READ sought WRITE setSought NOTIFY soughtChanged)

public:
    enum Role { Key = Qt::UserRole, Name, Note, Group, Shape, Contents };
    Q_ENUM(Role)

    using ListModel::ListModel;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QHash<int, QByteArray> roleNames() const override;

    QString sought() const { return m_sought; }
    void setSought(const QString& sought);

    void setItems(std::vector<ChoiceItem> items);
    /// By key, whatever is sought; null when there is none.
    const ChoiceItem* item(const QString& key) const;

Q_SIGNALS:
    void soughtChanged();

private:
    void narrow();

    std::vector<ChoiceItem> m_all, m_rows;
    QString m_sought;
};

} // namespace gw
