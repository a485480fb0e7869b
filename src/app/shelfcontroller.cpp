#include "app/shelfcontroller.h"

#include <algorithm>

#include "app/words.h"

namespace gw {

ShelfController::ShelfController(QObject* parent)
    : Controller(parent)
{
    show();
}

void ShelfController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &ShelfController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &ShelfController::read);
    connect(&services()->clock(), &Clock::minutePassed, this, &ShelfController::read);
    connect(services()->navigation(), &Navigation::shelfWanted, this, &ShelfController::setVerdict);
    read();
}

void ShelfController::read()
{
    const Moment now = services()->clock().now();
    take(services()->shop().run([now](const Shop& shop) { return shelfRows(shop, now); }),
        [this](std::vector<ShelfRow> rows) {
            m_all = std::move(rows);
            m_loaded = true;
            setError(QString());
            show();
        });
}

void ShelfController::show()
{
    QMap<QString, QString> named; // by name, so that they stand in that order
    for (const ShelfRow& row : m_all)
        named.insert(row.place.isEmpty() ? tr("No place") : row.place, row.placeId);
    m_placeNames = QStringList { tr("All places") } + named.keys();
    m_placeIds = QStringList { QString() } + named.values();
    m_placeCounts = QList<int>(m_placeIds.size(), 0);
    m_verdictCounts = QList<int>(verdicts().size(), 0);
    const int placeAt = place();

    const QString sought = m_text.trimmed().toLower();
    std::vector<ShelfRow> rows;
    for (const ShelfRow& row : m_all) {
        if (!sought.isEmpty() && !row.sought.contains(sought))
            continue;
        const bool rightPlace = placeAt == 0 || row.placeId == m_placeId;
        const bool rightVerdict = m_verdict.isEmpty() || row.verdict == m_verdict;
        if (rightPlace)
            ++m_verdictCounts[verdicts().indexOf(row.verdict)];
        if (rightVerdict) {
            ++m_placeCounts[0];
            ++m_placeCounts[std::max<qsizetype>(1, m_placeIds.indexOf(row.placeId, 1))];
        }
        if (rightPlace && rightVerdict)
            rows.push_back(row);
    }
    m_model.setRows(std::move(rows));
    Q_EMIT shown();
}

QString ShelfController::summary() const
{
    const auto wanting = std::count_if(m_all.begin(), m_all.end(),
        [](const ShelfRow& row) { return row.verdict != verdictKey(Verdict::Good); });
    QString containers = tr("%n container(s)", nullptr, total());
    if (wanting == 0)
        return containers;
    return tr("%1, %2").arg(containers, tr("%n wanting attention", nullptr, static_cast<int>(wanting)));
}

QStringList ShelfController::verdicts() const
{
    return { verdictKey(Verdict::DoNotUse), verdictKey(Verdict::NotKnown), verdictKey(Verdict::TestFirst),
        verdictKey(Verdict::Good) };
}

void ShelfController::setText(const QString& text)
{
    if (text == m_text)
        return;
    m_text = text;
    show();
}

void ShelfController::setVerdict(const QString& verdict)
{
    if (verdict == m_verdict)
        return;
    m_verdict = verdict;
    show();
}

QStringList ShelfController::placeNotes() const
{
    QStringList notes;
    for (int count : m_placeCounts)
        notes.append(tr("%n container(s)", nullptr, count));
    return notes;
}

int ShelfController::place() const
{
    return static_cast<int>(std::max<qsizetype>(0, m_placeIds.indexOf(m_placeId, 1)));
}

void ShelfController::setPlace(int place)
{
    const QString id = place > 0 ? m_placeIds.value(place) : QString();
    if (place == this->place())
        return;
    m_placeId = id;
    show();
}

bool ShelfController::narrowed() const
{
    return place() != 0 || !m_verdict.isEmpty() || !m_text.trimmed().isEmpty();
}

void ShelfController::showAll()
{
    m_text.clear();
    m_verdict.clear();
    m_placeId.clear();
    show();
}

} // namespace gw
