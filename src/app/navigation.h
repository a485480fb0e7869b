#pragma once

#include <QList>
#include <QObject>
#include <QString>
#include <QtQmlIntegration/qqmlintegration.h>

namespace gw {

/// Where the person is: one of the six destinations, and over it the pages of containers, places and
/// of what is mixed that were opened one from another.
class Navigation : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made once, by the program")
    Q_PROPERTY(int destination READ destination NOTIFY moved)
    /// Id or label code of the container whose page is open; empty when none is.
    Q_PROPERTY(QString container READ container NOTIFY moved)
    /// Id of the place whose page is open; empty when none is.
    Q_PROPERTY(QString place READ place NOTIFY moved)
    /// The page of what is mixed is open.
    Q_PROPERTY(bool pots READ pots NOTIFY moved)

public:
    enum Destination { Today, Shelf, Arrivals, GlueUp, Order, Shop };
    Q_ENUM(Destination)

    explicit Navigation(QObject* parent = nullptr);

    int destination() const { return m_destination; }
    QString container() const { return top(Page::Container); }
    QString place() const { return top(Page::Place); }
    bool pots() const { return !m_pages.isEmpty() && m_pages.last().kind == Page::Pots; }

    /// Shows a destination; the pages over it are left.
    Q_INVOKABLE void goTo(int destination);
    Q_INVOKABLE void openContainer(const QString& idOrLabel);
    Q_INVOKABLE void openPlace(const QString& id);
    Q_INVOKABLE void openPots();
    /// One page back; on a destination itself nothing.
    Q_INVOKABLE void back();
    /// Asks for the camera and a line to type a code into, over the present screen.
    Q_INVOKABLE void scan();
    /// Shows the shelf narrowed to a verdict (its word), or to everything when empty.
    Q_INVOKABLE void showShelf(const QString& verdict);

Q_SIGNALS:
    void moved();
    void scanWanted();
    void shelfWanted(const QString& verdict);

private:
    struct Page {
        enum Kind { Container, Place, Pots } kind = Container;
        QString key;
    };
    QString top(Page::Kind kind) const
    {
        return m_pages.isEmpty() || m_pages.last().kind != kind ? QString() : m_pages.last().key;
    }

    int m_destination = Today;
    QList<Page> m_pages;
};

} // namespace gw
