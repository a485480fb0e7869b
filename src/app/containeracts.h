#pragma once

#include "app/controller.h"

namespace gw {

/// What a person does with one container, each by one verb. What is typed comes as text and is read here;
/// what stands in the way is errorText, and done() closes the sheet.
class ContainerActs : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString container MEMBER m_container NOTIFY containerChanged) ///< id or label code
    Q_PROPERTY(QString lot MEMBER m_lot NOTIFY containerChanged)

public:
    explicit ContainerActs(QObject* parent = nullptr);

    Q_INVOKABLE void open();
    /// An amount as typed; the unit counts when the text names none.
    Q_INVOKABLE void use(const QString& amount, const QString& unit);
    Q_INVOKABLE void count(const QString& amount, const QString& unit);
    Q_INVOKABLE void decant(const QString& amount, const QString& unit, const QString& place);
    Q_INVOKABLE void move(const QString& place);
    /// woodFailure is percent as typed, or empty.
    Q_INVOKABLE void test(bool passed, const QString& woodFailure, bool grainy, const QString& note);
    Q_INVOKABLE void retire(const QString& why);
    Q_INVOKABLE void hold(const QString& why);
    Q_INVOKABLE void release();

Q_SIGNALS:
    void containerChanged();
    void done();

protected:
    void begin() override { }

private:
    template <class F> void doIt(F job)
    {
        act([container = m_container.toStdString(), job = std::move(job)](
                Shop& shop, ActTime time) { return job(shop, container, time); },
            [this](const ActDone&) { Q_EMIT done(); });
    }

    QString m_container;
    QString m_lot;
};

} // namespace gw
