#pragma once

#include <atomic>
#include <memory>

#include <QTimer>
#include <QUrl>

#include "app/controller.h"
#include "app/rowsmodel.h"
#include "shop/readingsimport.h"

namespace gw {

inline const QByteArrayList readingsDoubtRoles { "question", "choices", "taken" };
inline const QByteArrayList setAsideRoles { "line", "text", "why" };

/// A logger's file on its way into a place: what was found in it, what has to be asked, how far it is, and
/// what was kept of it.
class ReadingsImportController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString place MEMBER m_place NOTIFY placeChanged) ///< id
    Q_PROPERTY(Stage stage READ stage NOTIFY stageChanged)
    Q_PROPERTY(QString fileName READ fileName NOTIFY looked)
    Q_PROPERTY(QList<QString> found READ found NOTIFY looked) ///< what was found in it, in plain words
    Q_PROPERTY(gw::RowsModel* doubts READ doubts CONSTANT) ///< readingsDoubtRoles; taken -1: to be answered
    Q_PROPERTY(bool answered READ answered NOTIFY looked) ///< at least one doubt was
    Q_PROPERTY(bool canStart READ canStart NOTIFY looked)
    Q_PROPERTY(double progress READ progress NOTIFY progressed) ///< 0 to 1
    Q_PROPERTY(QString report READ report NOTIFY stageChanged)
    Q_PROPERTY(QList<QString> reportNames READ reportNames NOTIFY stageChanged)
    Q_PROPERTY(QList<QString> reportValues READ reportValues NOTIFY stageChanged)
    Q_PROPERTY(gw::RowsModel* setAside READ setAside CONSTANT) ///< setAsideRoles; the first 200
    Q_PROPERTY(int notListed READ notListed NOTIFY stageChanged) ///< set aside besides those

public:
    enum Stage { Choosing, Looked, Running, Done };
    Q_ENUM(Stage)

    explicit ReadingsImportController(QObject* parent = nullptr);

    Stage stage() const { return m_stage; }
    QString fileName() const { return QString::fromStdString(m_look.name); }
    QStringList found() const { return m_found; }
    RowsModel* doubts() { return &m_doubts; }
    bool answered() const { return m_answered; }
    bool canStart() const { return m_stage == Looked && !unanswered(m_look.doubts, m_look.name); }
    double progress() const { return m_progress; }
    QString report() const { return QString::fromStdString(m_import.said); }
    QStringList reportNames() const;
    QStringList reportValues() const;
    RowsModel* setAside() { return &m_setAside; }
    int notListed() const { return static_cast<int>(m_import.setAside) - m_setAside.count(); }

    Q_INVOKABLE void look(const QUrl& file);
    Q_INVOKABLE void answer(int doubt, int choice);
    /// Takes back every answer.
    Q_INVOKABLE void askAgain();
    Q_INVOKABLE void start();
    Q_INVOKABLE void cancel();
    /// Back to choosing a file.
    Q_INVOKABLE void reset();

Q_SIGNALS:
    void placeChanged();
    void stageChanged();
    void looked();
    void progressed();

protected:
    void begin() override { }

private:
    /// What the shop's thread and this one both touch while a file is read.
    struct UnderWay {
        std::atomic<std::int64_t> done { 0 }, total { 0 };
        std::atomic<bool> cancelled { false };
    };

    void lookAgain();
    void show(ReadingsLook look);
    void report(ReadingsImport import);
    void setStage(Stage stage);

    QString m_place, m_path;
    Stage m_stage = Choosing;
    ReadingsChoices m_choices;
    bool m_answered = false;
    ReadingsLook m_look;
    QStringList m_found;
    ReadingsImport m_import;
    std::shared_ptr<UnderWay> m_running;
    QTimer m_poll;
    double m_progress = 0;
    RowsModel m_doubts, m_setAside;
};

} // namespace gw
