#pragma once

#include <QStringList>

#include "app/controller.h"

namespace gw {

/// The first start of an empty store: which places there are and how warm they get, or the demonstration
/// shop.
class FirstStartController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(int count READ count NOTIFY placesChanged)
    Q_PROPERTY(QList<QString> names READ names NOTIFY placesChanged)
    Q_PROPERTY(QList<int> lows READ lows NOTIFY placesChanged) ///< coldest, in degreeUnit
    Q_PROPERTY(QList<int> highs READ highs NOTIFY placesChanged)
    Q_PROPERTY(QList<bool> chosen READ chosen NOTIFY placesChanged)
    Q_PROPERTY(QString degreeUnit READ degreeUnit CONSTANT)
    Q_PROPERTY(bool canStart READ canStart NOTIFY placesChanged)

public:
    explicit FirstStartController(QObject* parent = nullptr);

    int count() const { return static_cast<int>(m_places.size()); }
    QStringList names() const;
    QList<int> lows() const;
    QList<int> highs() const;
    QList<bool> chosen() const;
    QString degreeUnit() const { return QStringLiteral("°C"); }
    bool canStart() const;

    Q_INVOKABLE void setName(int place, const QString& name);
    Q_INVOKABLE void setLow(int place, int degrees);
    Q_INVOKABLE void setHigh(int place, int degrees);
    Q_INVOKABLE void setChosen(int place, bool chosen);
    Q_INVOKABLE void addPlace();

    /// Keeps the chosen places, and the shop opens.
    Q_INVOKABLE void startEmpty();
    /// Fills the store with the invented shop, and it opens.
    Q_INVOKABLE void lookRound();

Q_SIGNALS:
    void placesChanged();

protected:
    void begin() override { }

private:
    struct Place {
        QString name;
        int low;
        int high;
        bool chosen;
    };
    Place* at(int place);

    std::vector<Place> m_places;
};

} // namespace gw
