#pragma once

#include <map>

#include "app/controller.h"
#include "app/ordershown.h"
#include "shop/setup.h"

namespace gw {

/// The packs on offer, and the draft of one that is told of or changed.
class OrderPacksController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* packs READ packs CONSTANT) ///< orderPackRoles; key: the pack's id
    Q_PROPERTY(QList<QString> materials READ materials NOTIFY known) ///< names, to choose one by index
    Q_PROPERTY(QList<QString> suppliers READ suppliers NOTIFY known) ///< those heard of
    Q_PROPERTY(QString currency READ currency NOTIFY known) ///< the shop's own; empty when not known
    Q_PROPERTY(bool isNew READ isNew NOTIFY draftChanged)
    Q_PROPERTY(int material READ material WRITE setMaterial NOTIFY draftChanged) ///< -1: not chosen
    Q_PROPERTY(QString amount READ amount WRITE setAmount NOTIFY draftChanged)
    Q_PROPERTY(QString gtin READ gtin WRITE setGtin NOTIFY draftChanged)
    Q_PROPERTY(QString price READ price WRITE setPrice NOTIFY draftChanged)
    Q_PROPERTY(QString supplier READ supplier WRITE setSupplier NOTIFY draftChanged)
    Q_PROPERTY(QString leadDays READ leadDays WRITE setLeadDays NOTIFY draftChanged)
    Q_PROPERTY(bool canSave READ canSave NOTIFY draftChanged)

public:
    explicit OrderPacksController(QObject* parent = nullptr);

    RowsModel* packs() { return &m_packs; }
    QStringList materials() const { return m_materials; }
    QStringList suppliers() const { return m_suppliers; }
    QString currency() const { return m_currency; }
    bool isNew() const { return m_draft.pack.empty(); }
    int material() const;
    void setMaterial(int material);
    QString amount() const { return QString::fromStdString(m_draft.amount); }
    void setAmount(const QString& amount) { change(m_draft.amount, amount); }
    QString gtin() const { return QString::fromStdString(m_draft.gtin); }
    void setGtin(const QString& gtin) { change(m_draft.gtin, gtin); }
    QString price() const { return QString::fromStdString(m_draft.price); }
    void setPrice(const QString& price) { change(m_draft.price, price); }
    QString supplier() const { return QString::fromStdString(m_draft.supplier); }
    void setSupplier(const QString& supplier) { change(m_draft.supplier, supplier); }
    QString leadDays() const { return QString::fromStdString(m_leadDays); }
    void setLeadDays(const QString& days) { change(m_leadDays, days); }
    bool canSave() const { return !m_draft.material.empty() && !m_draft.amount.empty(); }

    /// Begins a draft of a new pack, or of the one with a key.
    Q_INVOKABLE void draftNew();
    Q_INVOKABLE void draftOf(const QString& pack);
    Q_INVOKABLE void save();

Q_SIGNALS:
    void known();
    void draftChanged();
    void saved();

protected:
    void begin() override;

private:
    void read();
    void change(std::string& field, const QString& text);

    RowsModel m_packs;
    QStringList m_materials, m_suppliers;
    std::vector<std::string> m_materialIds;
    std::map<std::string, PackOffered> m_offers; ///< by pack, as the form begins with it
    std::map<std::string, std::string> m_exact; ///< by pack, the amount without any rounding for the eye
    QString m_currency;
    PackOffered m_draft; ///< its leadDays are only read from the text when it is saved
    std::string m_leadDays;
};

} // namespace gw
