#include "app/appservices.h"

#include <utility>

#include "app/whendone.h"
#include "shop/acts.h"

namespace gw {

AppServices::AppServices(Clock& clock, ShopThread& shop, Settings& settings, Scanner& scanner,
    Navigation& navigation, QObject* parent)
    : QObject(parent)
    , m_clock(clock)
    , m_shop(shop)
    , m_settings(settings)
    , m_scanner(scanner)
    , m_navigation(navigation)
{
    connect(&m_scanner, &Scanner::scanned, this, &AppServices::look);
    Camera* camera = m_scanner.camera();
    camera->setChosen(m_settings.camera());
    connect(camera, &Camera::cameraChosen, &m_settings, &Settings::setCamera);
    connect(camera, &Camera::read, this, [this] {
        if (m_settings.sound())
            m_tick.play();
    });

    const auto tellUnits = [this] {
        m_shop.change([units = m_settings.unitSystem()](Shop& open) {
            open.setUnits(units);
            return Result<void>();
        });
    };
    connect(&m_settings, &Settings::unitsChanged, this, tellUnits);
    connect(&m_shop, &ShopThread::opened, this, tellUnits);
}

void AppServices::say(const ActDone& done)
{
    Q_EMIT said(QString::fromStdString(done.said), QString::fromStdString(done.entry.text));
}

void AppServices::say(const QString& text) { Q_EMIT said(text, {}); }

void AppServices::undo(const QString& entry)
{
    const auto done = m_shop.act([id = EntryId { entry.toStdString() }](
                                     Shop& shop, ActTime time) { return gw::undo(shop, id, time.now); });
    whenDone(done, this, [this](const Result<ActDone>& undone) {
        // Undoing cannot be undone, so no key goes with it.
        say(QString::fromStdString(undone ? undone->said : undone.error().sentence));
    });
}

std::optional<ArrivalProposal> AppServices::takeProposal() { return std::exchange(m_proposal, std::nullopt); }

void AppServices::look(const QString& text, const QString& symbology)
{
    const Moment now = m_clock.now();
    const auto proposed = m_shop.run([text = text.toStdString(), symbology = symbology.toStdString(), now,
                                         today = fromQDate(m_clock.today())](const Shop& shop) {
        return proposeArrival(shop, readCode(text, symbology, today), now);
    });
    whenDone(proposed, this, [this](Result<ArrivalProposal> proposal) {
        if (!proposal) {
            say(QString::fromStdString(proposal.error().sentence));
            return;
        }
        if (proposal->kind == ArrivalProposal::Kind::OurContainer) {
            // On the walk along the shelves it is only one that was booked in before.
            if (m_stockTaking.on)
                return say(QString::fromStdString(proposal->say));
            m_navigation.openContainer(QString::fromStdString(proposal->containerLabel));
            return;
        }
        m_proposal = std::move(*proposal);
        m_navigation.goTo(Navigation::Arrivals);
        Q_EMIT proposalWaiting();
    });
}

} // namespace gw
