#pragma once

#include <QUrl>

#include "app/controller.h"

namespace gw {

/// The store could not be opened: why, and what can be done about it.
class TroubleController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString trouble READ trouble NOTIFY shown) ///< why, one sentence
    Q_PROPERTY(QString advice READ advice NOTIFY shown) ///< what to do about it
    Q_PROPERTY(bool retryHelps READ retryHelps NOTIFY shown)

public:
    explicit TroubleController(QObject* parent = nullptr);

    QString trouble() const { return QString::fromStdString(m_trouble.sentence); }
    QString advice() const;
    bool retryHelps() const;

    Q_INVOKABLE void retry();
    /// Opens another store, and that one from now on; made when make is set and there is none of that name.
    Q_INVOKABLE void openStore(const QUrl& file, bool make);

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void show(const Error& trouble);

    Error m_trouble;
};

} // namespace gw
