#include "support/drawnsymbol.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <random>

#include <QPainter>
#include <QPolygonF>
#include <QTransform>

#include <zint.h>

namespace gw::test {

namespace {

struct Kind {
    int zint;
    int mode;
};

Kind kindOf(Symbology symbology)
{
    switch (symbology) {
    case Symbology::Ean8:
    case Symbology::Ean13:
        return { BARCODE_EANX, UNICODE_MODE };
    case Symbology::UpcA:
        return { BARCODE_UPCA, UNICODE_MODE };
    case Symbology::UpcE:
        return { BARCODE_UPCE, UNICODE_MODE };
    case Symbology::Itf14:
        return { BARCODE_ITF14, UNICODE_MODE };
    case Symbology::Interleaved2of5:
        return { BARCODE_C25INTER, UNICODE_MODE };
    case Symbology::Code128:
        return { BARCODE_CODE128, UNICODE_MODE };
    case Symbology::Gs1_128:
        return { BARCODE_GS1_128, GS1_MODE };
    case Symbology::DataMatrix:
        return { BARCODE_DATAMATRIX, UNICODE_MODE };
    case Symbology::Gs1DataMatrix:
        return { BARCODE_DATAMATRIX, GS1_MODE };
    case Symbology::Qr:
        return { BARCODE_QRCODE, UNICODE_MODE };
    case Symbology::Gs1Qr:
        return { BARCODE_QRCODE, GS1_MODE };
    case Symbology::DataBar:
        return { BARCODE_DBAR_OMN, UNICODE_MODE };
    case Symbology::DataBarExpanded:
        return { BARCODE_DBAR_EXP, GS1_MODE };
    }
    return {};
}

QImage mapped(const QImage& picture, const std::function<double(int value, int x, int y)>& brightness)
{
    QImage out = picture.convertToFormat(QImage::Format_Grayscale8);
    for (int y = 0; y < out.height(); ++y) {
        uchar* row = out.scanLine(y);
        for (int x = 0; x < out.width(); ++x)
            row[x] = static_cast<uchar>(std::clamp(std::lround(brightness(row[x], x, y)), 0L, 255L));
    }
    return out;
}

QImage painted(const QImage& picture, const QTransform& transform, QSize size)
{
    QImage out(size, QImage::Format_Grayscale8);
    out.fill(255);
    QPainter painter(&out);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(transform);
    painter.drawImage(0, 0, picture);
    return out;
}

} // namespace

QImage drawSymbol(Symbology symbology, const QByteArray& text, float scale)
{
    const std::unique_ptr<zint_symbol, decltype(&ZBarcode_Delete)> symbol(
        ZBarcode_Create(), &ZBarcode_Delete);
    const auto [zint, mode] = kindOf(symbology);
    symbol->symbology = zint;
    symbol->input_mode = mode;
    symbol->scale = scale;
    symbol->show_hrt = 0;
    symbol->output_options |= BARCODE_QUIET_ZONES;
    if (zint == BARCODE_DATAMATRIX)
        symbol->option_3 = DM_SQUARE; // as on nearly every label
    const int result = ZBarcode_Encode_and_Buffer(
        symbol.get(), reinterpret_cast<const unsigned char*>(text.constData()), int(text.size()), 0);
    if (result >= ZINT_ERROR)
        qFatal("%s cannot be drawn: %s", text.constData(), symbol->errtxt);
    const QImage drawn(symbol->bitmap, symbol->bitmap_width, symbol->bitmap_height,
        qsizetype(3) * symbol->bitmap_width, QImage::Format_RGB888);
    return drawn.convertToFormat(QImage::Format_Grayscale8); // a copy: the bytes are Zint's
}

QImage placed(const QImage& symbol, QSize sheet, int paper)
{
    QImage out(sheet, QImage::Format_Grayscale8);
    out.fill(paper);
    QPainter(&out).drawImage(
        (sheet.width() - symbol.width()) / 2, (sheet.height() - symbol.height()) / 2, symbol);
    return out;
}

QImage turned(const QImage& picture, double degrees)
{
    const QTransform turn
        = QImage::trueMatrix(QTransform().rotate(degrees), picture.width(), picture.height());
    return painted(picture, turn, turn.mapRect(picture.rect()).size());
}

QImage dimmed(const QImage& picture, int black, int white)
{
    return mapped(picture, [=](int value, int, int) { return black + value * (white - black) / 255.0; });
}

QImage shaded(const QImage& picture, double darkest)
{
    const double width = picture.width();
    return mapped(picture, [=](int value, int x, int) { return value * (1 - (1 - darkest) * x / width); });
}

QImage noisy(const QImage& picture, double sigma, unsigned seed)
{
    std::mt19937 engine(seed);
    std::normal_distribution<double> noise(0, sigma);
    return mapped(picture, [&](int value, int, int) { return value + noise(engine); });
}

QImage blurred(const QImage& picture, int passes)
{
    QImage from = picture.convertToFormat(QImage::Format_Grayscale8);
    for (int pass = 0; pass < passes; ++pass) {
        const QImage before = from.copy();
        const auto at = [&before](int x, int y) {
            return int(before.constScanLine(
                std::clamp(y, 0, before.height() - 1))[std::clamp(x, 0, before.width() - 1)]);
        };
        from = mapped(before, [&](int, int x, int y) {
            int sum = 0;
            for (int dy = -1; dy <= 1; ++dy)
                for (int dx = -1; dx <= 1; ++dx)
                    sum += at(x + dx, y + dy);
            return sum / 9.0;
        });
    }
    return from;
}

QImage tilted(const QImage& picture, double share)
{
    const double w = picture.width();
    const double h = picture.height();
    const double gone = h * share / 2;
    QTransform transform;
    QTransform::quadToQuad(QPolygonF { QPointF(0, 0), QPointF(w, 0), QPointF(w, h), QPointF(0, h) },
        QPolygonF { QPointF(0, 0), QPointF(w * (1 - share / 2), gone), QPointF(w * (1 - share / 2), h - gone),
            QPointF(0, h) },
        transform);
    return painted(picture, transform, picture.size());
}

QImage spoiledAtRandom(const QImage& symbol, unsigned seed)
{
    std::mt19937 engine(seed);
    const auto any = [&engine](double from, double to) {
        return std::uniform_real_distribution<double>(from, to)(engine);
    };
    QImage frame(640, 480, QImage::Format_Grayscale8);
    frame.fill(200 + int(any(0, 55)));

    const double w = symbol.width();
    const double h = symbol.height();
    const double bend = any(0, 1) < 0.5 ? 10 : 40;
    const QPolygonF corners { QPointF(0, 0), QPointF(w, 0), QPointF(w, h), QPointF(0, h) };
    QPolygonF bent;
    for (const QPointF& corner : corners)
        bent << corner + QPointF(any(-bend, bend), any(-bend, bend));
    QTransform transform;
    QTransform::quadToQuad(corners, bent, transform);
    const double size = any(0.5, 1.5);
    transform *= QTransform::fromTranslate(-w / 2, -h / 2) * QTransform::fromScale(size, size)
        * QTransform().rotate(any(0, 360))
        * QTransform::fromTranslate(320 + any(-100, 100), 240 + any(-80, 80));

    QPainter painter(&frame);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(transform);
    painter.drawImage(0, 0, symbol);
    painter.resetTransform();
    painter.setPen(Qt::NoPen);
    for (auto spots = engine() % 6; spots > 0; --spots) {
        painter.setBrush(QColor::fromHsv(0, 0, int(any(0, 255))));
        painter.drawEllipse(QPointF(any(150, 490), any(100, 380)), any(2, 25), any(2, 25));
    }
    painter.end();

    if (engine() % 2)
        frame = blurred(frame, 1);
    if (engine() % 2)
        frame = noisy(frame, any(0, 30), seed);
    if (engine() % 2)
        frame = shaded(frame, any(0.1, 0.9));
    return frame;
}

} // namespace gw::test
