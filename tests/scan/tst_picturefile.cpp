// Files as people hand them over: photographs of labels, and files that are no pictures at all.
#include <QBuffer>
#include <QElapsedTimer>
#include <QFile>
#include <QImageWriter>
#include <QTemporaryDir>
#include <QTest>

#include <sys/stat.h>

#include "scan/picturefile.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

constexpr auto text = "GW7K4M9QX";

QImage label(QSize size = QSize(500, 300))
{
    return placed(drawSymbol(Symbology::DataMatrix, text, 4), size);
}

QByteArray encoded(const QImage& picture, const char* format)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!QImageWriter(&buffer, format).write(picture))
        qFatal("cannot write %s", format);
    return bytes;
}

} // namespace

class PictureFile : public QObject {
    Q_OBJECT

private:
    QTemporaryDir m_dir;

    QString file(const QString& name, const QByteArray& bytes)
    {
        QFile out(m_dir.filePath(name));
        if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size())
            qFatal("cannot write a test file");
        return out.fileName();
    }

    static void verifyRead(const QString& path)
    {
        const auto symbols = readPicture(path);
        QVERIFY2(symbols, symbols ? "" : symbols.error().sentence.c_str());
        QCOMPARE(symbols->size(), std::size_t(1));
        QCOMPARE(symbols->front().text, std::string(text));
    }

    static void verifyRefused(const QString& path, ErrorCode code)
    {
        const auto symbols = readPicture(path);
        QVERIFY(!symbols);
        QCOMPARE(int(symbols.error().code), int(code));
        const QString sentence = QString::fromStdString(symbols.error().sentence);
        QVERIFY2(sentence.endsWith(u'.'), qPrintable(sentence));
        QVERIFY2(sentence.contains(u';'), qPrintable(sentence)); // what is wrong; what to do
        QVERIFY2(!sentence.contains(u'\n'), qPrintable(sentence));
    }

