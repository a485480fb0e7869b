#pragma once

#include <map>
#include <optional>

#include <QImage>
#include <QStringList>
#include <QUrl>
#include <QVariant>

#include "app/arrivalform.h"
#include "app/arrivalmodel.h"
#include "app/choicemodel.h"
#include "app/controller.h"

namespace gw {

/// A class of material as a new one of it is asked about.
struct ArrivalKind {
    ClassRecord cls;
    LotDateContext lot; ///< what the dates of its lot codes are judged by
    std::vector<MaterialRecord> partners; ///< what may be its other half
};

/// What arrives: from a code, or by hand, to a container on the shelf with a label code of ours.
class ArrivalController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(State state READ state NOTIFY shown)
    Q_PROPERTY(gw::ArrivalForm* form READ form CONSTANT)
    Q_PROPERTY(gw::ArrivalModel* latest READ latest CONSTANT)
    Q_PROPERTY(gw::ChoiceModel* materials READ materials CONSTANT)
    Q_PROPERTY(gw::ChoiceModel* classes READ classes CONSTANT)
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(QString say READ say NOTIFY shown) ///< one sentence about the code
    Q_PROPERTY(
        QString codeText READ codeText NOTIFY shown) ///< the number or text that was read; empty by hand
    Q_PROPERTY(QList<QString> warnings READ warnings NOTIFY shown) ///< what is odd about the code
    Q_PROPERTY(
        bool faulty READ faulty NOTIFY shown) ///< the code contradicts itself; nothing can be had from it
    /// What else was scanned while this one is not booked in yet; empty when nothing was.
    Q_PROPERTY(QString other READ other NOTIFY shown)
    // What was booked in last
    Q_PROPERTY(QString booked READ booked NOTIFY shown) ///< what was done, as a sentence
    Q_PROPERTY(QList<QString> labels READ labels NOTIFY shown) ///< label codes to write on the bottles
    Q_PROPERTY(QString verdict READ verdict NOTIFY shown)
    Q_PROPERTY(QString reason READ reason NOTIFY shown)
    Q_PROPERTY(
        QVariant photo READ photo NOTIFY shown) ///< a QImage of the label, to be kept with the material
    Q_PROPERTY(bool hasPhoto READ hasPhoto NOTIFY shown)
    // The first stock-taking: walk along a shelf, scanning
    Q_PROPERTY(bool stockTaking READ stockTaking NOTIFY shown)
    Q_PROPERTY(int shelfAt READ shelfAt NOTIFY shown) ///< the shelf among the places; -1: not said
    Q_PROPERTY(bool asksFill READ asksFill NOTIFY shown) ///< all is known but how full it is
    Q_PROPERTY(gw::ArrivalModel* taken READ taken CONSTANT) ///< what was booked in on this walk
    Q_PROPERTY(QString takenWords READ takenWords NOTIFY shown) ///< "12 containers of 5 materials ..."
    Q_PROPERTY(QString summary READ summary NOTIFY shown) ///< of the walk that has just ended
    Q_PROPERTY(QList<QString> summed READ summed NOTIFY shown) ///< the containers it booked in

public:
    enum State {
        Waiting, ///< for a code
        Unusable, ///< a code was read that books nothing in; say has why
        Offered, ///< the form is filled as far as it goes
        Booked,
    };
    Q_ENUM(State)

    explicit ArrivalController(QObject* parent = nullptr);

    State state() const { return m_state; }
    ArrivalForm* form() { return &m_form; }
    ArrivalModel* latest() { return &m_latest; }
    ChoiceModel* materials() { return &m_materials; }
    ChoiceModel* classes() { return &m_classes; }
    bool loaded() const { return m_loaded; }
    QString say() const { return m_say; }
    QString codeText() const;
    QStringList warnings() const;
    bool faulty() const { return m_code.error.has_value(); }
    QString other() const;
    QString booked() const { return m_booked; }
    QStringList labels() const { return m_labels; }
    QString verdict() const { return m_verdict; }
    QString reason() const { return m_reason; }
    QVariant photo() const { return m_photo; }
    bool hasPhoto() const { return !m_photo.isNull(); }
    bool stockTaking() const { return services() && services()->stockTaking().on; }
    int shelfAt() const;
    bool asksFill() const
    {
        return stockTaking() && m_state == Offered && !m_form.isNew() && m_form.complete();
    }
    ArrivalModel* taken() { return &m_taken; }
    QString takenWords() const;
    QString summary() const { return m_summary; }
    QStringList summed() const { return m_summed; }

    /// Begins an arrival without a code; what it is has to be chosen.
    Q_INVOKABLE void byHand();
    Q_INVOKABLE void chooseMaterial(const QString& key);
    Q_INVOKABLE void chooseClass(const QString& key);
    Q_INVOKABLE void chooseNew(const QString& name) { m_form.chooseNew(name); }
    Q_INVOKABLE void bookIn();
    /// Leaves this arrival; goes on to what else was scanned, if anything was.
    Q_INVOKABLE void putAside();
    Q_INVOKABLE void takePhoto();
    Q_INVOKABLE void readPhoto(const QUrl& file);
    Q_INVOKABLE void dropPhoto();
    Q_INVOKABLE void beginStockTaking();
    Q_INVOKABLE void endStockTaking();
    Q_INVOKABLE void clearSummary();
    /// The shelf that is walked along now, by its place among the form's places.
    Q_INVOKABLE void setShelf(int at);
    /// Books in what is offered, so much of it left: 1 for a full one.
    Q_INVOKABLE void bookInFilled(double share);
    Q_INVOKABLE void takeOther();
    Q_INVOKABLE void leaveOther();

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();
    void takeWaiting();
    void receive(ArrivalProposal proposal);
    void show(const ArrivalProposal& proposal);
    void setState(State state);
    void tellBooked(const ActDone& done);
    std::optional<LabelPhoto> photoToKeep() const;
    void noteTaken(const ActDone& done);
    void countTaken(const std::vector<ArrivalRow>& rows);
    void standOnShelf(ArrivalDraft& draft) const;

    ArrivalForm m_form;
    ArrivalModel m_latest, m_taken;
    struct TakenCount {
        int containers = 0, materials = 0;
    } m_takenCount;
    QString m_summary;
    QStringList m_summed;
    QImage m_photo;
    double m_leftShare = 1;
    ChoiceModel m_materials, m_classes;
    std::map<QString, ArrivalKind> m_kinds; ///< by class
    bool m_loaded = false;
    State m_state = Waiting;
    Code m_code;
    QString m_say;
    std::optional<ArrivalProposal> m_other;
    QString m_bookedEntry, m_booked, m_verdict, m_reason;
    QStringList m_labels;
};

} // namespace gw
