#pragma once

#include <QObject>
#include <QStringList>
#include <QtQmlIntegration/qqmlintegration.h>

#include "measure/amount.h"
#include "shop/shop.h"

namespace gw {

/// What a person reads off a label about a material: its lives, where to keep it, its hazards, and what it is
/// mixed with. All of it may be left out. GUI thread.
class LabelSays : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the controllers")
    Q_PROPERTY(QString sealedMonths MEMBER m_sealedMonths NOTIFY changed)
    Q_PROPERTY(QString openedMonths MEMBER m_openedMonths NOTIFY changed)
    Q_PROPERTY(QString lifeError READ lifeError NOTIFY changed)
    Q_PROPERTY(QString keepLow MEMBER m_keepLow NOTIFY changed)
    Q_PROPERTY(QString keepHigh MEMBER m_keepHigh NOTIFY changed)
    Q_PROPERTY(QString keepError READ keepError NOTIFY changed)
    Q_PROPERTY(QString degreeUnit READ degreeUnit NOTIFY changed)
    // Hazards, as the label shows them
    Q_PROPERTY(QList<QString> signs READ signs CONSTANT) ///< "GHS01" to "GHS09"
    Q_PROPERTY(QList<QString> signNames READ signNames CONSTANT) ///< what each shows
    Q_PROPERTY(QList<QString> taken READ taken NOTIFY changed) ///< the signs that are on the label
    Q_PROPERTY(bool noSigns READ noSigns WRITE setNoSigns NOTIFY changed) ///< somebody looked: none is
    Q_PROPERTY(QString usualSigns READ usualSigns NOTIFY changed) ///< of its kind of stuff, in words
    Q_PROPERTY(int signalWord READ signalWord WRITE setSignalWord NOTIFY changed) ///< see SignalWord
    // What it is mixed with
    Q_PROPERTY(
        QList<QString> partners READ partners NOTIFY changed) ///< the last: not known; empty: none to choose
    Q_PROPERTY(int partnerAt READ partnerAt WRITE setPartnerAt NOTIFY changed) ///< -1: not said
    Q_PROPERTY(QString partnerAsked READ partnerAsked NOTIFY changed) ///< "Which hardener goes with it?"

public:
    enum SignalWord { NotRead, NoWord, Warning, Danger };
    Q_ENUM(SignalWord)

    using QObject::QObject;

    void setUnits(UnitSystem units);
    /// Nothing said yet.
    void clear();
    /// What was said of a material before.
    void load(const MaterialRecord& material);
    /// The kind of stuff it is: what is usual for it, and which materials may be its other half.
    void setKind(const ClassRecord* cls, const std::vector<MaterialRecord>& partners);

    /// As a material's own figures. Errors: BadInput; from then on each field says what is wrong with it.
    Result<std::vector<Figure>> figures();
    std::optional<MaterialId> partner() const;

    QString lifeError() const;
    QString keepError() const;
    QString degreeUnit() const;
    QStringList signs() const;
    QStringList signNames() const;
    QStringList taken() const { return m_taken; }
    bool noSigns() const { return m_noSigns; }
    void setNoSigns(bool none);
    QString usualSigns() const { return m_usualSigns; }
    int signalWord() const { return m_signalWord; }
    void setSignalWord(int word);
    QStringList partners() const;
    int partnerAt() const;
    void setPartnerAt(int at);
    QString partnerAsked() const { return m_partnerAsked; }

    /// Puts a sign on the label or takes it off again.
    Q_INVOKABLE void toggle(const QString& sign);

Q_SIGNALS:
    void changed();

private:
    UnitSystem m_units = UnitSystem::Metric;
    QString m_sealedMonths, m_openedMonths, m_keepLow, m_keepHigh;
    QStringList m_taken;
    bool m_noSigns = false;
    QString m_usualSigns, m_partnerAsked;
    int m_signalWord = NotRead;
    std::vector<MaterialRecord> m_partners;
    std::optional<MaterialId> m_partner;
    bool m_partnerNotKnown = false; ///< a person said so
    bool m_tried = false;
};

} // namespace gw
