#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"

namespace gw {

inline const QByteArrayList shopSourceRoles { "title", "note", "figures" };
inline const QByteArrayList shopCautionRoles { "moment", "text", "of", "first" };

/// Where the reference figures come from, how far each source is trusted, and the usual cautions.
class ShopSettingsSourcesController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* sources READ sources CONSTANT) ///< shopSourceRoles; key: the source's
    Q_PROPERTY(gw::RowsModel* cautions READ cautions CONSTANT) ///< shopCautionRoles, by moment of the work
    Q_PROPERTY(QString summary READ summary NOTIFY shown) ///< "1,204 figures: 80 of high confidence, ..."

public:
    explicit ShopSettingsSourcesController(QObject* parent = nullptr);

    RowsModel* sources() { return &m_sources; }
    RowsModel* cautions() { return &m_cautions; }
    QString summary() const { return m_summary; }

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();

    RowsModel m_sources, m_cautions;
    QString m_summary;
};

} // namespace gw
