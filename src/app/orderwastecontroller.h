#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"

namespace gw {

/// `kind` is "soon", "group", "past" or "gone"; the rest are texts ready to show.
inline const QByteArrayList orderWasteRoles { "kind", "title", "note", "value" };

/// What goes off soon, what is past use and how such things are usually handled, what was thrown away this
/// year.
class OrderWasteController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* soon READ soon CONSTANT) ///< orderWasteRoles; key: the container's code
    Q_PROPERTY(gw::RowsModel* past READ past CONSTANT) ///< the same, a row "group" before each group's
    Q_PROPERTY(gw::RowsModel* gone READ gone CONSTANT)
    Q_PROPERTY(QString soonTotal READ soonTotal NOTIFY shown)
    Q_PROPERTY(QString goneTotal READ goneTotal NOTIFY shown)
    Q_PROPERTY(QString caution READ caution CONSTANT)
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)

public:
    explicit OrderWasteController(QObject* parent = nullptr);

    RowsModel* soon() { return &m_soon; }
    RowsModel* past() { return &m_past; }
    RowsModel* gone() { return &m_gone; }
    QString soonTotal() const { return m_soonTotal; }
    QString goneTotal() const { return m_goneTotal; }
    QString caution() const;
    bool loaded() const { return m_loaded; }

    /// Writes the calendar file; where it went is said.
    Q_INVOKABLE void saveCalendar(const QUrl& file);

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();

    bool m_loaded = false;
    QString m_soonTotal, m_goneTotal;
    RowsModel m_soon, m_past, m_gone;
};

} // namespace gw
