#include "support/distortedsymbol.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include <QPainter>
#include <QPolygonF>
#include <QTransform>

#include "support/drawnsymbol.h"

namespace gw::test {

namespace {

constexpr const char* troubles[distortedTroubles] = { "perspective", "out of focus", "moved", "noise",
    "low contrast", "low light", "glare", "curved bottle", "partly covered", "small", "inverted" };

constexpr const char* kinds[distortedKinds] = { "EAN-13", "EAN-8", "UPC-A", "UPC-E", "ITF-14", "Code 128",
    "GS1-128", "Data Matrix", "GS1 DataMatrix", "QR Code", "GS1 QR Code", "DataBar" };

class Chance {
public:
    Chance(unsigned set, unsigned number)
        : m_engine(set * 1'000'003U + number)
    {
    }
    double any(double from, double to) { return std::uniform_real_distribution<double>(from, to)(m_engine); }
    int whole(int from, int to) { return std::uniform_int_distribution<int>(from, to)(m_engine); }
    bool oneIn(int times) { return whole(1, times) == 1; }
    std::string digits(int count)
    {
        std::string text;
        for (int i = 0; i < count; ++i)
            text += static_cast<char>('0' + whole(0, 9));
        return text;
    }
    std::string letters(int count)
    {
        static constexpr std::string_view from = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
        std::string text;
        for (int i = 0; i < count; ++i)
            text += from[static_cast<std::size_t>(whole(0, static_cast<int>(from.size()) - 1))];
        return text;
    }

private:
    std::mt19937 m_engine;
};

/// GS1 General Specifications 7.9: weights 3 and 1 from the right.
std::string withCheck(const std::string& digits)
{
    int sum = 0;
    int weight = 3;
    for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit, weight = 4 - weight)
        sum += (*digit - '0') * weight;
    return digits + static_cast<char>('0' + (10 - sum % 10) % 10);
}

/// The check digit of a UPC-E is that of the UPC-A it stands for (GS1 General Specifications 5.2.2.4.2).
std::string upcE(const std::string& six)
{
    const char last = six[5];
    std::string wide;
    if (last <= '2')
        wide = six.substr(0, 2) + last + "0000" + six.substr(2, 3);
    else if (last == '3')
        wide = six.substr(0, 3) + "00000" + six.substr(3, 2);
    else if (last == '4')
        wide = six.substr(0, 4) + "00000" + six.substr(4, 1);
    else
        wide = six.substr(0, 5) + "0000" + last;
    return '0' + six + withCheck('0' + wide).back();
}

struct Drawing {
    QImage image;
    std::string text;
};

Drawing drawn(int kind, Chance& chance)
{
    const auto draw = [](Symbology symbology, const std::string& data) {
        return drawSymbol(symbology, QByteArray::fromStdString(data), 1.5F);
    };
    const std::string item = withCheck("0952" + chance.digits(9)); // 952: the prefix for demonstrations
    const std::string lot = chance.letters(chance.whole(4, 8));
    const std::string elements = "[01]" + item + "[10]" + lot + "[17]270630";
    const std::string message = "01" + item + "10" + lot + "\x1d" + "17270630";
    switch (kind) {
    case 0:
        return { draw(Symbology::Ean13, item.substr(1, 12)), item.substr(1) };
    case 1: {
        const std::string seven = "952" + chance.digits(4);
        return { draw(Symbology::Ean8, seven), withCheck(seven) };
    }
    case 2: {
        const std::string eleven = "4" + chance.digits(10);
        return { draw(Symbology::UpcA, eleven), withCheck(eleven) };
    }
    case 3: {
        std::string six; // without the runs of zeros that another shortening is for
        for (int i = 0; i < 5; ++i)
            six += static_cast<char>('3' + chance.whole(0, 6));
        six += chance.digits(1);
        return { draw(Symbology::UpcE, '0' + six), upcE(six) };
    }
    case 4: {
        const std::string thirteen = "1" + item.substr(1, 12);
        return { draw(Symbology::Itf14, thirteen), withCheck(thirteen) };
    }
    case 5: {
        const std::string text = chance.letters(chance.whole(6, 14));
        return { draw(Symbology::Code128, text), text };
    }
    case 6:
        return { draw(Symbology::Gs1_128, elements), message };
    case 7: {
        const std::string text = chance.letters(chance.whole(6, 20));
        return { draw(Symbology::DataMatrix, text), text };
    }
    case 8:
        return { draw(Symbology::Gs1DataMatrix, elements), message };
    case 9: {
        const std::string text = chance.letters(chance.whole(6, 40));
        return { draw(Symbology::Qr, text), text };
    }
    case 10:
        return { draw(Symbology::Gs1Qr, elements), message };
    default:
        return { draw(Symbology::DataBar, item.substr(0, 13)), "01" + item };
    }
}

/// Round a bottle whose axis stands across the symbol or along it: what lies to the sides is seen aslant and
/// gets less light.
QImage curved(const QImage& symbol, double halfAngle, bool axisUpright)
{
    QImage from = axisUpright ? symbol : symbol.transformed(QTransform().rotate(90));
    const double seen = std::sin(halfAngle) / halfAngle;
    QImage to(std::max(1, int(from.width() * seen)), from.height(), QImage::Format_Grayscale8);
    for (int x = 0; x < to.width(); ++x) {
        const double across = (2.0 * (x + 0.5) / to.width() - 1) * std::sin(halfAngle);
        const double angle = std::asin(across);
        const double place = (angle / halfAngle + 1) / 2 * from.width() - 0.5;
        const int left = std::clamp(int(std::floor(place)), 0, from.width() - 1);
        const int right = std::min(left + 1, from.width() - 1);
        const double share = std::clamp(place - left, 0.0, 1.0);
        const double light = 0.35 + 0.65 * std::cos(angle);
        for (int y = 0; y < to.height(); ++y) {
            const uchar* row = from.constScanLine(y);
            to.scanLine(y)[x] = static_cast<uchar>((row[left] * (1 - share) + row[right] * share) * light);
        }
    }
    return axisUpright ? to : to.transformed(QTransform().rotate(-90));
}

/// A run of weights over the pixels around each, along x and then along y.
QImage weighted(const QImage& picture, const std::vector<double>& weights, bool bothWays)
{
    const int reach = static_cast<int>(weights.size() / 2);
    const auto along = [&](const QImage& from) {
        QImage to(from.size(), QImage::Format_Grayscale8);
        for (int y = 0; y < from.height(); ++y) {
            const uchar* row = from.constScanLine(y);
            uchar* out = to.scanLine(y);
            for (int x = 0; x < from.width(); ++x) {
                double sum = 0;
                for (int i = -reach; i <= reach; ++i)
                    sum += weights[static_cast<std::size_t>(i + reach)]
                        * row[std::clamp(x + i, 0, from.width() - 1)];
                out[x] = static_cast<uchar>(std::clamp(std::lround(sum), 0L, 255L));
            }
        }
        return to;
    };
    QImage out = along(picture);
    if (bothWays)
        out = along(out.transformed(QTransform().rotate(90))).transformed(QTransform().rotate(-90));
    return out.convertToFormat(QImage::Format_Grayscale8);
}

QImage outOfFocus(const QImage& picture, double sigma)
{
    const int reach = static_cast<int>(std::ceil(sigma * 3));
    std::vector<double> weights;
    double sum = 0;
    for (int i = -reach; i <= reach; ++i) {
        weights.push_back(std::exp(-i * i / (2 * sigma * sigma)));
        sum += weights.back();
    }
    for (double& weight : weights)
        weight /= sum;
    return weighted(picture, weights, true);
}

QImage withGlare(const QImage& picture, QPointF middle, double radius, double strength)
{
    QImage out = picture;
    for (int y = 0; y < out.height(); ++y) {
        uchar* row = out.scanLine(y);
        for (int x = 0; x < out.width(); ++x) {
            const double away
                = ((x - middle.x()) * (x - middle.x()) + (y - middle.y()) * (y - middle.y()) * 4)
                / (radius * radius);
            row[x] = static_cast<uchar>(std::min(255.0, row[x] + strength * std::exp(-away)));
        }
    }
    return out;
}

/// A label's other print and a bench around it.
QImage bench(Chance& chance)
{
    QImage picture(800, 600, QImage::Format_Grayscale8);
    picture.fill(chance.whole(120, 220));
    QPainter painter(&picture);
    for (int i = chance.whole(3, 14); i > 0; --i) {
        const int brightness = chance.whole(30, 240);
        painter.fillRect(
            QRectF(chance.any(-100, 800), chance.any(-60, 600), chance.any(10, 300), chance.any(2, 60)),
            QColor(brightness, brightness, brightness));
    }
    return picture;
}

} // namespace

