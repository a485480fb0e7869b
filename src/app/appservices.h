#pragma once

#include <optional>

#include <QObject>
#include <QString>

#include "app/clock.h"
#include "app/navigation.h"
#include "app/scanner.h"
#include "app/settings.h"
#include "app/shopthread.h"
#include "app/ticksound.h"
#include "shop/arrival.h"

namespace gw {

/// What the controllers share. main() makes the parts on its stack and hands them over here; tests make their
/// own with a seeded store. Screens reach it as the singleton AppServices (qmlsingletons.h). GUI thread.
class AppServices : public QObject {
    Q_OBJECT
    Q_PROPERTY(gw::Settings* settings READ settings CONSTANT)
    Q_PROPERTY(gw::Navigation* navigation READ navigation CONSTANT)
    Q_PROPERTY(gw::Scanner* scanner READ scanner CONSTANT)

public:
    AppServices(Clock& clock, ShopThread& shop, Settings& settings, Scanner& scanner, Navigation& navigation,
        QObject* parent = nullptr);

    Clock& clock() const { return m_clock; }
    ShopThread& shop() const { return m_shop; }
    Settings* settings() const { return &m_settings; }
    Scanner* scanner() const { return &m_scanner; }
    Navigation* navigation() const { return &m_navigation; }

    /// Says what an act did, with a way to take it back; what cannot be taken back has no done.entry.
    void say(const ActDone& done);
    /// Says anything else.
    void say(const QString& text);
    /// Takes back the act an entry belongs to, and says so.
    Q_INVOKABLE void undo(const QString& entry);

    /// The first walk along the shelves; it goes on while one looks at other screens.
    struct StockTaking {
        bool on = false;
        QString place; ///< where the shelf stands that is being walked along; empty: asked each time
        QStringList containers; ///< booked in so far
    };
    StockTaking& stockTaking() { return m_stockTaking; }

    /// What the last scan wants to book in, until the arrivals screen takes it.
    std::optional<ArrivalProposal> takeProposal();

Q_SIGNALS:
    /// For the bar at the foot of the window. undoKey is empty when there is nothing to take back.
    void said(const QString& text, const QString& undoKey);
    /// A scan that is no container of ours waits in takeProposal().
    void proposalWaiting();

private:
    void look(const QString& text, const QString& symbology);

    Clock& m_clock;
    ShopThread& m_shop;
    Settings& m_settings;
    Scanner& m_scanner;
    Navigation& m_navigation;
    StockTaking m_stockTaking;
    TickSound m_tick;
    std::optional<ArrivalProposal> m_proposal;
};

} // namespace gw
