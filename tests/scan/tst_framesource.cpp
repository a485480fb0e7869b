// The whole way of a frame: file or player, sink, scanner, reading. Videos are made here with GStreamer's own
// tools.
#include <QCameraDevice>
#include <QMediaDevices>
#include <QProcess>
#include <QSignalSpy>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include "scan/framesource.h"
#include "scan/videoscanner.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

QImage label(const QByteArray& text)
{
    return placed(drawSymbol(Symbology::Gs1DataMatrix, text, 4), QSize(640, 480), 240);
}

constexpr auto brackets = "[01]09520123456788[10]H-2291[17]270630";
const std::string text = "010952012345678810H-2291\x1d"
                         "17270630";

} // namespace

class FrameSourceTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir m_dir;
    QString m_picture;

    struct Chain {
        QVideoSink sink;
        VideoScanner scanner;
        FrameSource source;
        QSignalSpy read { &scanner, &VideoScanner::read };
        QSignalSpy error { &source, &FrameSource::error };
        Chain()
        {
            scanner.setVideoSink(&sink);
            source.setVideoSink(&sink);
        }
    };

    static void verifyOneError(const Chain& chain, ErrorCode code)
    {
        QCOMPARE(chain.error.size(), 1);
        const auto error = chain.error.first().first().value<Error>();
        QCOMPARE(int(error.code), int(code));
        QVERIFY2(QString::fromStdString(error.sentence).endsWith(u'.'), error.sentence.c_str());
        QVERIFY(!chain.source.isActive());
    }

private Q_SLOTS:
    void initTestCase()
    {
        m_picture = m_dir.filePath(QStringLiteral("label.png"));
        QVERIFY(label(brackets).save(m_picture));
    }

    void pictureAsCamera_isRead()
    {
        Chain chain;
        QSignalSpy active(&chain.source, &FrameSource::activeChanged);
        chain.source.open(m_picture);
        QVERIFY(chain.source.isActive());
        QCOMPARE(active.size(), 1);
        QTRY_COMPARE(chain.read.size(), 1);
        QCOMPARE(chain.read.first().first().value<Symbol>().text, text);
        QTRY_VERIFY_WITH_TIMEOUT(chain.scanner.statistics().decoded >= 4, 5000); // it goes on
        QCOMPARE(chain.read.size(), 1);
        chain.source.close();
        QVERIFY(!chain.source.isActive());
        const auto seen = chain.scanner.statistics().seen;
        QTest::qWait(500);
        QCOMPARE(chain.scanner.statistics().seen, seen);
    }

    void weakSymbologyAsStill_isRead()
    {
        const QString path = m_dir.filePath(QStringLiteral("itf.png"));
        QVERIFY(placed(drawSymbol(Symbology::Itf14, "1952012345678"), QSize(640, 480)).save(path));
        Chain chain;
        chain.source.open(path);
        QTRY_COMPARE(chain.read.size(), 1);
        QVERIFY(chain.scanner.statistics().decoded >= 2);
    }

    void sinkSetAfterwards_getsFrames()
    {
        QVideoSink sink;
        FrameSource source;
        source.open(m_picture);
        QVERIFY(!source.isActive());
        QSignalSpy frames(&sink, &QVideoSink::videoFrameChanged);
        source.setVideoSink(&sink);
        QVERIFY(source.isActive());
        QTRY_VERIFY(frames.size() >= 2);
    }

    void video_isPlayedOverAndOver_data()
    {
        QTest::addColumn<QString>("name");
        QTest::newRow("WebM, VP8") << "label.webm";
        QTest::newRow("AVI, Motion JPEG") << "label.avi";
    }

    void video_isPlayedOverAndOver()
    {
        QFETCH(QString, name);
        const QString video = m_dir.filePath(name);
        const int made = QProcess::execute(QStringLiteral(GW_SOURCE_DIR "/tests/support/labelvideo.sh"),
            { m_picture, video, QStringLiteral("1") });
        QVERIFY2(made == 0,
            "gst-launch-1.0 and the good plugins are needed (gstreamer1.0-tools, gstreamer1.0-plugins-good)");
        Chain chain;
        chain.source.open(video);
        QTRY_COMPARE_WITH_TIMEOUT(chain.read.size(), 1, 15000);
        QCOMPARE(chain.read.first().first().value<Symbol>().text, text);
        QVERIFY(chain.source.isActive());
        // One second of ten frames; more than that is a second round.
        QTRY_VERIFY_WITH_TIMEOUT(chain.scanner.statistics().seen > 15, 15000);
        QCOMPARE(chain.read.size(), 1);
        QCOMPARE(chain.error.size(), 0);
    }

    void missingFile_isAnError()
    {
        Chain chain;
        chain.source.open(m_dir.filePath(QStringLiteral("missing.webm")));
        verifyOneError(chain, ErrorCode::FileUnreadable);
    }

    void fileThatIsNeitherPictureNorVideo_isAnError()
    {
        const QString path = m_dir.filePath(QStringLiteral("notes.txt"));
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("glue to buy\n");
        file.close();
        Chain chain;
        chain.source.open(path);
        QTRY_VERIFY_WITH_TIMEOUT(chain.error.size() >= 1, 15000);
        QTest::qWait(100);
        verifyOneError(chain, ErrorCode::FileUnreadable);
    }

    void afterAnError_anotherFileCanBeOpened()
    {
        Chain chain;
        chain.source.open(m_dir.filePath(QStringLiteral("missing.png")));
        QCOMPARE(chain.error.size(), 1);
        chain.source.open(m_picture);
        QTRY_COMPARE(chain.read.size(), 1);
        QCOMPARE(chain.error.size(), 1);
    }

    void noCamera_isAnError()
    {
        if (!QMediaDevices::defaultVideoInput().isNull())
            QSKIP("this machine has a camera");
        Chain chain;
        chain.source.open({});
        verifyOneError(chain, ErrorCode::CameraAbsent);
    }
};

QTEST_MAIN(FrameSourceTest)
#include "tst_framesource.moc"
