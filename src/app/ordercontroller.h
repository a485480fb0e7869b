#pragma once

#include <QUrl>

#include "app/controller.h"
#include "app/ordershown.h"

namespace gw {

/// What to buy for a month: the month and the service level asked for, the list that follows, and its file.
class OrderController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    /// Only an active controller asks the store; one that becomes active again catches up.
    Q_PROPERTY(bool active READ active WRITE setActive NOTIFY activeChanged)
    Q_PROPERTY(QString month READ month NOTIFY askedChanged) ///< "June 2026"
    Q_PROPERTY(bool canGoBack READ canGoBack NOTIFY askedChanged) ///< no list for a month that is over
    Q_PROPERTY(bool canGoOn READ canGoOn NOTIFY askedChanged)
    Q_PROPERTY(QList<QString> serviceLevels READ serviceLevels CONSTANT)
    Q_PROPERTY(int service READ service WRITE setService NOTIFY askedChanged) ///< index in the service levels
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(gw::RowsModel* lines READ lines CONSTANT) ///< orderLineRoles
    Q_PROPERTY(QString total READ total NOTIFY shown) ///< of every currency; empty when nothing is bought
    Q_PROPERTY(QString summary READ summary NOTIFY shown) ///< "12 lines, 15 packs"
    Q_PROPERTY(bool workExpected READ workExpected NOTIFY shown) ///< somebody said how much work comes
    Q_PROPERTY(QList<QString> notes READ notes NOTIFY shown)
    Q_PROPERTY(QUrl folder READ folder CONSTANT) ///< where a file is offered to go
    Q_PROPERTY(QUrl suggestedFile READ suggestedFile NOTIFY askedChanged)
    Q_PROPERTY(QUrl suggestedPages READ suggestedPages NOTIFY askedChanged)
    Q_PROPERTY(
        QList<QString> kindsOfWork READ kindsOfWork NOTIFY askedChanged) ///< to suppose more of; first: none
    Q_PROPERTY(
        QList<QString> suppliers READ suppliers NOTIFY askedChanged) ///< to suppose late; first: nobody
    Q_PROPERTY(int moreOf READ moreOf WRITE setMoreOf NOTIFY askedChanged)
    Q_PROPERTY(int lateSupplier READ lateSupplier WRITE setLateSupplier NOTIFY askedChanged)
    Q_PROPERTY(QString whatIf READ whatIf NOTIFY askedChanged) ///< what is supposed; empty: nothing
    Q_PROPERTY(bool canKeep READ canKeep NOTIFY shown) ///< there is something to buy

public:
    explicit OrderController(QObject* parent = nullptr);

    bool active() const { return m_active; }
    void setActive(bool active);
    QString month() const;
    bool canGoBack() const { return m_ahead > 0; }
    bool canGoOn() const;
    QStringList serviceLevels() const;
    int service() const { return m_service; }
    void setService(int service);
    bool loaded() const { return m_loaded; }
    RowsModel* lines() { return &m_lines; }
    QString total() const;
    QString summary() const;
    bool workExpected() const { return m_shown.workExpected; }
    QStringList notes() const { return m_shown.notes; }
    QUrl folder() const;
    QUrl suggestedFile() const;
    QUrl suggestedPages() const;
    bool canKeep() const { return m_shown.packs > 0; }
    QStringList kindsOfWork() const;
    QStringList suppliers() const;
    int moreOf() const { return m_moreOf; }
    void setMoreOf(int index);
    int lateSupplier() const { return m_lateSupplier; }
    void setLateSupplier(int index);
    QString whatIf() const;

    /// A month earlier (-1) or later (1).
    Q_INVOKABLE void stepMonth(int direction);
    /// Writes the list as it is shown; where it went is said.
    Q_INVOKABLE void saveCsv(const QUrl& file);
    Q_INVOKABLE void savePages(const QUrl& file);
    /// Puts what to send onto the clipboard, by supplier, as plain text.
    Q_INVOKABLE void copyText();
    /// Keeps the list as it is shown, to say later what was ordered.
    Q_INVOKABLE void keep();
    Q_INVOKABLE void supposeNothing();

Q_SIGNALS:
    void activeChanged();
    void askedChanged();
    void shown();
    void saved(const QString& path);
    void kept();

protected:
    void begin() override;

private:
    void read();
    void readSupposable();
    OrderAsked asked() const;
    Date monthStart() const;
    QUrl suggested(const QString& name) const;

    bool m_active = true;
    bool m_loaded = false;
    int m_ahead = 1; ///< months from this one
    int m_service = 2;
    int m_turn = 0;
    int m_moreOf = 0, m_lateSupplier = 0;
    OrderSupposable m_supposable;
    OrderShown m_shown;
    RowsModel m_lines;
};

} // namespace gw
