#pragma once

#include "app/controller.h"
#include "shop/climate.h"

namespace gw {

/// The draft of what a place is taken to be where nobody watched: a range for the year and for each quarter,
/// and the place it follows. Whole degrees of the person's unit on the steppers, degrees Celsius inside.
class PlaceClimateController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QList<QString> spans READ spans CONSTANT) ///< the year, then the quarters
    Q_PROPERTY(QList<bool> known READ known NOTIFY draftChanged) ///< for each span
    Q_PROPERTY(QList<int> lows READ lows NOTIFY draftChanged)
    Q_PROPERTY(QList<int> highs READ highs NOTIFY draftChanged)
    Q_PROPERTY(int coldest READ coldest NOTIFY draftChanged)
    Q_PROPERTY(int warmest READ warmest NOTIFY draftChanged)
    Q_PROPERTY(QString unit READ unit NOTIFY draftChanged)
    Q_PROPERTY(QList<QString> places READ places NOTIFY draftChanged) ///< "None", then those it may follow
    Q_PROPERTY(int follows READ follows WRITE setFollows NOTIFY draftChanged) ///< of places
    Q_PROPERTY(int warmer READ warmer WRITE setWarmer NOTIFY draftChanged)
    Q_PROPERTY(int damped READ damped WRITE setDamped NOTIFY draftChanged) ///< percent

public:
    explicit PlaceClimateController(QObject* parent = nullptr);

    QStringList spans() const;
    QList<bool> known() const;
    QList<int> lows() const;
    QList<int> highs() const;
    int coldest() const { return shown(Celsius { -40 }); }
    int warmest() const { return shown(Celsius { 60 }); }
    QString unit() const;
    QStringList places() const;
    int follows() const;
    void setFollows(int index);
    int warmer() const;
    void setWarmer(int degrees);
    int damped() const;
    void setDamped(int percent);

    Q_INVOKABLE void draftOf(const QString& place);
    Q_INVOKABLE void setKnown(int span, bool known);
    Q_INVOKABLE void setLow(int span, int degrees);
    Q_INVOKABLE void setHigh(int span, int degrees);
    Q_INVOKABLE void save();

Q_SIGNALS:
    void draftChanged();
    void ready(); ///< the draft is there
    void saved();

protected:
    void begin() override { }

private:
    std::optional<Range<Celsius>>& range(int span);
    const std::optional<Range<Celsius>>& range(int span) const;
    UnitSystem units() const;
    int shown(Celsius degrees) const;
    Celsius kept(int degrees) const;

    PlaceRecord m_draft;
    std::vector<PlaceRecord> m_others;
};

} // namespace gw
