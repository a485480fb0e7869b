#pragma once

#include "app/controller.h"
#include "app/labelsays.h"

namespace gw {

/// What the label says of the material in a container, to be read again and changed later.
class MaterialLabelController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString container READ container WRITE setContainer NOTIFY containerChanged) ///< id or label
    Q_PROPERTY(QString name READ name NOTIFY shown) ///< of the material
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(gw::LabelSays* says READ says CONSTANT)

public:
    using Controller::Controller;

    QString container() const { return m_container; }
    void setContainer(const QString& container);
    QString name() const { return m_name; }
    bool loaded() const { return !m_material.empty(); }
    LabelSays* says() { return &m_says; }

    /// Shows what is known now; what was typed and not saved is gone.
    Q_INVOKABLE void read();
    Q_INVOKABLE void save();

Q_SIGNALS:
    void containerChanged();
    void shown();
    void saved();

protected:
    void begin() override { }

private:
    QString m_container, m_name;
    MaterialId m_material;
    LabelSays m_says;
};

} // namespace gw
