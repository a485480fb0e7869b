#pragma once

#include <QHash>
#include <QTimer>

#include "app/controller.h"
#include "app/ordershown.h"

namespace gw {

/// How many of each kind of work the shop expects in a month: what the order list plans for. What is stepped
/// is shown at once and kept when the stepping has come to rest.
class OrderRatesController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* rates READ rates CONSTANT) ///< orderRateRoles; key: the job type's

public:
    explicit OrderRatesController(QObject* parent = nullptr);

    RowsModel* rates() { return &m_rates; }

    /// To the next half up (1) or down (-1), never below nothing.
    Q_INVOKABLE void step(const QString& jobType, int direction);
    /// As typed: "1.5", "0,25".
    Q_INVOKABLE void type(const QString& jobType, const QString& rate);
    /// Keeps what has not been kept yet, such as when the sheet is closed.
    Q_INVOKABLE void keep();

protected:
    void begin() override;

private:
    void read();
    void show();
    void want(const QString& jobType, double perMonth);

    std::vector<ShownRow> m_kept; ///< as the store has them
    QHash<QString, double> m_wanted; ///< by job type, until the store has them
    QTimer m_rest;
    RowsModel m_rates;
};

} // namespace gw
