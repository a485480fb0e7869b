#include <QBuffer>
#include <QImage>
#include <QTest>
#include <QVideoFrame>
#include <QVideoFrameFormat>

#include <cstring>

#include "scan/luminance.h"

using namespace gw;

namespace {

constexpr int width = 7; // odd, so that rows have padding
constexpr int height = 4;

int brightnessAt(int x, int y) { return 20 + x * 30 + y * 5; }

/// A frame of the format whose brightness at x, y is brightnessAt(); every other byte is 0xAA.
QVideoFrame frameOf(QVideoFrameFormat::PixelFormat format, int first, int step)
{
    QVideoFrame frame(QVideoFrameFormat(QSize(width, height), format));
    if (!frame.map(QVideoFrame::WriteOnly))
        qFatal("a frame in memory cannot be mapped");
    for (int plane = 0; plane < frame.planeCount(); ++plane)
        std::memset(frame.bits(plane), 0xAA, std::size_t(frame.mappedBytes(plane)));
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x)
            frame.bits(0)[y * frame.bytesPerLine(0) + x * step + first] = uchar(brightnessAt(x, y));
    frame.unmap();
    return frame;
}

} // namespace

class LuminanceTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void planesOfBrightness_areTakenAsTheyAre_data()
    {
        QTest::addColumn<QVideoFrameFormat::PixelFormat>("format");
        QTest::addColumn<int>("first");
        QTest::addColumn<int>("step");
        // Layouts as in the Qt documentation of QVideoFrameFormat::PixelFormat.
        QTest::newRow("Y8") << QVideoFrameFormat::Format_Y8 << 0 << 1;
        QTest::newRow("NV12") << QVideoFrameFormat::Format_NV12 << 0 << 1;
        QTest::newRow("NV21") << QVideoFrameFormat::Format_NV21 << 0 << 1;
        QTest::newRow("YUV420P") << QVideoFrameFormat::Format_YUV420P << 0 << 1;
        QTest::newRow("YV12") << QVideoFrameFormat::Format_YV12 << 0 << 1;
        QTest::newRow("YUYV") << QVideoFrameFormat::Format_YUYV << 0 << 2;
        QTest::newRow("UYVY") << QVideoFrameFormat::Format_UYVY << 1 << 2;
        QTest::newRow("Y16") << QVideoFrameFormat::Format_Y16 << 1 << 2;
        QTest::newRow("P010") << QVideoFrameFormat::Format_P010 << 1 << 2;
    }

    void planesOfBrightness_areTakenAsTheyAre()
    {
        QFETCH(QVideoFrameFormat::PixelFormat, format);
        QFETCH(int, first);
        QFETCH(int, step);
        Luminance luminance;
        QVERIFY(copyLuminance(frameOf(format, first, step), luminance));
        QCOMPARE(luminance.width, width);
        QCOMPARE(luminance.height, height);
        QCOMPARE(luminance.bytes.size(), std::size_t(width * height));
        for (int y = 0; y < height; ++y)
            for (int x = 0; x < width; ++x)
                QCOMPARE(int(luminance.bytes[std::size_t(y * width + x)]), brightnessAt(x, y));
    }

    void colour_becomesBrightness_data()
    {
        QTest::addColumn<QVideoFrameFormat::PixelFormat>("format");
        QTest::addColumn<QByteArray>("pixel");
        QTest::newRow("BGRA8888") << QVideoFrameFormat::Format_BGRA8888 << QByteArray("\x20\x60\xC0\xFF", 4);
        QTest::newRow("BGRX8888") << QVideoFrameFormat::Format_BGRX8888 << QByteArray("\x20\x60\xC0\xFF", 4);
        QTest::newRow("RGBA8888") << QVideoFrameFormat::Format_RGBA8888 << QByteArray("\xC0\x60\x20\xFF", 4);
        QTest::newRow("RGBX8888") << QVideoFrameFormat::Format_RGBX8888 << QByteArray("\xC0\x60\x20\xFF", 4);
        QTest::newRow("ARGB8888") << QVideoFrameFormat::Format_ARGB8888 << QByteArray("\xFF\xC0\x60\x20", 4);
        QTest::newRow("ABGR8888") << QVideoFrameFormat::Format_ABGR8888 << QByteArray("\xFF\x20\x60\xC0", 4);
    }

    void colour_becomesBrightness()
    {
        QFETCH(QVideoFrameFormat::PixelFormat, format);
        QFETCH(QByteArray, pixel);
        QVideoFrame frame(QVideoFrameFormat(QSize(width, height), format));
        QVERIFY(frame.map(QVideoFrame::WriteOnly));
        for (int y = 0; y < height; ++y)
            for (int x = 0; x < width; ++x)
                std::memcpy(frame.bits(0) + y * frame.bytesPerLine(0) + x * 4, pixel.constData(), 4);
        frame.unmap();
        Luminance luminance;
        QVERIFY(copyLuminance(frame, luminance));
        // Red 192, green 96, blue 32 by the weights 0.299, 0.587, 0.114 of ITU-R BT.601: 117.4.
        for (const auto brightness : luminance.bytes)
            QVERIFY2(std::abs(int(brightness) - 117) <= 1, qPrintable(QString::number(brightness)));
    }

    void jpeg_isUnpacked()
    {
        QImage picture(64, 48, QImage::Format_Grayscale8);
        picture.fill(180);
        QByteArray bytes;
        QBuffer buffer(&bytes);
        QVERIFY(buffer.open(QIODevice::WriteOnly) && picture.save(&buffer, "JPG"));
        // A frame of that format has room for as many bytes as the tool kit gives it.
        QVideoFrame frame(QVideoFrameFormat(QSize(64, 48), QVideoFrameFormat::Format_Jpeg));
        if (!frame.map(QVideoFrame::WriteOnly) || frame.mappedBytes(0) < bytes.size())
            QSKIP("this Qt has no JPEG frames in memory");
        std::memcpy(frame.bits(0), bytes.constData(), std::size_t(bytes.size()));
        frame.unmap();
        Luminance luminance;
        QVERIFY(copyLuminance(frame, luminance));
        QCOMPARE(luminance.width, 64);
        QVERIFY(std::abs(int(luminance.bytes[700]) - 180) <= 2);
    }

    void frameWithoutPixels_isNot()
    {
        Luminance luminance;
        QVERIFY(!copyLuminance(QVideoFrame(), luminance));
    }

    void sameBuffer_isFilledAgain()
    {
        Luminance luminance;
        QVERIFY(copyLuminance(frameOf(QVideoFrameFormat::Format_Y8, 0, 1), luminance));
        const auto* bytes = luminance.bytes.data();
        QVERIFY(copyLuminance(frameOf(QVideoFrameFormat::Format_NV12, 0, 1), luminance));
        QCOMPARE(luminance.bytes.data(), bytes);
    }

    void rotationOfTheFrame_isKept()
    {
        QVideoFrame frame = frameOf(QVideoFrameFormat::Format_Y8, 0, 1);
#if QT_VERSION >= QT_VERSION_CHECK(6, 7, 0)
        frame.setRotation(QtVideo::Rotation::Clockwise90);
#else
        frame.setRotationAngle(QVideoFrame::Rotation90);
#endif
        Luminance luminance;
        QVERIFY(copyLuminance(frame, luminance));
        QCOMPARE(luminance.rotation, 90);
    }
};

QTEST_GUILESS_MAIN(LuminanceTest)
#include "tst_luminance.moc"
