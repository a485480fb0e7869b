#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"

namespace gw {

inline const QByteArrayList shopPlaceRoles { "name", "range" };

/// The places with the temperatures assumed of them, and the draft of one that is added or changed. Inside
/// everything is in degrees Celsius; the draft's steppers are in whole degrees of the person's unit.
class ShopSettingsPlacesController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* places READ places CONSTANT) ///< shopPlaceRoles; key: the place's id
    Q_PROPERTY(bool loaded READ loaded NOTIFY placesChanged)
    Q_PROPERTY(bool isNew READ isNew NOTIFY draftChanged)
    Q_PROPERTY(QString name READ name WRITE setName NOTIFY draftChanged)
    Q_PROPERTY(bool assumed READ assumed WRITE setAssumed NOTIFY draftChanged) ///< a range is assumed at all
    Q_PROPERTY(int low READ low WRITE setLow NOTIFY draftChanged)
    Q_PROPERTY(int high READ high WRITE setHigh NOTIFY draftChanged)
    Q_PROPERTY(int coldest READ coldest NOTIFY draftChanged) ///< ends of the steppers
    Q_PROPERTY(int warmest READ warmest NOTIFY draftChanged)
    Q_PROPERTY(QString unit READ unit NOTIFY draftChanged)
    Q_PROPERTY(bool canSave READ canSave NOTIFY draftChanged)

public:
    explicit ShopSettingsPlacesController(QObject* parent = nullptr);

    RowsModel* places() { return &m_places; }
    bool loaded() const { return m_loaded; }
    bool isNew() const { return m_draft.id.empty(); }
    QString name() const { return QString::fromStdString(m_draft.name); }
    void setName(const QString& name);
    bool assumed() const { return m_draft.assumed.year.has_value(); }
    void setAssumed(bool assumed);
    int low() const { return assumed() ? shown(m_draft.assumed.year->low) : 0; }
    void setLow(int degrees);
    int high() const { return assumed() ? shown(m_draft.assumed.year->high) : 0; }
    void setHigh(int degrees);
    int coldest() const { return shown(Celsius { -40 }); }
    int warmest() const { return shown(Celsius { 60 }); }
    QString unit() const;
    bool canSave() const { return !name().trimmed().isEmpty(); }

    Q_INVOKABLE void draftNew();
    Q_INVOKABLE void draftOf(const QString& place);
    Q_INVOKABLE void save();

Q_SIGNALS:
    void placesChanged();
    void draftChanged();
    void saved();

protected:
    void begin() override;

private:
    void read();
    UnitSystem units() const;
    int shown(Celsius degrees) const;
    Celsius kept(int degrees) const;

    RowsModel m_places;
    std::vector<PlaceRecord> m_all;
    bool m_loaded = false;
    PlaceRecord m_draft;
};

} // namespace gw
