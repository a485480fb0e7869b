#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"
#include "app/timechart.h"
#include "shop/lifestory.h"

namespace gw {

inline const QByteArrayList lifeMarkRoles { "at", "until", "icon", "text", "when", "verdict" };

/// One container's life as a picture, ready to draw; made on the shop's thread.
struct LifePictureShown {
    QStringList clocks; ///< names of the life clocks there are; the one that decides first
    std::vector<ChartDrawn> lives; ///< one for each
    QStringList missing; ///< for each, why it is not whole; or empty
    ChartDrawn air;
    QString place, placeName;
    QString airNote; ///< "Watched for 212 of 430 days; elsewhere the range assumed of the place."
    bool anyWatched = false;
    std::vector<ShownRow> marks;
};
LifePictureShown lifePictureShown(const LifeStory& story, UnitSystem units);

/// How one container's life was used up against time, and what its places and people did to it.
class LifePictureController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString container READ container WRITE setContainer NOTIFY containerChanged REQUIRED)
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(QList<QString> clocks READ clocks NOTIFY shown)
    Q_PROPERTY(int clock READ clock WRITE setClock NOTIFY shown) ///< which of clocks is drawn; -1: none
    Q_PROPERTY(QString missing READ missing NOTIFY shown)
    Q_PROPERTY(gw::TimeChart* life READ life CONSTANT) ///< in percent of the life
    Q_PROPERTY(gw::TimeChart* air READ air CONSTANT)
    Q_PROPERTY(gw::RowsModel* marks READ marks CONSTANT) ///< lifeMarkRoles; in time order
    Q_PROPERTY(QString place READ place NOTIFY shown) ///< id of where it stands; empty: not known
    Q_PROPERTY(QString placeName READ placeName NOTIFY shown)
    Q_PROPERTY(QString airNote READ airNote NOTIFY shown)
    Q_PROPERTY(bool anyWatched READ anyWatched NOTIFY shown)

public:
    explicit LifePictureController(QObject* parent = nullptr);

    QString container() const { return m_container; }
    void setContainer(const QString& idOrLabel);
    bool loaded() const { return m_loaded; }
    QStringList clocks() const { return m_shown.clocks; }
    int clock() const { return m_clock; }
    void setClock(int clock);
    QString missing() const { return m_shown.missing.value(m_clock); }
    TimeChart* life() { return &m_life; }
    TimeChart* air() { return &m_air; }
    RowsModel* marks() { return &m_marks; }
    QString place() const { return m_shown.place; }
    QString placeName() const { return m_shown.placeName; }
    QString airNote() const { return m_shown.airNote; }
    bool anyWatched() const { return m_shown.anyWatched; }

Q_SIGNALS:
    void containerChanged();
    void shown();

protected:
    void begin() override;

private:
    void read();
    void show(LifePictureShown picture);

    QString m_container;
    LifePictureShown m_shown;
    TimeChart m_life, m_air;
    RowsModel m_marks;
    int m_clock = -1;
    bool m_loaded = false;
};

} // namespace gw
