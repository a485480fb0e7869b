// Frames are pushed into a real QVideoSink from a thread of their own, as a camera does.
#include <QElapsedTimer>
#include <QSemaphore>
#include <QSignalSpy>
#include <QTest>
#include <QThread>
#include <QVideoFrame>
#include <QVideoFrameFormat>

#include <atomic>
#include <cstring>

#include "scan/videoscanner.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

QVideoFrame frameOf(const QImage& picture)
{
    QVideoFrame frame(QVideoFrameFormat(picture.size(), QVideoFrameFormat::Format_Y8));
    if (!frame.map(QVideoFrame::WriteOnly))
        qFatal("a frame in memory cannot be mapped");
    for (int y = 0; y < picture.height(); ++y)
        std::memcpy(frame.bits(0) + y * frame.bytesPerLine(0), picture.constScanLine(y),
            std::size_t(picture.width()));
    frame.unmap();
    return frame;
}

QImage sheet(const QByteArray& text)
{
    return placed(drawSymbol(Symbology::DataMatrix, text, 3), QSize(640, 480), 230);
}

QImage emptySheet()
{
    QImage picture(640, 480, QImage::Format_Grayscale8);
    picture.fill(200);
    return picture;
}

/// Runs the work on another thread and waits for it, so that the sink speaks on that thread.
void onAnotherThread(const std::function<void()>& work)
{
    const std::unique_ptr<QThread> thread(QThread::create(work));
    thread->start();
    thread->wait();
}

/// Reads a frame's width, when it is let.
class SlowReader final : public SymbolReader {
public:
    SlowReader(QSemaphore& begun, QSemaphore& mayEnd, std::atomic<QThread*>& thread)
        : m_begun(begun)
        , m_mayEnd(mayEnd)
        , m_thread(thread)
    {
    }
    std::string name() const override { return "slow"; }
    std::vector<Symbol> read(const LuminanceView& picture) override
    {
        m_thread = QThread::currentThread();
        m_begun.release();
        m_mayEnd.acquire();
        return { Symbol { std::to_string(picture.width), "QR Code", "]Q1", name(), {} } };
    }

private:
    QSemaphore& m_begun;
    QSemaphore& m_mayEnd;
    std::atomic<QThread*>& m_thread;
};

class Thrower final : public SymbolReader {
public:
    std::string name() const override { return "none"; }
    std::vector<Symbol> read(const LuminanceView&) override { return {}; }
};

} // namespace

class VideoScannerTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void symbolHeldInFrontOfTheCamera_isReadOnce()
    {
        QVideoSink sink;
        VideoScanner scanner;
        scanner.setVideoSink(&sink);
        QSignalSpy read(&scanner, &VideoScanner::read);
        QSignalSpy position(&scanner, &VideoScanner::position);
        const QImage picture = sheet("GW7K4M9QX");
        onAnotherThread([&] {
            for (int i = 0; i < 20; ++i) {
                sink.setVideoFrame(frameOf(picture));
                QThread::msleep(20);
            }
        });
        QTRY_COMPARE(read.size(), 1);
        QTRY_VERIFY(scanner.statistics().decoded + scanner.statistics().dropped == 20);
        QTest::qWait(50);
        QCOMPARE(read.size(), 1);
        QCOMPARE(read.first().first().value<Symbol>().text, std::string("GW7K4M9QX"));
        QCOMPARE(scanner.statistics().seen, 20);
        QVERIFY(scanner.statistics().decoded > 1);
        // The symbol is in the middle of the frame.
        const auto outline = position.last().first().value<QPolygonF>();
        QVERIFY(QLineF(outline.boundingRect().center(), QPointF(0.5, 0.5)).length() < 0.03);
    }

    void symbolTakenAway_isReported()
    {
        QVideoSink sink;
        VideoScanner scanner;
        scanner.setVideoSink(&sink);
        QSignalSpy position(&scanner, &VideoScanner::position);
        sink.setVideoFrame(frameOf(sheet("A1")));
        QTRY_COMPARE(position.size(), 1);
        QVERIFY(!position.last().first().value<QPolygonF>().isEmpty());
        sink.setVideoFrame(frameOf(emptySheet()));
        QTRY_COMPARE(position.size(), 2);
        QVERIFY(position.last().first().value<QPolygonF>().isEmpty());
        sink.setVideoFrame(frameOf(emptySheet()));
        QTRY_COMPARE(scanner.statistics().decoded, 3);
        QTest::qWait(20);
        QCOMPARE(position.size(), 2); // nothing is said of nothing
    }

    void anotherSymbol_isReadToo()
    {
        QVideoSink sink;
        VideoScanner scanner;
        scanner.setVideoSink(&sink);
        QSignalSpy read(&scanner, &VideoScanner::read);
        sink.setVideoFrame(frameOf(sheet("A1")));
        QTRY_COMPARE(read.size(), 1);
        sink.setVideoFrame(frameOf(sheet("B2")));
        QTRY_COMPARE(read.size(), 2);
        sink.setVideoFrame(frameOf(sheet("A1")));
        QTRY_COMPARE(scanner.statistics().decoded, 3);
        QTest::qWait(20);
        QCOMPARE(read.size(), 2); // A1 was here a moment ago
        scanner.forget();
        sink.setVideoFrame(frameOf(sheet("A1")));
        QTRY_COMPARE(read.size(), 3);
    }

    void floodOfFrames_isDroppedAndTheNewestWins()
    {
        QSemaphore begun;
        QSemaphore mayEnd;
        std::atomic<QThread*> readerThread = nullptr;
        QVideoSink sink;
        VideoScanner scanner([&] { return std::make_unique<SlowReader>(begun, mayEnd, readerThread); });
        scanner.setVideoSink(&sink);
        QSignalSpy read(&scanner, &VideoScanner::read);

        QThread* producer = nullptr;
        QElapsedTimer timer;
        onAnotherThread([&] {
            producer = QThread::currentThread();
            const auto push = [&sink](int width) {
                QImage picture(width, 64, QImage::Format_Grayscale8);
                picture.fill(200);
                sink.setVideoFrame(frameOf(picture));
            };
            push(1);
            begun.acquire(); // the worker is busy with the first
            timer.start();
            for (int i = 2; i <= 200; ++i)
                push(i);
        });
        // Nobody waited for the worker, which has not ended its first look yet.
        QVERIFY2(timer.elapsed() < 1000, qPrintable(QString::number(timer.elapsed())));
        QCOMPARE(scanner.statistics().decoded, 0);
        mayEnd.release(100);
        QTRY_COMPARE(scanner.statistics().decoded, 2);
        QTest::qWait(50);
        QCOMPARE(scanner.statistics().decoded, 2);
        QCOMPARE(scanner.statistics().seen, 200);
        QCOMPARE(scanner.statistics().dropped, 198);
        QCOMPARE(read.size(), 2);
        QCOMPARE(read.at(0).first().value<Symbol>().text, std::string("1"));
        QCOMPARE(read.at(1).first().value<Symbol>().text, std::string("200"));
        QVERIFY(readerThread != producer);
        QVERIFY(readerThread != QThread::currentThread());
    }

    void readSignal_comesOnTheScannersThread()
    {
        QVideoSink sink;
        VideoScanner scanner;
        scanner.setVideoSink(&sink);
        QThread* heardOn = nullptr;
        connect(
            &scanner, &VideoScanner::read, &scanner, [&] { heardOn = QThread::currentThread(); },
            Qt::DirectConnection);
        onAnotherThread([&] { sink.setVideoFrame(frameOf(sheet("A1"))); });
        QTRY_VERIFY(heardOn);
        QCOMPARE(heardOn, QThread::currentThread());
    }

    void inactive_letsFramesPass()
    {
        QVideoSink sink;
        VideoScanner scanner;
        scanner.setVideoSink(&sink);
        QSignalSpy changed(&scanner, &VideoScanner::activeChanged);
        scanner.setActive(false);
        QCOMPARE(changed.size(), 1);
        sink.setVideoFrame(frameOf(sheet("A1")));
        QTest::qWait(50);
        QCOMPARE(scanner.statistics().seen, 0);
        scanner.setActive(true);
        QSignalSpy read(&scanner, &VideoScanner::read);
        sink.setVideoFrame(frameOf(sheet("A1")));
        QTRY_COMPARE(read.size(), 1);
    }

    void changedSink_isTheOnlyOneHeard()
    {
        QVideoSink first;
        QVideoSink second;
        VideoScanner scanner;
        scanner.setVideoSink(&first);
        scanner.setVideoSink(&second);
        first.setVideoFrame(frameOf(sheet("A1")));
        second.setVideoFrame(frameOf(sheet("B2")));
        QSignalSpy read(&scanner, &VideoScanner::read);
        QTRY_COMPARE(read.size(), 1);
        QCOMPARE(read.first().first().value<Symbol>().text, std::string("B2"));
        scanner.setVideoSink(nullptr);
        second.setVideoFrame(frameOf(sheet("C3")));
        QCOMPARE(scanner.statistics().seen, 1);
    }

    void sinkThatDies_isLetGo()
    {
        VideoScanner scanner;
        {
            QVideoSink sink;
            scanner.setVideoSink(&sink);
        }
        QCOMPARE(scanner.videoSink(), nullptr);
    }

    void scannerThatDiesWhileFramesCome_doesNotCrash()
    {
        for (int round = 0; round < 20; ++round) {
            QVideoSink sink;
            std::atomic<bool> stop = false;
            auto scanner = std::make_unique<VideoScanner>();
            scanner->setVideoSink(&sink);
            const QImage picture = sheet("A1");
            const std::unique_ptr<QThread> producer(QThread::create([&] {
                while (!stop)
                    sink.setVideoFrame(frameOf(picture));
            }));
            producer->start();
            QTest::qWait(5 + round);
            scanner.reset();
            stop = true;
            producer->wait();
        }
    }

    void destructor_waitsForTheLookUnderWay()
    {
        QSemaphore begun;
        QSemaphore mayEnd;
        std::atomic<QThread*> readerThread = nullptr;
        QVideoSink sink;
        auto scanner = std::make_unique<VideoScanner>(
            [&] { return std::make_unique<SlowReader>(begun, mayEnd, readerThread); });
        scanner->setVideoSink(&sink);
        sink.setVideoFrame(frameOf(emptySheet()));
        begun.acquire();
        const std::unique_ptr<QThread> later(QThread::create([&] {
            QThread::msleep(50);
            mayEnd.release();
        }));
        later->start();
        scanner.reset();
        QVERIFY2(mayEnd.available() == 0, "the look had ended before the scanner was gone");
        later->wait();
    }

    void framesThatCannotBeLookedAt_areToldOnce()
    {
        QVideoSink sink;
        VideoScanner scanner;
        scanner.setVideoSink(&sink);
        QSignalSpy broken(&scanner, &VideoScanner::broken);
        // A compressed frame whose bytes are no picture.
        for (int i = 0; i < 3; ++i) {
            QVideoFrame frame(QVideoFrameFormat(QSize(64, 64), QVideoFrameFormat::Format_Jpeg));
            sink.setVideoFrame(frame);
        }
        QTRY_COMPARE(broken.size(), 1);
        QTest::qWait(30);
        QCOMPARE(broken.size(), 1);
        QCOMPARE(int(broken.first().first().value<Error>().code), int(ErrorCode::CameraAbsent));
        QCOMPARE(scanner.statistics().unusable, 3);
    }
};

QTEST_MAIN(VideoScannerTest)
#include "tst_videoscanner.moc"
