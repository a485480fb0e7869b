#include "scan/videoscanner.h"

#include <atomic>
#include <condition_variable>
#include <mutex>

#include <QThread>
#include <QTransform>
#include <QVideoFrame>

#include "scan/finding.h"
#include "scan/luminance.h"
#include "scan/sightings.h"

namespace gw {

/// What the frames' thread and the worker share. It outlives the scanner when a frame is just being handed
/// over.
struct VideoScanner::Shared {
    enum class Handover { Taken, Ignored, Unusable };

    /// On the frames' thread: puts a frame in the waiting place.
    Handover put(const QVideoFrame& frame)
    {
        if (!active)
            return Handover::Ignored;
        ++seen;
        {
            const std::scoped_lock lock(mutex);
            if (closed)
                return Handover::Ignored;
            if (!copyLuminance(frame, waiting)) {
                full = false;
                ++unusable;
                return Handover::Unusable;
            }
            if (full)
                ++dropped;
            full = true;
        }
        wake.notify_one();
        return Handover::Taken;
    }

    /// On the worker's: waits for a frame and swaps it out. False: closed.
    bool take(Luminance& into)
    {
        std::unique_lock lock(mutex);
        wake.wait(lock, [this] { return full || closed; });
        if (closed)
            return false;
        std::swap(waiting, into);
        full = false;
        return true;
    }

    void close()
    {
        {
            const std::scoped_lock lock(mutex);
            closed = true;
        }
        wake.notify_all();
    }

    std::atomic<bool> active = true;
    std::atomic<bool> forget = false;
    std::atomic<bool> complained = false;
    std::atomic<qint64> seen = 0;
    std::atomic<qint64> decoded = 0;
    std::atomic<qint64> dropped = 0;
    std::atomic<qint64> unusable = 0;

private:
    std::mutex mutex;
    std::condition_variable wake;
    Luminance waiting;
    bool full = false;
    bool closed = false;
};

namespace {

/// From pixels of the frame to 0..1 of the frame as it is shown.
QPolygonF asShown(const QPolygonF& outline, const Luminance& frame)
{
    QTransform turn;
    turn.translate(0.5, 0.5);
    if (frame.mirrored)
        turn.scale(-1, 1);
    turn.rotate(frame.rotation);
    turn.translate(-0.5, -0.5);
    turn.scale(1.0 / frame.width, 1.0 / frame.height);
    return turn.map(outline);
}

} // namespace

VideoScanner::VideoScanner(QObject* parent)
    : VideoScanner([] { return makeReader(Effort::Frame); }, parent)
{
}

VideoScanner::VideoScanner(ReaderMaker maker, QObject* parent)
    : QObject(parent)
    , m_shared(std::make_shared<Shared>())
    , m_thread(QThread::create([this, maker = std::move(maker)] { work(maker); }))
{
    m_thread->setObjectName(QStringLiteral("scan"));
    m_thread->start(QThread::LowPriority);
}

VideoScanner::~VideoScanner()
{
    disconnect(m_frames);
    m_shared->close();
    m_thread->wait();
}

void VideoScanner::setVideoSink(QVideoSink* sink)
{
    if (sink == m_sink)
        return;
    disconnect(m_frames);
    m_sink = sink;
    if (sink) {
        // Direct: on the thread that makes the frames, which may still be in here when the scanner is gone.
        m_frames = connect(
            sink, &QVideoSink::videoFrameChanged, sink,
            [shared = m_shared, scanner = QPointer(this)](const QVideoFrame& frame) {
                switch (shared->put(frame)) {
                case Shared::Handover::Taken:
                    shared->complained = false;
                    break;
                case Shared::Handover::Unusable:
                    if (frame.isValid() && !shared->complained.exchange(true) && scanner)
                        QMetaObject::invokeMethod(
                            scanner,
                            [scanner] {
                                if (scanner)
                                    Q_EMIT scanner->broken({ ErrorCode::CameraAbsent,
                                        "The camera's pictures cannot be read; choose another camera or take "
                                        "a picture with it and give the file." });
                            },
                            Qt::QueuedConnection);
                    break;
                case Shared::Handover::Ignored:
                    break;
                }
            },
            Qt::DirectConnection);
    }
    Q_EMIT videoSinkChanged();
}

bool VideoScanner::isActive() const { return m_shared->active; }

void VideoScanner::setActive(bool active)
{
    if (m_shared->active.exchange(active) != active)
        Q_EMIT activeChanged();
}

VideoScanner::Statistics VideoScanner::statistics() const
{
    return { m_shared->seen, m_shared->decoded, m_shared->dropped, m_shared->unusable };
}

void VideoScanner::forget() { m_shared->forget = true; }

void VideoScanner::work(const ReaderMaker& maker)
{
    const auto reader = maker();
    Sightings sightings;
    Luminance frame;
    bool showing = false;
    while (m_shared->take(frame)) {
        auto symbols = findInFrame(frame.view(), m_shared->decoded, *reader);
        ++m_shared->decoded;
        if (m_shared->forget.exchange(false))
            sightings.forget();
        const auto fresh = sightings.update(symbols, std::chrono::steady_clock::now());
        if (symbols.empty() && !showing)
            continue;
        showing = !symbols.empty();
        const QPolygonF outline = showing ? asShown(symbols.front().outline, frame) : QPolygonF();
        // Queued to the scanner's own thread; the destructor joins this one first, so the scanner is there.
        QMetaObject::invokeMethod(
            this,
            [this, symbols = std::move(symbols), fresh, outline] {
                Q_EMIT symbolsSeen(symbols);
                Q_EMIT position(outline);
                for (const Symbol& symbol : fresh)
                    Q_EMIT read(symbol);
            },
            Qt::QueuedConnection);
    }
}

} // namespace gw
