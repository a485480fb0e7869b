#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"
#include "app/timechart.h"
#include "shop/climate.h"

namespace gw {

inline const QByteArrayList placeFigureRoles { "label", "value", "note" };
inline const QByteArrayList standsHereRoles { "name", "label", "note", "wrong" };

/// A place's page ready to show; made on the shop's thread.
struct PlaceShown {
    QString name, note;
    ChartDrawn trace;
    bool watched = false; ///< it has readings of its own in the time shown
    QString assumed; ///< "Assumed: −6 °C to 31 °C"
    std::vector<ShownRow> figures, stands;
};
PlaceShown placeShown(const PlaceClimate& climate, Moment asOf, UnitSystem units, QDate today);

/// One place: its temperature against time, what that comes to, what stands there and what it asks for.
class PlaceController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString place READ place WRITE setPlace NOTIFY placeChanged REQUIRED) ///< id
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(QString name READ name NOTIFY shown)
    Q_PROPERTY(QString note READ note NOTIFY shown)
    Q_PROPERTY(QString assumed READ assumed NOTIFY shown)
    Q_PROPERTY(bool watched READ watched NOTIFY shown)
    Q_PROPERTY(QList<QString> spans READ spans CONSTANT) ///< how far back it may be shown
    Q_PROPERTY(int span READ span WRITE setSpan NOTIFY shown)
    Q_PROPERTY(gw::TimeChart* trace READ trace CONSTANT)
    Q_PROPERTY(gw::RowsModel* figures READ figures CONSTANT) ///< placeFigureRoles
    Q_PROPERTY(gw::RowsModel* stands READ stands CONSTANT) ///< standsHereRoles; key: the container's id
    Q_PROPERTY(QString today READ today NOTIFY shown) ///< ISO
    Q_PROPERTY(QString unit READ unit NOTIFY shown)

public:
    explicit PlaceController(QObject* parent = nullptr);

    QString place() const { return m_place; }
    void setPlace(const QString& id);
    bool loaded() const { return m_loaded; }
    QString name() const { return m_shown.name; }
    QString note() const { return m_shown.note; }
    QString assumed() const { return m_shown.assumed; }
    bool watched() const { return m_shown.watched; }
    QStringList spans() const;
    int span() const { return m_span; }
    void setSpan(int span);
    TimeChart* trace() { return &m_trace; }
    RowsModel* figures() { return &m_figures; }
    RowsModel* stands() { return &m_stands; }
    QString today() const;
    QString unit() const;

    /// The low and high a min/max thermometer shows for a day (ISO), in the person's unit unless they name
    /// one.
    Q_INVOKABLE void typeLowHigh(const QString& day, const QString& low, const QString& high);

Q_SIGNALS:
    void placeChanged();
    void shown();
    void typed();

protected:
    void begin() override;

private:
    void read();
    void show(PlaceShown shown);

    QString m_place;
    PlaceShown m_shown;
    TimeChart m_trace;
    RowsModel m_figures, m_stands;
    int m_span = 0;
    bool m_loaded = false;
};

} // namespace gw
