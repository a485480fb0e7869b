#pragma once

#include "app/controller.h"
#include "app/potsshown.h"

namespace gw {

/// What is mixed: every pot, cup and jar with its clocks, and what may be noted of each.
class PotsController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* pots READ pots CONSTANT) ///< potRoles
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(int standing READ standing NOTIFY shown) ///< how many are not gone
    Q_PROPERTY(QString next READ next NOTIFY shown) ///< what is due next, with its time; empty: nothing
    Q_PROPERTY(int usualDegrees READ usualDegrees CONSTANT) ///< where a reading begins, on the person's scale
    Q_PROPERTY(QString degreeUnit READ degreeUnit NOTIFY shown)

public:
    explicit PotsController(QObject* parent = nullptr);

    RowsModel* pots() { return &m_pots; }
    bool loaded() const { return m_loaded; }
    int standing() const { return m_standing; }
    QString next() const { return m_next; }
    int usualDegrees() const;
    QString degreeUnit() const;

    /// Notes something without a figure; kind is one of the row's acts.
    Q_INVOKABLE void note(const QString& pot, const QString& kind);
    Q_INVOKABLE void noteTemperature(const QString& pot, const QString& kind, int degrees);
    /// What vessel and glue weigh, or how much was used, as typed; the unit counts where the text names none.
    Q_INVOKABLE void noteAmount(
        const QString& pot, const QString& kind, const QString& amount, const QString& unit);
    Q_INVOKABLE void read();

Q_SIGNALS:
    void shown();
    void noted();

protected:
    void begin() override;

private:
    void doNote(const QString& pot, const BatchNoteAsked& asked);

    RowsModel m_pots;
    bool m_loaded = false;
    int m_standing = 0;
    QString m_next;
};

} // namespace gw
