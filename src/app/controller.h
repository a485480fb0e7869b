#pragma once

#include <QObject>
#include <QPointer>
#include <QString>
#include <QtQmlIntegration/qqmlintegration.h>

#include "app/appservices.h"
#include "app/whendone.h"

namespace gw {

/// What the controller of every screen shares: its services, whether it waits for an answer, and what went
/// wrong, ready to show. One screen, one controller; it is made with the screen and lives on the GUI thread.
class Controller : public QObject {
    Q_OBJECT
    QML_ANONYMOUS
    Q_PROPERTY(gw::AppServices* services READ services WRITE setServices NOTIFY servicesChanged REQUIRED)
    Q_PROPERTY(bool busy READ busy NOTIFY busyChanged)
    Q_PROPERTY(QString errorText READ errorText NOTIFY errorTextChanged)

public:
    explicit Controller(QObject* parent = nullptr);

    AppServices* services() const { return m_services; }
    void setServices(AppServices* services);
    bool busy() const { return m_pending > 0; }
    QString errorText() const { return m_errorText; }

    Q_INVOKABLE void clearError() { setError(QString()); }

Q_SIGNALS:
    void servicesChanged();
    void busyChanged();
    void errorTextChanged();

protected:
    /// The services are there: connect to them and read for the first time.
    virtual void begin() = 0;

    void setError(const QString& sentence);
    void setError(const Error& error) { setError(QString::fromStdString(error.sentence)); }

    /// Takes up the answer of a question on the GUI thread, if this still exists; an error is shown.
    template <class T, class F> void take(const QFuture<Result<T>>& answer, F then)
    {
        started();
        whenDone(answer, this, [this, then = std::move(then)](Result<T> result) mutable {
            ended();
            if (!result)
                setError(result.error());
            else if constexpr (std::is_void_v<T>)
                then();
            else
                then(std::move(*result));
        });
    }

    /// Does an act: job(Shop&, ActTime) -> Result<ActDone>. What it did is said with a way to undo it, then
    /// done(const ActDone&) is called; what stood in the way is shown.
    template <class F, class Done> void act(F job, Done done)
    {
        setError(QString());
        take(m_services->shop().act(std::move(job)), [this, done = std::move(done)](const ActDone& what) {
            m_services->say(what);
            done(what);
        });
    }

private:
    void started();
    void ended();

    QPointer<AppServices> m_services;
    QString m_errorText;
    int m_pending = 0;
};

} // namespace gw
