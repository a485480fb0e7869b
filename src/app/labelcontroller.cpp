#include "app/labelcontroller.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QDir>
#include <QStandardPaths>

#include "app/offthread.h"
#include "app/words.h"
#include "exchange/labelprinter.h"
#include "shop/containerlabel.h"

namespace gw {

namespace {

struct Size {
    int width, height; // mm
};
/// Small vials, bottles, jars, tins; the most usual sizes of labels on rolls and sheets (common practice).
constexpr std::array labelSizes { Size { 25, 13 }, Size { 50, 25 }, Size { 70, 37 }, Size { 100, 60 } };
constexpr std::array printerDots { 203, 300 };
constexpr int mostColumns = 20, mostRows = 60; // as sheets have them

QSizeF sheetSize(LabelController::Page page)
{
    return page == LabelController::Letter ? QSizeF(215.9, 279.4) : QSizeF(210, 297);
}

QString sizeText(const Size& size)
{
    return LabelController::tr("%1 \u00D7 %2 mm").arg(size.width).arg(size.height);
}

} // namespace

void LabelController::begin()
{
    const Settings& kept = *services()->settings();
    const auto number = [&kept](const char* habit, int otherwise, int low, int high) {
        bool known = false;
        const int value = kept.labelHabit(QLatin1String(habit)).toInt(&known);
        return known ? std::clamp(value, low, high) : otherwise;
    };
    m_size = number("size", 1, 0, static_cast<int>(labelSizes.size()));
    m_ownSize = kept.labelHabit(QStringLiteral("own"));
    m_dots = number("dots", 0, 0, 1);
    m_page = static_cast<Page>(number("page", Single, Single, Letter));
    m_columns = number("columns", 3, 1, mostColumns);
    m_rows = number("rows", 8, 1, mostRows);
    m_first = number("first", 1, 1, m_columns * m_rows);
    connect(&services()->shop(), &ShopThread::changed, this, [this] {
        if (!m_labels.empty())
            readLabels();
    });
    Q_EMIT asked();
}

void LabelController::remember()
{
    Settings& kept = *services()->settings();
    kept.setLabelHabit(QStringLiteral("size"), QString::number(m_size));
    kept.setLabelHabit(QStringLiteral("own"), m_ownSize);
    kept.setLabelHabit(QStringLiteral("dots"), QString::number(m_dots));
    kept.setLabelHabit(QStringLiteral("page"), QString::number(m_page));
    kept.setLabelHabit(QStringLiteral("columns"), QString::number(m_columns));
    kept.setLabelHabit(QStringLiteral("rows"), QString::number(m_rows));
    kept.setLabelHabit(QStringLiteral("first"), QString::number(m_first));
    if (m_printer >= 0)
        kept.setLabelHabit(QStringLiteral("printer"), m_printers[m_printer]);
}

QStringList LabelController::places() const
{
    QStringList names { tr("Everywhere") };
    for (const PlaceName& place : m_allPlaces)
        names.append(place.name);
    return names;
}

QStringList LabelController::sizes() const
{
    QStringList texts;
    for (const Size& size : labelSizes)
        texts.append(sizeText(size));
    texts.append(tr("Another"));
    return texts;
}

QUrl LabelController::folder() const
{
    return QUrl::fromLocalFile(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
}

QUrl LabelController::suggestedFile() const
{
    const QDir documents(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    const QString name
        = m_labels.size() == 1 ? tr("label-%1.pdf").arg(q(m_labels.front().code)) : tr("labels.pdf");
    return QUrl::fromLocalFile(documents.filePath(name));
}

QString LabelController::previewWords() const
{
    if (m_labels.empty())
        return {};
    const Label& label = m_labels.front();
    QStringList words { q(label.code), q(label.title) };
    for (const std::string& line : label.lines)
        words.append(q(line));
    if (!label.signalWord.empty())
        words.append(q(label.signalWord));
    if (!label.hazardLine.empty())
        words.append(q(label.hazardLine));
    return words.join(QStringLiteral(", "));
}

QString LabelController::summary() const
{
    QString labels = tr("%n label(s)", nullptr, static_cast<int>(m_labels.size()));
    if (!ready() || m_page == Single)
        return labels;
    return tr("%1 on %2").arg(labels, tr("%n sheet(s)", nullptr, m_pages));
}

void LabelController::setPlace(int place)
{
    if (place == m_place || place < 0 || place > static_cast<int>(m_allPlaces.size()))
        return;
    m_place = place;
    Q_EMIT asked();
    readLabels();
}

void LabelController::setSize(int size)
{
    if (size == m_size || size < 0 || size > static_cast<int>(labelSizes.size()))
        return;
    m_size = size;
    fillSheet();
    look();
}

void LabelController::setOwnSize(const QString& size)
{
    if (size == m_ownSize)
        return;
    m_ownSize = size;
    fillSheet();
    look();
}

void LabelController::setDots(int dots)
{
    m_dots = std::clamp(dots, 0, 1);
    look();
}

void LabelController::setPage(Page page)
{
    if (page == m_page)
        return;
    m_page = page;
    fillSheet();
    look();
}

void LabelController::setColumns(int columns)
{
    m_columns = std::clamp(columns, 1, mostColumns);
    m_first = std::min(m_first, m_columns * m_rows);
    look();
}

void LabelController::setRows(int rows)
{
    m_rows = std::clamp(rows, 1, mostRows);
    m_first = std::min(m_first, m_columns * m_rows);
    look();
}

void LabelController::setFirst(int first)
{
    m_first = std::clamp(first, 1, m_columns * m_rows);
    look();
}

void LabelController::setPrinter(int printer)
{
    if (printer < 0 || printer >= m_printers.size())
        return;
    m_printer = printer;
    Q_EMIT printersChanged();
}

Result<QSizeF> LabelController::labelSize() const
{
    if (m_size < static_cast<int>(labelSizes.size())) {
        const Size& size = labelSizes[static_cast<std::size_t>(m_size)];
        return QSizeF(size.width, size.height);
    }
    if (m_ownSize.trimmed().isEmpty())
        return fail(ErrorCode::BadInput, "Type how wide and how high the label is, such as 63.5 x 38.1 mm.");
    return labelSizeOf(m_ownSize.toStdString());
}

/// As many labels as there is room for, which is how most sheets are cut.
void LabelController::fillSheet()
{
    const auto size = labelSize();
    if (!size || m_page == Single)
        return;
    const QSizeF sheet = sheetSize(m_page);
    constexpr double slack = 0.05; // mm
    m_columns = std::clamp(static_cast<int>((sheet.width() + slack) / size->width()), 1, mostColumns);
    m_rows = std::clamp(static_cast<int>((sheet.height() + slack) / size->height()), 1, mostRows);
    m_first = 1;
}

Result<LabelPrint> LabelController::asChosen() const
{
    const auto size = labelSize();
    if (!size)
        return tl::unexpected(size.error());
    LabelPrint print;
    print.paper = { size->width(), size->height(), printerDots[static_cast<std::size_t>(m_dots)] };
    if (m_page == Single)
        return print;
    const QSizeF page = sheetSize(m_page);
    auto sheet = sheetOf(print.paper, page.width(), page.height(), m_columns, m_rows);
    if (!sheet)
        return tl::unexpected(sheet.error());
    sheet->firstFree = m_first - 1;
    print.sheet = *sheet;
    return print;
}

void LabelController::take(const QStringList& containers)
{
    m_containers = containers;
    m_place = 0;
    setError(QString());
    Q_EMIT asked();
    readLabels();
    askPrinters();
}

void LabelController::readLabels()
{
    struct Read {
        std::vector<Label> labels;
        std::vector<PlaceName> places;
    };
    std::vector<std::string> codes;
    for (const QString& code : m_containers)
        codes.push_back(code.toStdString());
    std::optional<PlaceId> place;
    if (m_place > 0)
        place = PlaceId { m_allPlaces[static_cast<std::size_t>(m_place - 1)].id.toStdString() };
    const Moment now = services()->clock().now();
    take(services()->shop().run([codes, place, now](const Shop& shop) mutable -> Result<Read> {
        Read read;
        if (codes.empty()) {
            auto places = shop.store().places();
            if (!places)
                return tl::unexpected(places.error());
            for (const PlaceRecord& one : *places)
                read.places.push_back({ q(one.id.text), q(one.name) });
            auto all = shelfLabelCodes(shop, now, place);
            if (!all)
                return tl::unexpected(all.error());
            codes = std::move(*all);
        }
        auto labels = containerLabels(shop, codes, now);
        if (!labels)
            return tl::unexpected(labels.error());
        read.labels = std::move(*labels);
        return read;
    }),
        [this, turn = ++m_turn](Read read) {
            if (turn != m_turn)
                return;
            m_labels = std::move(read.labels);
            m_allPlaces = std::move(read.places);
            look();
        });
}

void LabelController::nothingFits(const Error& why)
{
    m_pages = 0;
    m_preview = {};
    m_leftOut.clear();
    setError(why);
    Q_EMIT shown();
}

void LabelController::look()
{
    ++m_turn;
    Q_EMIT asked();
    setError(QString());
    if (m_labels.empty())
        return nothingFits({ ErrorCode::NotFound, tr("Nothing stands there to be labelled.").toStdString() });
    const auto chosen = asChosen();
    if (!chosen)
        return nothingFits(chosen.error());
    struct Look {
        QImage first;
        LabelsPrinted printed;
    };
    // An error comes as an answer too: it must put away the picture before it.
    using Answer = Result<Look>;
    take(offThread([labels = m_labels, print = *chosen]() -> Result<Answer> {
        auto first = labelPicture(labels.front(), print.paper);
        if (!first)
            return Answer(tl::unexpected(first.error()));
        auto printed = lookAtLabels(labels, print);
        if (!printed)
            return Answer(tl::unexpected(printed.error()));
        return Answer(Look { std::move(*first), std::move(*printed) });
    }),
        [this, turn = m_turn](Answer answer) {
            if (turn != m_turn)
                return;
            if (!answer)
                return nothingFits(answer.error());
            m_preview = answer->first;
            m_pages = answer->printed.pages;
            QStringList words;
            for (const std::string& word : answer->printed.leftOut)
                words.append(q(word));
            m_leftOut = words.isEmpty()
                ? QString()
                : tr("No room on this size for: %1.").arg(words.join(QStringLiteral(", ")));
            Q_EMIT shown();
        });
}

void LabelController::askPrinters()
{
    if (m_printersKnown)
        return;
    take(offThread([]() -> Result<QStringList> { return printerNames(); }), [this](const QStringList& names) {
        m_printersKnown = true;
        m_printers = names;
        const auto last = names.indexOf(services()->settings()->labelHabit(QStringLiteral("printer")));
        m_printer = names.isEmpty() ? -1 : static_cast<int>(std::max<qsizetype>(last, 0));
        Q_EMIT printersChanged();
    });
}

void LabelController::wentOut(const LabelsPrinted& printed, const QString& words)
{
    if (m_page != Single) {
        // The next ones go on from here, on the sheet that is begun now.
        const int onSheet = m_columns * m_rows;
        m_first = (m_first - 1 + static_cast<int>(m_labels.size())) % onSheet + 1;
        Q_EMIT asked();
    }
    m_pages = printed.pages;
    remember();
    services()->say(words);
    Q_EMIT done();
}

void LabelController::savePdf(const QUrl& file)
{
    const QString path = file.toLocalFile();
    const auto chosen = asChosen();
    if (path.isEmpty() || !ready() || !chosen)
        return;
    setError(QString());
    take(
        offThread([labels = m_labels, print = *chosen, path] { return writeLabelsPdf(labels, print, path); }),
        [this, path](const LabelsPrinted& printed) {
            wentOut(printed,
                tr("%1: %2").arg(tr("%n label(s)", nullptr, static_cast<int>(m_labels.size())),
                    QDir::toNativeSeparators(path)));
        });
}

void LabelController::sendToPrinter()
{
    const auto chosen = asChosen();
    if (m_printer < 0 || !ready() || !chosen)
        return;
    setError(QString());
    const QString printer = m_printers[m_printer];
    take(offThread(
             [labels = m_labels, print = *chosen, printer] { return printLabels(labels, print, printer); }),
        [this, printer](const LabelsPrinted& printed) {
            wentOut(printed,
                tr("%1 went to %2.")
                    .arg(tr("%n label(s)", nullptr, static_cast<int>(m_labels.size())), printer));
        });
}

} // namespace gw
