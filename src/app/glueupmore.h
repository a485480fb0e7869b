#pragma once

#include <vector>

#include <QList>
#include <QObject>
#include <QString>
#include <QtQmlIntegration/qqmlintegration.h>

#include "app/glueupcondition.h"
#include "shop/gluechoice.h"
#include "shop/work.h"

namespace gw {

/// What else a person may say of a glue-up: the joint, what is left in it, the piece, where its wood stood
/// and where it will stand. Every choice begins with "Not said".
class GlueUpMore : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by GlueUpController")
    Q_PROPERTY(QList<QString> joints READ joints NOTIFY changed)
    Q_PROPERTY(QList<QString> residues READ residues NOTIFY changed)
    Q_PROPERTY(QList<QString> places READ places NOTIFY changed)
    Q_PROPERTY(int joint READ joint WRITE setJoint NOTIFY changed)
    Q_PROPERTY(int residue READ residue WRITE setResidue NOTIFY changed)
    Q_PROPERTY(int stood READ stood WRITE setStood NOTIFY changed)
    Q_PROPERTY(int period READ period WRITE setPeriod NOTIFY changed) ///< 1 an old piece, 2 a modern one
    Q_PROPERTY(int aired READ aired WRITE setAired NOTIFY changed) ///< 1 yes, 2 no
    Q_PROPERTY(int place READ place WRITE setPlace NOTIFY changed) ///< 1 dry, 2 damp, 3 outdoors, 4 hot
    Q_PROPERTY(int load READ load WRITE setLoad NOTIFY changed) ///< 1 light, 2 lasting, 3 knocks
    Q_PROPERTY(gw::GlueUpCondition* surfaceAge READ surfaceAge CONSTANT)
    Q_PROPERTY(int count READ count NOTIFY changed) ///< how many of these are said

public:
    /// The choices there are, read on the shop's thread.
    struct Choices {
        std::vector<NamedKey> joints, residues;
        std::vector<std::string> places;
    };
    static Result<Choices> read(const Shop& shop);

    explicit GlueUpMore(QObject* parent = nullptr);

    QList<QString> joints() const;
    QList<QString> residues() const;
    QList<QString> places() const;
    int joint() const { return m_joint; }
    void setJoint(int joint) { take(m_joint, joint); }
    int residue() const { return m_residue; }
    void setResidue(int residue) { take(m_residue, residue); }
    int stood() const { return m_stood; }
    void setStood(int stood) { take(m_stood, stood); }
    int period() const { return m_period; }
    void setPeriod(int period) { take(m_period, period); }
    int aired() const { return m_aired; }
    void setAired(int aired) { take(m_aired, aired); }
    int place() const { return m_place; }
    void setPlace(int place) { take(m_place, place); }
    int load() const { return m_load; }
    void setLoad(int load) { take(m_load, load); }
    GlueUpCondition* surfaceAge() { return &m_surfaceAge; }
    int count() const;

    void setChoices(Choices choices);
    void addTo(Conditions& conditions) const;
    GlueAsked asked(std::optional<double> gapMm) const;

    Q_INVOKABLE void forget(); ///< all of it

Q_SIGNALS:
    void changed();

private:
    void take(int& into, int value);

    Choices m_choices;
    int m_joint = 0, m_residue = 0, m_stood = 0, m_period = 0, m_aired = 0, m_place = 0, m_load = 0;
    GlueUpCondition m_surfaceAge;
};

} // namespace gw
