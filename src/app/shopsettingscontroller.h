#pragma once

#include "app/controller.h"
#include "app/shopsettingscare.h"

namespace gw {

/// The looks and units of this device, and the store: where it is and whether it is sound.
class ShopSettingsController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QList<QString> themes READ themes CONSTANT)
    Q_PROPERTY(int theme READ theme WRITE setTheme NOTIFY looksChanged)
    Q_PROPERTY(QList<QString> unitSystems READ unitSystems CONSTANT)
    Q_PROPERTY(int unitSystem READ unitSystem WRITE setUnitSystem NOTIFY looksChanged)
    Q_PROPERTY(QString shopName READ shopName NOTIFY storeChanged) ///< empty when nobody gave it one
    Q_PROPERTY(QString storeWhere READ storeWhere NOTIFY storeChanged)
    Q_PROPERTY(QString storeEngine READ storeEngine NOTIFY storeChanged)
    Q_PROPERTY(QString storeSize READ storeSize NOTIFY storeChanged) ///< empty: the server's affair
    Q_PROPERTY(bool verifying READ verifying NOTIFY verifyChanged)
    Q_PROPERTY(
        QString verifyVerdict READ verifyVerdict NOTIFY verifyChanged) ///< sign; empty: not looked at yet
    Q_PROPERTY(QString verifyText READ verifyText NOTIFY verifyChanged)
    Q_PROPERTY(QList<QString> problems READ problems NOTIFY verifyChanged)
    Q_PROPERTY(QString version READ version CONSTANT)
    Q_PROPERTY(QString engines READ engines CONSTANT) ///< what reads symbols, with versions

public:
    explicit ShopSettingsController(QObject* parent = nullptr);

    QStringList themes() const { return { tr("As the system"), tr("Light"), tr("Dark") }; }
    int theme() const;
    void setTheme(int theme);
    QStringList unitSystems() const { return { tr("g, ml, °C"), tr("oz, fl oz, °F") }; }
    int unitSystem() const;
    void setUnitSystem(int system);
    QString shopName() const { return m_facts.shopName; }
    QString storeWhere() const { return m_facts.where; }
    QString storeEngine() const { return m_facts.engine; }
    QString storeSize() const { return m_facts.size; }
    bool verifying() const { return m_verifying; }
    QString verifyVerdict() const { return m_verifyVerdict; }
    QString verifyText() const { return m_verifyText; }
    QStringList problems() const { return m_problems; }
    QString version() const;
    QString engines() const;

    /// Looks at everything that should hold in the store.
    Q_INVOKABLE void verify();

Q_SIGNALS:
    void looksChanged();
    void storeChanged();
    void verifyChanged();

protected:
    void begin() override;

private:
    void read();

    StoreFacts m_facts;
    bool m_verifying = false;
    QString m_verifyVerdict, m_verifyText;
    QStringList m_problems;
};

} // namespace gw
