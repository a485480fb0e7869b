#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"
#include "shop/tonight.h"

namespace gw {

inline const QByteArrayList coldRoles { "name", "label", "place", "text", "lasts", "verdict" };

/// Tonight's low, place by place, and what must come in before it.
class TonightController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(QList<QString> places READ places NOTIFY shown)
    Q_PROPERTY(QList<QString> lows READ lows NOTIFY shown) ///< for each place: "−6 °C", or empty
    Q_PROPERTY(int place READ place WRITE setPlace NOTIFY shown) ///< of places: the one a low is typed for
    Q_PROPERTY(int low READ low NOTIFY shown) ///< its low, or where the stepper begins
    Q_PROPERTY(bool expected READ expected NOTIFY shown) ///< a low was typed for that place
    Q_PROPERTY(int coldest READ coldest NOTIFY shown)
    Q_PROPERTY(int warmest READ warmest NOTIFY shown)
    Q_PROPERTY(QString unit READ unit NOTIFY shown)
    Q_PROPERTY(QString said READ said NOTIFY shown) ///< all of it in a sentence; empty: no low was typed
    Q_PROPERTY(gw::RowsModel* cold READ cold CONSTANT) ///< coldRoles; key: the container's id

public:
    explicit TonightController(QObject* parent = nullptr);

    bool loaded() const { return m_loaded; }
    QStringList places() const;
    QStringList lows() const;
    int place() const { return m_place; }
    void setPlace(int place);
    int low() const;
    bool expected() const;
    int coldest() const;
    int warmest() const;
    QString unit() const;
    QString said() const { return m_said; }
    RowsModel* cold() { return &m_cold; }

    /// Whole degrees of the person's unit.
    Q_INVOKABLE void expect(int low);
    Q_INVOKABLE void forget();

    /// Every place with the low expected of it, and what would suffer; made on the shop's thread.
    struct Night {
        std::vector<PlaceRecord> places;
        std::vector<std::optional<Celsius>> lows;
        QStringList said;
        std::vector<ShownRow> rows;
    };

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();
    void show(Night night);
    UnitSystem units() const;
    void keep(std::optional<Celsius> low);

    Night m_night;
    QString m_said;
    int m_place = -1;
    bool m_loaded = false;
    RowsModel m_cold;
};

} // namespace gw
