#include "app/todaycontroller.h"

#include <QLocale>

#include "app/words.h"

namespace gw {

namespace {

constexpr std::array shownVerdicts { Verdict::Good, Verdict::TestFirst, Verdict::NotKnown,
    Verdict::DoNotUse };

} // namespace

TodayController::TodayController(QObject* parent)
    : Controller(parent)
    , m_counts(shownVerdicts.size(), 0)
{
}

void TodayController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &TodayController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &TodayController::read);
    connect(&services()->clock(), &Clock::minutePassed, this, &TodayController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &TodayController::read);
    read();
}

void TodayController::read()
{
    const Moment now = services()->clock().now();
    take(services()->shop().run([now](const Shop& shop) { return today(shop, now); }),
        [this](const Today& today) { show(today); });
}

void TodayController::show(const Today& today)
{
    //: The day over the list; see QLocale::toString for the letters.
    m_day = QLocale().toString(localDay(today.asOf), tr("dddd, d MMMM"));
    m_containers = today.containers;
    for (std::size_t i = 0; i < shownVerdicts.size(); ++i) {
        const auto count = today.counts.find(shownVerdicts[i]);
        m_counts[static_cast<qsizetype>(i)] = count == today.counts.end() ? 0 : count->second;
    }
    std::vector<TodayRow> rows;
    rows.reserve(today.items.size());
    for (const TodayItem& item : today.items) {
        const bool bringIn = item.kind == TodayItem::Kind::BringIn;
        const QString container = q(item.container.text);
        rows.push_back({ bringIn ? container + QStringLiteral("/tonight") : container, container,
            q(item.title), q(item.text), q(item.label), verdictKey(item.verdict),
            bringIn ? QStringLiteral("frost") : QString() });
    }
    m_model.setRows(std::move(rows));
    m_loaded = true;
    setError(QString());
    Q_EMIT shown();
}

QStringList TodayController::verdicts() const
{
    QStringList words;
    for (Verdict verdict : shownVerdicts)
        words.append(verdictKey(verdict));
    return words;
}

} // namespace gw
