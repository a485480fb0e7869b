#include "exchange/labelpaint.h"

#include <algorithm>
#include <cmath>

#include <QFont>
#include <QFontMetrics>
#include <QPainter>
#include <QSvgRenderer>

namespace gw {

namespace {

constexpr int quietModules = 2;
constexpr double leastModuleMm = 0.25;
constexpr double mostModuleMm = 0.8;
constexpr double leastLettersMm = 1.7; ///< height of the line's letters with their descent
constexpr double leastPictogramMm = 5;
constexpr double usualPictogramMm = 10;

QFont fontOf(int pixels, bool bold)
{
    QFont font(QStringLiteral("Inter"));
    font.setPixelSize(std::max(1, pixels));
    font.setBold(bold);
    // Hinted widths would differ between the screen and the printer.
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

int lineHeight(int pixels) { return static_cast<int>(std::lround(pixels * 1.22)); }

/// Fills a label from its parts, in order of how much each is needed.
class Planner {
public:
    Planner(const Label& label, const LabelPaper& paper)
        : m_label(label)
        , m_dpi(paper.dpi)
    {
        m_plan.size = QSize(dots(paper.widthMm), dots(paper.heightMm));
        m_margin = dots(std::min(1.5, paper.heightMm / 14));
    }

    Result<LabelPlan> plan();

private:
    int dots(double mm) const { return dotsOf(mm, m_dpi); }
    bool placeSymbol();
    void placeCode();
    void placeHazards();
    void placeTitle();
    void placeLines();
    void addText(const QRect& box, int pixels, bool bold, const QString& text);
    static int fits(const QString& text, int width, int most, int least, bool bold);

    const Label& m_label;
    const int m_dpi;
    int m_margin = 0;
    LabelPlan m_plan;
    QRect m_room; ///< what is free beside the symbol
};

bool Planner::placeSymbol()
{
    const int modules = m_plan.symbol.size + 2 * quietModules;
    const int high = m_plan.size.height() - 2 * m_margin;
    const int wide = m_plan.size.width() / 2 - m_margin;
    const int under = lineHeight(dots(2.2)); // for the code in letters
    const int least = std::max(2, static_cast<int>(std::ceil(leastModuleMm * m_dpi / 25.4 - 0.02)));
    const int most = std::max(least, static_cast<int>(mostModuleMm * m_dpi / 25.4));
    int module = std::min({ (high - under) / modules, wide / modules, most });
    if (module < least)
        module = std::min({ high / modules, wide / modules, most });
    if (module < least)
        return false;
    m_plan.moduleDots = module;
    const int side = module * modules;
    const bool codeUnder = side + under <= high;
    const int top = (m_plan.size.height() - side - (codeUnder ? under : 0)) / 2;
    m_plan.symbolAt = QPoint(m_margin + quietModules * module, top + quietModules * module);
    const int left = m_margin + side + dots(0.8);
    m_room = QRect(QPoint(left, m_margin),
        QPoint(m_plan.size.width() - m_margin - 1, m_plan.size.height() - m_margin - 1));
    if (codeUnder) {
        const QRect box(m_margin, top + side, side, under);
        const QString code = QString::fromStdString(m_label.code);
        addText(box, fits(code, side, dots(2.4), dots(1.2), true), true, code);
    }
    return true;
}

int Planner::fits(const QString& text, int width, int most, int least, bool bold)
{
    for (int pixels = most; pixels > least; --pixels) {
        if (QFontMetrics(fontOf(pixels, bold)).horizontalAdvance(text) <= width)
            return pixels;
    }
    return least;
}

void Planner::addText(const QRect& box, int pixels, bool bold, const QString& text)
{
    const QFontMetrics metrics(fontOf(pixels, bold));
    m_plan.texts.push_back(
        { box, pixels, bold, metrics.elidedText(text, Qt::ElideRight, box.width()).toStdString() });
}

/// Where it does not stand under the symbol.
void Planner::placeCode()
{
    if (!m_plan.texts.empty())
        return;
    const QString code = QString::fromStdString(m_label.code);
    const int pixels = fits(code, m_room.width(), dots(2.4), dots(1.2), true);
    addText(QRect(m_room.left(), m_room.top(), m_room.width(), lineHeight(pixels)), pixels, true, code);
    m_room.setTop(m_room.top() + lineHeight(pixels));
}

/// From the foot upwards: the line to read further, and above it the pictograms with the signal word.
void Planner::placeHazards()
{
    const auto count = static_cast<int>(m_label.pictograms.size());
    const bool any = count > 0 || !m_label.signalWord.empty();
    const int titleRoom = lineHeight(dots(2.2));
    if (!m_label.hazardLine.empty()) {
        const QString line = QString::fromStdString(m_label.hazardLine);
        const int pixels = fits(line, m_room.width(), dots(2.2), dots(leastLettersMm), false);
        if (m_room.height() - lineHeight(pixels) >= titleRoom) {
            m_room.setBottom(m_room.bottom() - lineHeight(pixels));
            addText(QRect(m_room.left(), m_room.bottom() + 1, m_room.width(), lineHeight(pixels)), pixels,
                false, line);
        } else {
            m_plan.leftOut.push_back("the line to the safety data sheet");
        }
    }
    if (!any)
        return;
    const QString word = QString::fromStdString(m_label.signalWord);
    const int wordPixels = dots(2.6);
    const int wordWide
        = word.isEmpty() ? 0 : QFontMetrics(fontOf(wordPixels, true)).horizontalAdvance(word) + dots(1);
    const int gap = dots(0.6);
    const int wide = count == 0 ? 0 : (m_room.width() - wordWide - gap * (count - 1)) / count;
    const int side = std::min({ dots(usualPictogramMm), wide, m_room.height() - titleRoom });
    if (count > 0 && side < dots(leastPictogramMm))
        m_plan.leftOut.push_back(count == 1 ? "the pictogram" : "the pictograms");
    const int shown = count > 0 && side >= dots(leastPictogramMm) ? side : 0;
    const int band = std::max(shown, word.isEmpty() ? 0 : lineHeight(wordPixels));
    if (m_room.height() - band < titleRoom) {
        m_plan.leftOut.push_back("the signal word");
        return;
    }
    m_room.setBottom(m_room.bottom() - band);
    int x = m_room.left();
    for (int i = 0; shown > 0 && i < count; ++i, x += shown + gap)
        m_plan.pictograms.push_back({ QRect(x, m_room.bottom() + 1 + band - shown, shown, shown),
            m_label.pictograms[static_cast<std::size_t>(i)] });
    if (!word.isEmpty())
        addText(QRect(x + (shown > 0 ? gap : 0), m_room.bottom() + 1 + (band - lineHeight(wordPixels)) / 2,
                    wordWide, lineHeight(wordPixels)),
            wordPixels, true, word);
}

void Planner::placeTitle()
{
    const QString title = QString::fromStdString(m_label.title);
    const int most = std::min(dots(3.8), m_room.height() * 4 / 10);
    const int least = std::max(dots(leastLettersMm), 1);
    // On one line if it is not too small for it, else on two.
    const int one = fits(title, m_room.width(), std::max(most, least), least, true);
    const int wantedTwo = std::min(most, dots(2.8));
    const auto cut = [&](int pixels) {
        const QFontMetrics metrics(fontOf(pixels, true));
        QString first;
        for (const QString& piece : title.split(u' ', Qt::SkipEmptyParts)) {
            const QString longer = first.isEmpty() ? piece : first + u' ' + piece;
            if (metrics.horizontalAdvance(longer) > m_room.width())
                break;
            first = longer;
        }
        return first;
    };
    const QString first = cut(wantedTwo);
    const bool two = one < wantedTwo && !first.isEmpty() && first.size() < title.size()
        && m_room.height() >= 2 * lineHeight(wantedTwo);
    const int pixels = two ? wantedTwo : one;
    for (const QString& line :
        two ? QStringList { first, title.mid(first.size()).trimmed() } : QStringList { title }) {
        addText(QRect(m_room.left(), m_room.top(), m_room.width(), lineHeight(pixels)), pixels, true, line);
        m_room.setTop(m_room.top() + lineHeight(pixels));
    }
}

void Planner::placeLines()
{
    const auto count = static_cast<int>(m_label.lines.size());
    if (count == 0)
        return;
    const int least = dots(leastLettersMm);
    const int pixels = std::clamp(static_cast<int>(m_room.height() / (1.22 * count)), least, dots(2.6));
    for (const std::string& line : m_label.lines) {
        const QString text = QString::fromStdString(line);
        const int size = fits(text, m_room.width(), pixels, least, false);
        if (m_room.height() < lineHeight(size)) {
            m_plan.leftOut.push_back("\"" + line + "\"");
            continue;
        }
        addText(QRect(m_room.left(), m_room.top(), m_room.width(), lineHeight(size)), size, false, text);
        m_room.setTop(m_room.top() + lineHeight(size));
    }
}

Result<LabelPlan> Planner::plan()
{
    auto symbol = dataMatrixOf(m_label.code);
    if (!symbol)
        return tl::unexpected(symbol.error());
    m_plan.symbol = std::move(*symbol);
    if (!placeSymbol())
        return fail(ErrorCode::BadInput,
            "The label is too small for its square code at this printer's dots; take a larger one, or a "
            "printer of 300 dots per inch.");
    placeCode();
    placeHazards();
    placeTitle();
    placeLines();
    return std::move(m_plan);
}

} // namespace

int dotsOf(double mm, int dpi) { return static_cast<int>(std::lround(mm * dpi / 25.4)); }

Result<LabelPlan> planLabel(const Label& label, const LabelPaper& paper)
{
    if (!(paper.widthMm >= 20 && paper.widthMm <= 300 && paper.heightMm >= 10 && paper.heightMm <= 300))
        return fail(ErrorCode::BadInput, "A label is 20 to 300 mm wide and 10 to 300 mm high.");
    if (paper.dpi < 150 || paper.dpi > 1200)
        return fail(ErrorCode::BadInput, "A printer has 150 to 1200 dots per inch; most have 203 or 300.");
    if (label.title.empty())
        return fail(ErrorCode::BadInput, "A label says what it is; give it a name.");
    return Planner(label, paper).plan();
}

void paintLabel(QPainter& painter, QPoint at, const LabelPlan& plan)
{
    painter.save();
    painter.translate(at);
    painter.setClipRect(QRect(QPoint(0, 0), plan.size));
    painter.setRenderHint(QPainter::Antialiasing, false);
    const int dots = plan.moduleDots;
    // A run of dark modules as one piece: hairlines between modules would show on some printers.
    for (int y = 0; y < plan.symbol.size; ++y) {
        for (int x = 0; x < plan.symbol.size; ++x) {
            int run = 0;
            while (x + run < plan.symbol.size && plan.symbol.at(x + run, y))
                ++run;
            if (run > 0)
                painter.fillRect(
                    plan.symbolAt.x() + x * dots, plan.symbolAt.y() + y * dots, run * dots, dots, Qt::black);
            x += run;
        }
    }
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setPen(Qt::black);
    for (const LabelPlan::Text& text : plan.texts) {
        painter.setFont(fontOf(text.pixels, text.bold));
        painter.drawText(
            text.box, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, QString::fromStdString(text.text));
    }
    for (const LabelPlan::Pictogram& pictogram : plan.pictograms) {
        QSvgRenderer drawing(
            QStringLiteral(":/gluewright/hazards/%1.svg").arg(QString::fromStdString(pictogram.code)));
        drawing.render(&painter, QRectF(pictogram.box));
    }
    painter.restore();
}

} // namespace gw