const char* trouble(int number) { return troubles[number]; }
const char* distortedKind(int number) { return kinds[number]; }

DistortedSymbol distortedSymbol(unsigned set, unsigned number)
{
    const int kind = static_cast<int>(number) % distortedKinds;
    const int which = static_cast<int>(number) / distortedKinds % distortedTroubles;
    const std::string_view what = troubles[which];
    Chance chance(set, number);
    auto [symbol, text] = drawn(kind, chance);

    if (what == "curved bottle")
        symbol = curved(symbol, chance.any(0.6, 1.35), chance.oneIn(2));
    if (what == "partly covered") {
        QPainter painter(&symbol);
        painter.setPen(Qt::NoPen);
        const int brightness = chance.whole(0, 255);
        painter.setBrush(QColor(brightness, brightness, brightness));
        const double w = symbol.width();
        const double h = symbol.height();
        const double share = chance.any(0.1, 0.5);
        if (chance.oneIn(2)) // a thumb from above or below
            painter.drawRect(QRectF(0, chance.oneIn(2) ? 0 : h * (1 - share), w, h * share));
        else
            painter.drawEllipse(QPointF(chance.any(0, w), chance.any(0, h)), w * share / 3, h * share / 3);
    }
    if (what == "inverted")
        symbol.invertPixels();

    const double w = symbol.width();
    const double h = symbol.height();
    const QPolygonF corners { QPointF(0, 0), QPointF(w, 0), QPointF(w, h), QPointF(0, h) };
    const double bend = std::min(w, h) * (what == "perspective" ? chance.any(0.1, 0.35) : 0.02);
    QPolygonF seen;
    for (const QPointF& corner : corners)
        seen << corner + QPointF(chance.any(-bend, bend), chance.any(-bend, bend));
    QTransform transform;
    QTransform::quadToQuad(corners, seen, transform);
    const double fits = std::min(1.0, 600 / std::hypot(w, h));
    const double size = fits * (what == "small" ? chance.any(0.25, 0.7) : chance.any(0.75, 1.3));
    const double degrees
        = chance.oneIn(2) ? chance.any(-12, 12) + 90 * chance.whole(0, 3) : chance.any(0, 360);
    const QPointF place(400 + chance.any(-90, 90), 300 + chance.any(-60, 60));
    transform *= QTransform::fromTranslate(-w / 2, -h / 2) * QTransform::fromScale(size, size)
        * QTransform().rotate(degrees) * QTransform::fromTranslate(place.x(), place.y());

    QImage picture = bench(chance);
    {
        QPainter painter(&picture);
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setTransform(transform);
        painter.setPen(Qt::NoPen);
        const int paper = what == "inverted" ? 0 : 255;
        painter.setBrush(QColor(paper, paper, paper));
        painter.drawRect(QRectF(-w * 0.06, -h * 0.06, w * 1.12, h * 1.12));
        painter.drawImage(0, 0, symbol);
    }
    const double module = 3 * size; // pixels
    if (what == "out of focus")
        picture = outOfFocus(picture, module * chance.any(0.3, 1.1));
    if (what == "moved") {
        const int length = std::max(3, static_cast<int>(module * chance.any(0.8, 2.4)) | 1);
        picture
            = weighted(picture, std::vector<double>(static_cast<std::size_t>(length), 1.0 / length), false);
    }
    if (what == "noise")
        picture = noisy(picture, chance.any(10, 60), number);
    if (what == "low contrast") {
        const int black = chance.whole(40, 190);
        picture = noisy(dimmed(picture, black, black + chance.whole(10, 50)), 1.5, number);
    }
    if (what == "low light")
        picture = noisy(shaded(dimmed(picture, 6, chance.whole(22, 80)), chance.any(0.3, 1)), 4, number);
    if (what == "glare")
        picture = withGlare(picture, place + QPointF(chance.any(-90, 90), chance.any(-60, 60)),
            chance.any(60, 200), chance.any(120, 400));
    // No camera is without some of both.
    picture = noisy(outOfFocus(picture, 0.5), 2, number + 1);
    return { picture, text, kinds[kind], troubles[which] };
}

} // namespace gw::test
