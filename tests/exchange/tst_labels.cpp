#include <QImage>
#include <QPainter>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QTest>

#include "exchange/labelfile.h"
#include "exchange/labelprinter.h"
#include "scan/finding.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

Label bottle()
{
    Label label;
    label.code = "GW6MHSF6R";
    label.title = "White wood glue";
    label.lines = { "Opened 18 February 2026", "Keep 5 to 30 °C", "Good until 18 February 2027", "Lot AB-1" };
    return label;
}

Label decanted()
{
    Label label = bottle();
    label.title = "Denatured alcohol for shellac, second filling";
    label.pictograms = { "GHS02", "GHS07" };
    label.signalWord = "Danger";
    label.hazardLine = "See the maker's label and the safety data sheet";
    return label;
}

/// The label as the printer's dots.
QImage printed(const LabelPlan& plan)
{
    QImage paper(plan.size, QImage::Format_RGB32);
    paper.fill(Qt::white);
    QPainter painter(&paper);
    paintLabel(painter, { 0, 0 }, plan);
    return paper;
}

std::string readBack(const QImage& picture)
{
    const auto reader = makeReader();
    const auto symbols = findSymbols(picture, *reader);
    return symbols.size() == 1 ? symbols.front().text : std::string();
}

} // namespace

class Labels : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everySize_isReadBackAfterPrinting_data()
    {
        QTest::addColumn<double>("width");
        QTest::addColumn<double>("height");
        QTest::addColumn<int>("dpi");
        for (const int dpi : { 203, 300 }) {
            QTest::addRow("25 x 13 mm, %d dpi", dpi) << 25.0 << 13.0 << dpi;
            QTest::addRow("50 x 25 mm, %d dpi", dpi) << 50.0 << 25.0 << dpi;
            QTest::addRow("70 x 37 mm, %d dpi", dpi) << 70.0 << 37.0 << dpi;
            QTest::addRow("100 x 60 mm, %d dpi", dpi) << 100.0 << 60.0 << dpi;
        }
    }

    void everySize_isReadBackAfterPrinting()
    {
        QFETCH(double, width);
        QFETCH(double, height);
        QFETCH(int, dpi);
        const auto plan = planLabel(decanted(), { width, height, dpi });
        QVERIFY2(plan, plan ? "" : plan.error().sentence.c_str());
        const QImage grey = printed(*plan).convertToFormat(QImage::Format_Grayscale8);
        QCOMPARE(readBack(grey), std::string("GW6MHSF6R"));
        // As a worn label before a tablet's camera: greyed, grainy, soft and slanted.
        const QImage seen = turned(placed(grey, grey.size() + QSize(60, 60)), 12);
        QCOMPARE(readBack(noisy(blurred(dimmed(seen, 50, 200), 1), 6)), std::string("GW6MHSF6R"));
    }

    /// ISO/IEC 16022: square modules of one size, a solid left and lower edge, a quiet zone of one module.
    void modules_areWholeDots()
    {
        const auto plan = planLabel(bottle(), { 50, 25, 203 });
        QVERIFY(plan);
        const QImage paper = printed(*plan);
        const int dots = plan->moduleDots;
        QVERIFY(dots * 25.4 / 203 >= 0.25);
        for (int y = -1; y <= plan->symbol.size; ++y) {
            for (int x = -1; x <= plan->symbol.size; ++x) {
                const bool inside = x >= 0 && y >= 0 && x < plan->symbol.size && y < plan->symbol.size;
                const QRgb wanted = inside && plan->symbol.at(x, y) ? qRgb(0, 0, 0) : qRgb(255, 255, 255);
                for (int i = 0; i < dots * dots; ++i)
                    QCOMPARE(paper.pixel(plan->symbolAt.x() + x * dots + i % dots,
                                 plan->symbolAt.y() + y * dots + i / dots),
                        wanted);
            }
        }
        for (int i = 0; i < plan->symbol.size; ++i) {
            QVERIFY(plan->symbol.at(0, i));
            QVERIFY(plan->symbol.at(i, plan->symbol.size - 1));
        }
    }

    void nothing_overlapsOrLeavesTheLabel_data() { everySize_isReadBackAfterPrinting_data(); }

    void nothing_overlapsOrLeavesTheLabel()
    {
        QFETCH(double, width);
        QFETCH(double, height);
        QFETCH(int, dpi);
        for (const Label& label : { bottle(), decanted() }) {
            const auto plan = planLabel(label, { width, height, dpi });
            QVERIFY(plan);
            std::vector<QRect> boxes;
            const int side = plan->symbol.size * plan->moduleDots;
            boxes.push_back(QRect(plan->symbolAt, QSize(side, side)));
            for (const auto& text : plan->texts)
                boxes.push_back(text.box);
            for (const auto& pictogram : plan->pictograms)
                boxes.push_back(pictogram.box);
            for (std::size_t i = 0; i < boxes.size(); ++i) {
                QVERIFY(QRect(QPoint(0, 0), plan->size).contains(boxes[i]));
                for (std::size_t j = 0; j < i; ++j)
                    QVERIFY(!boxes[i].intersects(boxes[j]));
            }
        }
    }

    void whatFindsNoRoom_isNamed_theCodeNever()
    {
        const auto small = planLabel(decanted(), { 25, 13, 203 });
        QVERIFY(small);
        QVERIFY(!small->leftOut.empty());
        const auto large = planLabel(decanted(), { 100, 60, 203 });
        QVERIFY(large);
        QVERIFY(large->leftOut.empty());
        QCOMPARE(large->pictograms.size(), std::size_t { 2 });
        QVERIFY(!planLabel(decanted(), { 20, 10, 100 }));
        QVERIFY(!planLabel(decanted(), { 10, 10, 203 }));
        Label nameless = bottle();
        nameless.title.clear();
        QVERIFY(!planLabel(nameless, { 50, 25, 203 }));
    }

    /// UN GHS: a square set on a point, red frame, black symbol on white (from memory of 1.4.10).
    void pictograms_areFramedSquaresOnAPoint()
    {
        for (int i = 1; i <= 9; ++i) {
            QSvgRenderer drawing(QStringLiteral(":/gluewright/hazards/GHS0%1.svg").arg(i));
            QVERIFY(drawing.isValid());
            QImage picture(200, 200, QImage::Format_ARGB32);
            picture.fill(Qt::transparent);
            QPainter painter(&picture);
            drawing.render(&painter);
            painter.end();
            QCOMPARE(qAlpha(picture.pixel(4, 4)), 0); // corners are outside
            QCOMPARE(qAlpha(picture.pixel(195, 195)), 0);
            for (const QPoint edge : { QPoint(54, 55), QPoint(145, 55), QPoint(54, 145), QPoint(145, 145) }) {
                const QColor colour = picture.pixelColor(edge);
                QVERIFY2(colour.red() > 150 && colour.green() < 60, qPrintable(colour.name()));
            }
            int black = 0;
            for (int y = 40; y < 160; ++y)
                for (int x = 40; x < 160; ++x)
                    black += picture.pixel(x, y) == qRgb(0, 0, 0) ? 1 : 0;
            QVERIFY(black > 600);
        }
    }

    void sheets_takeTurnsFromTheFirstFree()
    {
        const LabelPaper paper { 70, 37, 203 };
        auto sheet = sheetOf(paper, 210, 297, 3, 8);
        QVERIFY(sheet);
        sheet->firstFree = 23;
        const QTemporaryDir folder;
        const QString path = folder.filePath(QStringLiteral("labels.pdf"));
        const auto done = writeLabelsPdf(std::vector<Label>(3, bottle()), { paper, *sheet }, path);
        QVERIFY2(done, done ? "" : done.error().sentence.c_str());
        QCOMPARE(done->pages, 2);
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        QVERIFY(file.read(5) == "%PDF-");
        QVERIFY(!sheetOf(paper, 210, 297, 4, 8));
        sheet->firstFree = 24;
        QVERIFY(!writeLabelsPdf({ bottle() }, { paper, *sheet }, path));
        QVERIFY(!writeLabelsPdf({}, { paper, {} }, path));
    }

    void look_saysWhatPrintingDoes()
    {
        const LabelPaper paper { 25, 13, 203 };
        auto sheet = sheetOf(paper, 210, 297, 8, 22);
        QVERIFY(sheet);
        sheet->firstFree = 170;
        const QTemporaryDir folder;
        const std::vector<Label> labels(12, decanted());
        for (const LabelPrint& print : { LabelPrint { paper, {} }, LabelPrint { paper, *sheet } }) {
            const auto look = lookAtLabels(labels, print);
            const auto done = writeLabelsPdf(labels, print, folder.filePath(QStringLiteral("l.pdf")));
            QVERIFY(look && done);
            QCOMPARE(look->pages, print.sheet ? 2 : 12);
            QCOMPARE(look->pages, done->pages);
            QVERIFY(look->leftOut == done->leftOut && !look->leftOut.empty());
        }
        const auto picture = labelPicture(bottle(), { 50, 25, 300 });
        QVERIFY(picture);
        QCOMPARE(picture->size(), QSize(591, 295)); // 50 and 25 mm at 300 dots per 25.4 mm
        QCOMPARE(readBack(picture->convertToFormat(QImage::Format_Grayscale8)), std::string("GW6MHSF6R"));
    }

    void sizes_areReadAsPeopleWriteThem_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QSizeF>("size");
        for (const char* text : { "50x25mm", "50 x 25", " 50 mm X 25 mm", "50.0\u00D725,0 mm" })
            QTest::newRow(text) << QString::fromUtf8(text) << QSizeF(50, 25);
        QTest::newRow("halves") << QStringLiteral("63,5 x 38,1") << QSizeF(63.5, 38.1);
        QTest::newRow("inches") << QStringLiteral("4x2in") << QSizeF(101.6, 50.8);
        for (const char* text : { "", "50", "50x", "x25", "50*25", "50x25cm", "-50x25", "0x25", "50x25x3" })
            QTest::newRow(*text ? text : "nothing") << QString::fromUtf8(text) << QSizeF();
    }

    void sizes_areReadAsPeopleWriteThem()
    {
        QFETCH(QString, text);
        QFETCH(QSizeF, size);
        const auto read = labelSizeOf(text.toStdString());
        QCOMPARE(read.has_value(), size.isValid());
        if (read)
            QCOMPARE(*read, size);
        else
            QVERIFY(read.error().sentence.find("50x25mm") != std::string::npos);
    }

    void printer_thatIsNotThere_isToldOf_andNoFileIsLeft()
    {
        const auto printed
            = printLabels({ bottle() }, { { 50, 25, 203 }, {} }, QStringLiteral("No printer of that name"));
        QVERIFY(!printed);
        QCOMPARE(printed.error().code, ErrorCode::NotFound);
        QVERIFY(printed.error().sentence.find("save the labels as a PDF") != std::string::npos);
    }
};

QTEST_MAIN(Labels)
#include "tst_labels.moc"
