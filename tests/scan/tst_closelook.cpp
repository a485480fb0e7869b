// The parts of a picture that are looked at closer, and what is done to them. Checked against what was done
// to the drawing before: a turn, a blur and a bend of our own making, so the truth is known.
#include <cmath>

#include <QTest>

#include "scan/closelook.h"
#include "scan/closer.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

/// Mean difference of brightness.
double difference(const QImage& a, const QImage& b)
{
    double sum = 0;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x)
            sum += std::abs(a.constScanLine(y)[x] - b.constScanLine(y)[x]);
    return sum / a.width() / a.height();
}

/// Out of focus across the bars.
QImage blurredAcross(const QImage& picture, double sigma)
{
    QImage out = picture;
    const int reach = static_cast<int>(4 * sigma);
    for (int y = 0; y < out.height(); ++y)
        for (int x = 0; x < out.width(); ++x) {
            double sum = 0;
            double weights = 0;
            for (int i = -reach; i <= reach; ++i) {
                const double weight = std::exp(-i * i / (2 * sigma * sigma));
                sum += weight * picture.constScanLine(y)[std::clamp(x + i, 0, picture.width() - 1)];
                weights += weight;
            }
            out.scanLine(y)[x] = static_cast<uchar>(std::lround(sum / weights));
        }
    return out;
}

/// Seen round an upright cylinder: the orthogonal view of a strip that reaches so many radians to either
/// side.
QImage bent(const QImage& flat, double radians)
{
    const double radius = flat.width() / 2.0 / radians;
    QImage out(static_cast<int>(2 * radius * std::sin(radians)), flat.height(), QImage::Format_Grayscale8);
    for (int x = 0; x < out.width(); ++x) {
        const double angle = std::asin(std::clamp((x + 0.5 - out.width() / 2.0) / radius, -1.0, 1.0));
        const int from
            = std::clamp(static_cast<int>(flat.width() / 2.0 + radius * angle), 0, flat.width() - 1);
        for (int y = 0; y < out.height(); ++y)
            out.scanLine(y)[x] = flat.constScanLine(y)[from];
    }
    return out;
}

} // namespace

class CloseLookTest : public QObject {
    Q_OBJECT

private:
    const QImage m_bars = drawSymbol(Symbology::Ean13, "952012345678");
    const QImage m_square = drawSymbol(Symbology::DataMatrix, "GW7K4M9QX", 4);

private Q_SLOTS:
    void region_standsWhereTheSymbolIs_andTurnsItUpright_data()
    {
        QTest::addColumn<double>("degrees");
        for (const double degrees : { 0.0, 7.0, 30.0, 45.0, 61.0, 90.0, 118.0, 170.0 })
            QTest::addRow("%g", degrees) << degrees;
    }
    void region_standsWhereTheSymbolIs_andTurnsItUpright()
    {
        QFETCH(double, degrees);
        for (const QImage* symbol : { &m_bars, &m_square }) {
            QImage sheet(900, 800, QImage::Format_Grayscale8);
            sheet.fill(230);
            const QImage on = turned(placed(*symbol, symbol->size() + QSize(60, 60), 230), degrees);
            const QImage picture = noisy(placed(on, sheet.size(), 230), 6);
            const auto regions = likelyRegions(picture, 2);
            QVERIFY(!regions.empty());
            const Region& region = regions.front();
            QVERIFY(QLineF(region.middle, QPointF(450, 400)).length() < 40);
            const bool bars = symbol == &m_bars;
            QVERIFY2((region.parallel > 0.5) == bars, qPrintable(QString::number(region.parallel)));
            // Bars look the same after half a turn, a square code after a quarter.
            const double off = std::remainder(region.degrees + degrees, bars ? 180 : 90);
            QVERIFY2(std::abs(off) < (bars ? 2 : 5), qPrintable(QString::number(off)));
        }
    }

    void emptyPicture_hasNoRegion()
    {
        QImage white(640, 480, QImage::Format_Grayscale8);
        white.fill(255);
        QVERIFY(likelyRegions(white, 3).empty());
        QVERIFY(likelyRegions(QImage(1, 1, QImage::Format_Grayscale8), 3).size() <= 1);
    }

    void refocusing_comesCloserToTheDrawing()
    {
        const QImage blurred = blurredAcross(m_bars, 3);
        const QImage again = refocused(blurred, 3);
        const double before = difference(blurred, m_bars);
        const double after = difference(again, m_bars);
        QVERIFY2(after < 0.6 * before, qPrintable(QStringLiteral("%1, was %2").arg(after).arg(before)));
        QVERIFY(difference(refocused(m_bars, 1), m_bars) < 12); // a sharp one stays what it is
    }

    void unrolling_undoesABend()
    {
        for (const double radians : { 0.6, 0.9, 1.2 }) {
            const QImage seen = bent(m_bars, radians);
            QImage flat = unrolledLook(seen, seen.width(), radians).picture;
            QVERIFY(std::abs(flat.width() - m_bars.width()) <= 3);
            flat = flat.scaled(m_bars.size());
            const QImage left = seen.scaled(m_bars.size());
            QVERIFY2(difference(flat, m_bars) < 0.5 * difference(left, m_bars),
                qPrintable(
                    QStringLiteral("%1 %2").arg(difference(flat, m_bars)).arg(difference(left, m_bars))));
        }
    }

    void strips_averageGrainAway_andKeepTheBars()
    {
        const QImage grey = dimmed(m_bars, 90, 165);
        const QImage grainy = noisy(grey, 25);
        const Look lines = stripsLook(grainy);
        QCOMPARE(lines.picture.width(), m_bars.width());
        // Of some twenty rows a quarter of the grain is left; below and above the bars stand digits and
        // margins.
        const QImage clean = stripsLook(grey).picture;
        QVERIFY(difference(lines.picture, clean) < 0.35 * difference(grainy, grey));
        QCOMPARE(lines.back.map(QPointF(0, lines.picture.height())).y(), double(m_bars.height()));
    }

    // The way there and back: the outline lies where the symbol was drawn.
    void outlineOfACloserLook_standsWhereTheSymbolIs()
    {
        QImage sheet(900, 700, QImage::Format_Grayscale8);
        sheet.fill(240);
        const QImage picture = noisy(placed(turned(m_square, 33), sheet.size()), 5);
        const auto reader = makeReader();
        const auto found = lookCloser(picture, *reader, Closeness::Picture, Budget(5000));
        QCOMPARE(found.size(), std::size_t(1));
        QCOMPARE(found.front().text, std::string("GW7K4M9QX"));
        const QPointF middle = found.front().outline.boundingRect().center();
        QVERIFY(QLineF(middle, QPointF(450, 350)).length() < 15);
    }

    void spentBudget_looksAtNothing()
    {
        const auto reader = makeReader();
        QVERIFY(
            lookCloser(placed(m_square, QSize(400, 400)), *reader, Closeness::Picture, Budget(-1)).empty());
    }
};

QTEST_GUILESS_MAIN(CloseLookTest)
#include "tst_closelook.moc"
