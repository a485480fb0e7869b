#include "scan/luminance.h"

#include <cstring>
#include <optional>

#include <QImage>
#include <QVideoFrame>
#include <QVideoFrameFormat>

namespace gw {

namespace {

/// Where the brightness of a pixel stands in the first plane.
struct Packing {
    int first;
    int step;
};

std::optional<Packing> packingOf(QVideoFrameFormat::PixelFormat format)
{
    switch (format) {
    case QVideoFrameFormat::Format_Y8:
    case QVideoFrameFormat::Format_YUV420P:
    case QVideoFrameFormat::Format_YUV422P:
    case QVideoFrameFormat::Format_YV12:
    case QVideoFrameFormat::Format_NV12:
    case QVideoFrameFormat::Format_NV21:
    case QVideoFrameFormat::Format_IMC1:
    case QVideoFrameFormat::Format_IMC2:
    case QVideoFrameFormat::Format_IMC3:
    case QVideoFrameFormat::Format_IMC4:
        return Packing { 0, 1 };
    case QVideoFrameFormat::Format_YUYV:
        return Packing { 0, 2 };
    case QVideoFrameFormat::Format_UYVY:
    // Two bytes a pixel, the lower one first: the upper one is brightness enough.
    case QVideoFrameFormat::Format_Y16:
    case QVideoFrameFormat::Format_P010:
    case QVideoFrameFormat::Format_P016:
        return Packing { 1, 2 };
    default:
        return {};
    }
}

/// Where red, green and blue stand in the four bytes of a pixel.
struct Colours {
    int red;
    int green;
    int blue;
};

std::optional<Colours> coloursOf(QVideoFrameFormat::PixelFormat format)
{
    switch (format) {
    case QVideoFrameFormat::Format_ARGB8888:
    case QVideoFrameFormat::Format_ARGB8888_Premultiplied:
    case QVideoFrameFormat::Format_XRGB8888:
        return Colours { 1, 2, 3 };
    case QVideoFrameFormat::Format_BGRA8888:
    case QVideoFrameFormat::Format_BGRA8888_Premultiplied:
    case QVideoFrameFormat::Format_BGRX8888:
        return Colours { 2, 1, 0 };
    case QVideoFrameFormat::Format_ABGR8888:
    case QVideoFrameFormat::Format_XBGR8888:
        return Colours { 3, 2, 1 };
    case QVideoFrameFormat::Format_RGBA8888:
    case QVideoFrameFormat::Format_RGBX8888:
        return Colours { 0, 1, 2 };
    default:
        return {};
    }
}

void setSize(Luminance& into, int width, int height)
{
    into.width = width;
    into.height = height;
    into.bytes.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
}

std::uint8_t* row(Luminance& into, int y)
{
    return into.bytes.data() + static_cast<std::ptrdiff_t>(y) * into.width;
}

/// Copies row by row; false for a frame that claims more than it holds, which would be read past its end.
template <class CopyRow>
bool copyRows(const QVideoFrame& frame, int bytesPerPixel, Luminance& into, CopyRow copyRow)
{
    const int width = frame.width();
    const int height = frame.height();
    const qint64 stride = frame.bytesPerLine(0);
    const qint64 used = qint64(width) * bytesPerPixel;
    if (stride < used || stride * (height - 1) + used > frame.mappedBytes(0))
        return false;
    setSize(into, width, height);
    for (int y = 0; y < height; ++y)
        copyRow(frame.bits(0) + y * stride, row(into, y), width);
    return true;
}

bool copyPacked(const QVideoFrame& frame, Packing packing, Luminance& into)
{
    if (packing.step == 1)
        return copyRows(frame, 1, into, [](const uchar* from, std::uint8_t* to, int width) {
            std::memcpy(to, from, static_cast<std::size_t>(width));
        });
    return copyRows(frame, packing.step, into, [packing](const uchar* from, std::uint8_t* to, int width) {
        for (int x = 0; x < width; ++x)
            to[x] = from[x * packing.step + packing.first];
    });
}

/// Weights of ITU-R BT.601 in 1024ths.
bool copyColours(const QVideoFrame& frame, Colours at, Luminance& into)
{
    return copyRows(frame, 4, into, [at](const uchar* from, std::uint8_t* to, int width) {
        for (int x = 0; x < width; ++x, from += 4)
            to[x] = static_cast<std::uint8_t>(
                (306 * from[at.red] + 601 * from[at.green] + 117 * from[at.blue]) >> 10);
    });
}

bool copyImage(const QImage& image, Luminance& into)
{
    const QImage grey = image.convertToFormat(QImage::Format_Grayscale8);
    if (grey.isNull())
        return false;
    setSize(into, grey.width(), grey.height());
    for (int y = 0; y < grey.height(); ++y)
        std::memcpy(row(into, y), grey.constScanLine(y), static_cast<std::size_t>(grey.width()));
    return true;
}

} // namespace

bool copyLuminance(const QVideoFrame& original, Luminance& into)
{
    QVideoFrame frame = original; // shares the pixels; mapping needs one that is not const
    if (!frame.isValid() || frame.width() < 1 || frame.height() < 1)
        return false;
#if QT_VERSION >= QT_VERSION_CHECK(6, 7, 0)
    into.rotation = static_cast<int>(frame.rotation());
#else
    into.rotation = static_cast<int>(frame.rotationAngle());
#endif
    into.mirrored = frame.mirrored();

    // Not through QVideoFrame::toImage(): it may ask the graphics card, from a thread that has none (Qt 6.4).
    const auto format = frame.pixelFormat();
    const auto packing = packingOf(format);
    const auto colours = coloursOf(format);
    if ((!packing && !colours && format != QVideoFrameFormat::Format_Jpeg)
        || !frame.map(QVideoFrame::ReadOnly))
        return false;
    bool copied = false;
    if (packing)
        copied = copyPacked(frame, *packing, into);
    else if (colours)
        copied = copyColours(frame, *colours, into);
    else
        copied = copyImage(QImage::fromData(frame.bits(0), frame.mappedBytes(0), "JPG"), into);
    frame.unmap();
    return copied;
}

} // namespace gw
