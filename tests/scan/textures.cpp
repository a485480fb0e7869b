#include "textures.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <QPainter>

namespace gw::test {

namespace {

QImage grey(QSize size, int brightness = 255)
{
    QImage image(size, QImage::Format_Grayscale8);
    image.fill(brightness);
    return image;
}

template <class Brightness> QImage filled(QSize size, Brightness brightness)
{
    QImage image = grey(size);
    for (int y = 0; y < size.height(); ++y) {
        uchar* row = image.scanLine(y);
        for (int x = 0; x < size.width(); ++x)
            row[x] = static_cast<uchar>(std::clamp(int(brightness(x, y)), 0, 255));
    }
    return image;
}

} // namespace

QImage noise(QSize size, unsigned seed)
{
    std::mt19937 engine(seed);
    std::uniform_int_distribution<int> any(0, 255);
    return filled(size, [&](int, int) { return any(engine); });
}

QImage clouds(QSize size, unsigned seed)
{
    const QImage coarse = noise(QSize(size.width() / 40 + 2, size.height() / 40 + 2), seed);
    const QImage fine = noise(QSize(size.width() / 9 + 2, size.height() / 9 + 2), seed + 1000);
    const QImage a = coarse.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    const QImage b = fine.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    return filled(
        size, [&](int x, int y) { return 0.7 * qGray(a.pixel(x, y)) + 0.3 * qGray(b.pixel(x, y)); });
}

QImage woodGrain(QSize size, unsigned seed)
{
    std::mt19937 engine(seed);
    std::uniform_real_distribution<double> share(0, 1);
    const double pitch = 6 + 20 * share(engine);
    const double wave = 10 + 60 * share(engine);
    const double length = 150 + 500 * share(engine);
    const double phase = 6.28 * share(engine);
    std::normal_distribution<double> pores(0, 6);
    return filled(size, [&](int x, int y) {
        const double bent = x + wave * std::sin(y / length * 6.28 + phase) + 0.15 * y * std::sin(x / 90.0);
        const double ring = std::sin(bent / pitch * 6.28) + 0.5 * std::sin(bent / pitch * 2.3 + phase);
        return 150 + 45 * ring + pores(engine);
    });
}

QImage stripes(QSize size, unsigned seed)
{
    std::mt19937 engine(seed);
    std::uniform_int_distribution<int> width(2, 14);
    QImage image = grey(size);
    QPainter painter(&image);
    bool dark = false;
    for (int x = 30; x < size.width() - 30;) {
        const int next = x + width(engine);
        if (dark)
            painter.fillRect(x, 20, next - x, size.height() - 40, Qt::black);
        dark = !dark;
        x = next;
    }
    return image;
}

QImage checks(QSize size, unsigned seed)
{
    std::mt19937 engine(seed);
    const int square = 4 + int(seed % 9);
    QImage image = grey(size);
    QPainter painter(&image);
    for (int y = 20; y + square < size.height() - 20; y += square)
        for (int x = 20; x + square < size.width() - 20; x += square)
            if (engine() % 2)
                painter.fillRect(x, y, square, square, Qt::black);
    return image;
}

QImage digits(QSize size, unsigned seed)
{
    std::mt19937 engine(seed);
    QImage image = grey(size, 240);
    QPainter painter(&image);
    painter.setPen(QPen(Qt::black, 2));
    for (int y = 20; y < size.height() - 20; y += 18) {
        for (int x = 20; x < size.width() - 20; x += 10) {
            // Seven strokes of a figure, each there or not.
            const auto strokes = engine();
            const QRect box(x, y, 6, 12);
            if (strokes & 1)
                painter.drawLine(box.topLeft(), box.topRight());
            if (strokes & 2)
                painter.drawLine(box.topLeft(), box.bottomLeft());
            if (strokes & 4)
                painter.drawLine(box.topRight(), box.bottomRight());
            if (strokes & 8)
                painter.drawLine(box.bottomLeft(), box.bottomRight());
            if (strokes & 16)
                painter.drawLine(x, y + 6, x + 6, y + 6);
        }
    }
    return image;
}

} // namespace gw::test
