#include "app/orderratescontroller.h"

#include <algorithm>
#include <cmath>

#include "app/words.h"
#include "measure/number.h"
#include "shop/setup.h"

namespace gw {

namespace {

constexpr double step = 0.5; // some kinds of work come every other month
constexpr double most = 10000; // as the shop takes it
constexpr qsizetype rateAt = 2; // in orderRateRoles

} // namespace

OrderRatesController::OrderRatesController(QObject* parent)
    : Controller(parent)
    , m_rates(orderRateRoles)
{
    m_rest.setSingleShot(true);
    m_rest.setInterval(std::chrono::milliseconds(500));
    connect(&m_rest, &QTimer::timeout, this, &OrderRatesController::keep);
}

void OrderRatesController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &OrderRatesController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &OrderRatesController::read);
    read();
}

void OrderRatesController::read()
{
    take(services()->shop().run([](const Shop& shop) { return orderRates(shop); }),
        [this](std::vector<ShownRow> rows) {
            m_kept = std::move(rows);
            show();
        });
}

void OrderRatesController::show()
{
    std::vector<ShownRow> rows = m_kept;
    for (ShownRow& row : rows) {
        if (const auto wanted = m_wanted.constFind(row.key); wanted != m_wanted.cend())
            row.values[rateAt] = numberText(*wanted, 2);
    }
    m_rates.setRows(std::move(rows));
}

void OrderRatesController::step(const QString& jobType, int direction)
{
    const auto now = leadingNumber(m_rates.value(jobType, "rate").toString().toStdString());
    if (!now)
        return;
    const double steps = now->value / gw::step;
    const double next = direction > 0 ? std::floor(steps) + 1 : std::ceil(steps) - 1;
    want(jobType, std::clamp(next * gw::step, 0.0, most));
}

void OrderRatesController::type(const QString& jobType, const QString& rate)
{
    const auto typed = leadingNumber(rate.toStdString());
    if (!typed) {
        setError(typed.error());
        return;
    }
    want(jobType, typed->value);
}

void OrderRatesController::want(const QString& jobType, double perMonth)
{
    setError(QString());
    m_wanted.insert(jobType, perMonth);
    show();
    m_rest.start();
}

void OrderRatesController::keep()
{
    m_rest.stop();
    const Moment now = services()->clock().now();
    for (auto wanted = m_wanted.cbegin(); wanted != m_wanted.cend(); ++wanted) {
        // An error comes as an answer too: what was refused must not stay shown.
        using Answer = Result<JobTypeRecord>;
        take(services()->shop().change(
                 [key = wanted.key().toStdString(), rate = wanted.value(), now](
                     Shop& shop) -> Result<Answer> { return Answer(setJobRate(shop, key, rate, now)); }),
            [this, key = wanted.key(), rate = wanted.value()](const Answer& answer) {
                if (m_wanted.value(key, rate) == rate)
                    m_wanted.remove(key);
                if (!answer)
                    setError(answer.error());
                read();
            });
    }
}

} // namespace gw