private Q_SLOTS:
    void pictureOfEachKind_isRead_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QByteArray>("bytes");
        const QImage grey = label();
        QTest::newRow("png") << "a.png" << encoded(grey, "png");
        QTest::newRow("jpeg") << "a.jpg" << encoded(grey, "jpg");
        QTest::newRow("bmp") << "a.bmp" << encoded(grey, "bmp");
        QTest::newRow("ppm") << "a.ppm" << encoded(grey.convertToFormat(QImage::Format_RGB32), "ppm");
        QTest::newRow("one bit") << "b.png" << encoded(grey.convertToFormat(QImage::Format_Mono), "png");
        QTest::newRow("a palette") << "p.png"
                                   << encoded(grey.convertToFormat(QImage::Format_Indexed8), "png");
        QTest::newRow("16 bits of grey")
            << "g.png" << encoded(grey.convertToFormat(QImage::Format_Grayscale16), "png");
        QTest::newRow("16 bits of colour")
            << "c.png" << encoded(grey.convertToFormat(QImage::Format_RGBX64), "png");
        QTest::newRow("a JPEG that calls itself PNG") << "liar.png" << encoded(grey, "jpg");
        QTest::newRow("no ending") << "picture" << encoded(grey, "png");
    }

    void pictureOfEachKind_isRead()
    {
        QFETCH(QString, name);
        QFETCH(QByteArray, bytes);
        verifyRead(file(name, bytes));
    }

    // Print shops hand out four-colour JPEG. Recorded file: drawn with zint 2.11.1, separated with
    // ImageMagick 6.9.11.
    void cmykJpeg_isRead() { verifyRead(QStringLiteral(GW_TEST_DATA "/pictures/label_cmyk.jpg")); }

    // Of a picture that moves the first frame counts. Recorded likewise; the others are blank.
    void animatedPicture_isReadByItsFirstFrame()
    {
        const auto symbols = readPicture(QStringLiteral(GW_TEST_DATA "/pictures/animated.gif"));
        QVERIFY2(symbols, symbols ? "" : symbols.error().sentence.c_str());
        QCOMPARE(symbols->size(), std::size_t(1));
        QCOMPARE(symbols->front().text, std::string("01095201234567881527020010L/7-2"));
    }

    // What is there of a JPEG that was cut may show a symbol, or not; there is no third way.
    void jpegCutAnywhere_isReadOrRefused()
    {
        const QByteArray whole = encoded(label(), "jpg");
        int refused = 0;
        for (int part = 1; part < 8; ++part) {
            const auto symbols
                = readPicture(file(QStringLiteral("cut.jpg"), whole.first(whole.size() * part / 8)));
            if (symbols) {
                QCOMPARE(symbols->front().text, std::string(text));
            } else {
                ++refused;
                QVERIFY(QString::fromStdString(symbols.error().sentence).endsWith(u'.'));
            }
        }
        QVERIFY(refused > 0);
    }

    // A phone stores its picture as the sensor saw it and says in the file how to turn it. Recorded likewise.
    void pictureTurnedByItsTag_isUpright()
    {
        const QString path = QStringLiteral(GW_TEST_DATA "/pictures/label_turned.jpg");
        verifyRead(path);
        const auto picture = loadPicture(path);
        QVERIFY(picture);
        QVERIFY2(picture->width() > picture->height(), "stored 200 x 300, tagged as turned by a quarter");
    }

    void blackOnTransparent_isReadAsOnPaper()
    {
        QImage clear = label().convertToFormat(QImage::Format_ARGB32);
        for (int y = 0; y < clear.height(); ++y)
            for (int x = 0; x < clear.width(); ++x)
                if (qGray(clear.pixel(x, y)) > 128)
                    clear.setPixel(x, y, qRgba(0, 0, 0, 0));
        verifyRead(file(QStringLiteral("clear.png"), encoded(clear, "png")));
    }

    void symbolWithoutQuietZone_isRead()
    {
        QImage tight = drawSymbol(Symbology::DataMatrix, text, 2);
        QRect black;
        for (int y = 0; y < tight.height(); ++y)
            for (int x = 0; x < tight.width(); ++x)
                if (qGray(tight.pixel(x, y)) < 128)
                    black |= QRect(x, y, 1, 1);
        tight = tight.copy(black);
        QCOMPARE(qGray(tight.pixel(0, 0)), 0); // the solid edge of a Data Matrix
        verifyRead(file(QStringLiteral("tight.png"), encoded(tight, "png")));
    }

    void photographOfTwelveMegapixels_isReadInSeconds()
    {
        QElapsedTimer timer;
        timer.start();
        verifyRead(file(QStringLiteral("large.jpg"), encoded(noisy(label(QSize(4000, 3000)), 6), "jpg")));
        qInfo("read in %lld ms, with drawing it", static_cast<long long>(timer.elapsed()));
    }

    void pictureWithoutSymbol_saysSo_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QImage pixel(1, 1, QImage::Format_RGB32);
        pixel.fill(Qt::black);
        QImage line(3000, 1, QImage::Format_Grayscale8);
        line.fill(90);
        QImage clear(40, 40, QImage::Format_ARGB32);
        clear.fill(Qt::transparent);
        QImage white(800, 600, QImage::Format_Grayscale8);
        white.fill(255);
        QTest::newRow("one pixel") << encoded(pixel, "png");
        QTest::newRow("one row") << encoded(line, "png");
        QTest::newRow("nothing but transparent") << encoded(clear, "png");
        QTest::newRow("white") << encoded(white, "png");
        const QImage half = label().copy(0, 0, 250, 300); // the left half of the symbol
        QTest::newRow("half a symbol") << encoded(half, "png");
    }

    void pictureWithoutSymbol_saysSo()
    {
        QFETCH(QByteArray, bytes);
        verifyRefused(file(QStringLiteral("none.png"), bytes), ErrorCode::NoSymbol);
    }

    void brokenFile_isRefused_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QByteArray>("bytes");
        const QByteArray png = encoded(noisy(label(), 10), "png");
        QByteArray scrambled = png;
        for (qsizetype i = 60; i < scrambled.size(); i += 7)
            scrambled[i] = char(scrambled[i] ^ 0x5a);
        QTest::newRow("empty") << "empty.png" << QByteArray();
        QTest::newRow("PNG cut in the middle") << "cut.png" << png.first(png.size() / 2);
        QTest::newRow("PNG cut in its head") << "head.png" << png.first(20);
        QTest::newRow("PNG with wrong bytes") << "wrong.png" << scrambled;
        QTest::newRow("text that calls itself PNG") << "text.png" << QByteArray("GW7K4M9QX, not a picture\n");
        QTest::newRow("zeroes") << "zero.png" << QByteArray(5000, '\0');
        QTest::newRow("JPEG cut in its head") << "cut.jpg" << encoded(label(), "jpg").first(100);
        QTest::newRow("drawing as text") << "a.svg"
                                         << QByteArray("<svg xmlns='http://www.w3.org/2000/svg' width='9' "
                                                       "height='9'><rect width='5' height='5'/></svg>");
    }

    void brokenFile_isRefused()
    {
        QFETCH(QString, name);
        QFETCH(QByteArray, bytes);
        verifyRefused(file(name, bytes), ErrorCode::FileUnreadable);
    }

    void whatIsNotAFile_isRefused()
    {
        verifyRefused(m_dir.filePath(QStringLiteral("missing.png")), ErrorCode::FileUnreadable);
        verifyRefused(m_dir.path(), ErrorCode::FileUnreadable);
        verifyRefused(QString(), ErrorCode::FileUnreadable);
        const QString pipe = m_dir.filePath(QStringLiteral("pipe.png"));
        QCOMPARE(mkfifo(QFile::encodeName(pipe).constData(), 0600), 0);
        verifyRefused(pipe, ErrorCode::FileUnreadable); // and does not wait for a writer
    }

    // A few kilobytes that unfold to 3.6 thousand million pixels must cost neither memory nor time.
    void pictureThatUnfoldsWithoutEnd_isRefused()
    {
        QByteArray png = encoded(QImage(1, 1, QImage::Format_Mono), "png");
        // Width and height stand at bytes 16 and 20, big-endian, the check sum of that chunk at 29 (PNG,
        // ISO/IEC 15948).
        const QByteArray header
            = QByteArray::fromHex("49484452") + QByteArray::fromHex("0000ea600000ea60") + png.mid(24, 5);
        quint32 crc = 0xffffffffU;
        for (const char byte : header) {
            crc ^= static_cast<uchar>(byte);
            for (int bit = 0; bit < 8; ++bit)
                crc = (crc >> 1) ^ (0xedb88320U & (0U - (crc & 1U)));
        }
        crc = ~crc;
        png.replace(12, 17, header);
        for (int i = 0; i < 4; ++i)
            png[29 + i] = char(crc >> (24 - 8 * i));
        QElapsedTimer timer;
        timer.start();
        verifyRefused(file(QStringLiteral("bomb.png"), png), ErrorCode::FileUnreadable);
        QVERIFY(timer.elapsed() < 1000);
    }
};

QTEST_GUILESS_MAIN(PictureFile)
#include "tst_picturefile.moc"
