#include "app/shopsettingscontroller.h"

#include <algorithm>
#include <array>

#include <QCoreApplication>
#include <QLocale>

#include "app/words.h"
#include "scan/symbolreader.h"

namespace gw {

namespace {

// As Settings knows them, in the order the screen shows them.
constexpr std::array themeKeys { "system", "light", "dark" };
constexpr std::array unitKeys { "metric", "us" };

template <std::size_t N> int indexOf(const std::array<const char*, N>& keys, const QString& key)
{
    const auto found = std::find_if(
        keys.begin(), keys.end(), [&key](const char* known) { return key == QLatin1String(known); });
    return found == keys.end() ? 0 : static_cast<int>(found - keys.begin());
}

template <std::size_t N> QString keyAt(const std::array<const char*, N>& keys, int index)
{
    return QLatin1String(keys[static_cast<std::size_t>(std::clamp(index, 0, static_cast<int>(N) - 1))]);
}

} // namespace

ShopSettingsController::ShopSettingsController(QObject* parent)
    : Controller(parent)
{
}

void ShopSettingsController::begin()
{
    connect(services()->settings(), &Settings::themeChanged, this, &ShopSettingsController::looksChanged);
    connect(services()->settings(), &Settings::unitsChanged, this, &ShopSettingsController::looksChanged);
    connect(&services()->shop(), &ShopThread::changed, this, &ShopSettingsController::read);
    connect(&services()->shop(), &ShopThread::opened, this, [this] {
        // Another store, or another state of it: what was found before says nothing of it.
        m_verifyVerdict.clear();
        m_verifyText.clear();
        m_problems.clear();
        Q_EMIT verifyChanged();
        read();
    });
    Q_EMIT looksChanged();
    read();
}

int ShopSettingsController::theme() const
{
    return services() ? indexOf(themeKeys, services()->settings()->theme()) : 0;
}

void ShopSettingsController::setTheme(int theme)
{
    services()->settings()->setTheme(keyAt(themeKeys, theme));
}

int ShopSettingsController::unitSystem() const
{
    return services() ? indexOf(unitKeys, services()->settings()->units()) : 0;
}

void ShopSettingsController::setUnitSystem(int system)
{
    services()->settings()->setUnits(keyAt(unitKeys, system));
}

QString ShopSettingsController::version() const { return QCoreApplication::applicationVersion(); }

QString ShopSettingsController::engines() const { return QString::fromStdString(engineNames()); }

void ShopSettingsController::read()
{
    take(services()->shop().run(storeFacts), [this](StoreFacts facts) {
        m_facts = std::move(facts);
        Q_EMIT storeChanged();
    });
}

void ShopSettingsController::verify()
{
    if (m_verifying)
        return;
    m_verifying = true;
    m_problems.clear();
    Q_EMIT verifyChanged();
    // An error comes as an answer too: then it is not known whether the store is sound.
    using Answer = Result<StoreReport>;
    take(services()->shop().run(
             [](const Shop& shop) -> Result<Answer> { return Answer(shop.store().verify()); }),
        [this](const Answer& answer) {
            m_verifying = false;
            if (!answer) {
                m_verifyVerdict = QStringLiteral("not_known");
                m_verifyText = q(answer.error().sentence);
            } else if (answer->ok) {
                m_verifyVerdict = QStringLiteral("good");
                m_verifyText = tr("Everything holds: %1, and the ledger with its %2 entries.")
                                   .arg(tr("%n container(s)", nullptr, static_cast<int>(answer->containers)))
                                   .arg(answer->entries);
            } else {
                m_verifyVerdict = QStringLiteral("do_not_use");
                m_verifyText = tr("The store has faults. Restore the newest backup that is whole.");
                for (const std::string& problem : answer->problems)
                    m_problems.append(q(problem));
            }
            Q_EMIT verifyChanged();
        });
}

} // namespace gw
