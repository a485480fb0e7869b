#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <QObject>
#include <QPointer>
#include <QPolygonF>
#include <QVideoSink>

#include "measure/error.h"
#include "scan/symbolreader.h"

class QThread;

namespace gw {

/// Looks for symbols in the frames that pass through a video sink.
///
/// Lives on the GUI thread. A frame's brightness is copied on the thread that made it; a worker thread of its
/// own looks at it. One frame may wait; a newer one takes its place, so frames are dropped, never queued, and
/// nobody waits. The destructor ends the look that is under way and joins the thread.
class VideoScanner : public QObject {
    Q_OBJECT
    Q_PROPERTY(QVideoSink* videoSink READ videoSink WRITE setVideoSink NOTIFY videoSinkChanged)
    Q_PROPERTY(bool active READ isActive WRITE setActive NOTIFY activeChanged)

public:
    using ReaderMaker = std::function<std::unique_ptr<SymbolReader>()>;

    struct Statistics {
        qint64 seen = 0; ///< frames that came while active
        qint64 decoded = 0; ///< frames that were looked at
        qint64 dropped = 0; ///< frames that a newer one replaced
        qint64 unusable = 0; ///< frames whose pixels cannot be had
    };

    explicit VideoScanner(QObject* parent = nullptr);
    /// With another reader; the maker is called once, on the worker thread.
    explicit VideoScanner(ReaderMaker maker, QObject* parent = nullptr);
    ~VideoScanner() override;

    QVideoSink* videoSink() const { return m_sink; }
    /// Attaches the sink, which stays its owner's; null detaches.
    void setVideoSink(QVideoSink* sink);

    bool isActive() const;
    /// False: frames pass by unseen. True at first.
    void setActive(bool active);

    Statistics statistics() const;

public Q_SLOTS:
    /// A symbol that is in view counts as new again, for when the person is done with the last one.
    void forget();

Q_SIGNALS:
    /// A symbol that has come into view: once, however long it is held there. Act on this one.
    void read(const gw::Symbol& symbol);
    /// All symbols of a frame that was looked at; with an empty list when they have gone. Outlines in pixels
    /// of the frame.
    void symbolsSeen(const std::vector<gw::Symbol>& symbols);
    /// Where the first symbol of a frame stands, 0 to 1 across the frame as it is shown; empty when there is
    /// none any more.
    void position(const QPolygonF& outline);
    /// Frames come, but cannot be looked at. Once until one can.
    void broken(const gw::Error& error);
    void videoSinkChanged();
    void activeChanged();

private:
    struct Shared;
    void work(const ReaderMaker& maker);

    QPointer<QVideoSink> m_sink;
    QMetaObject::Connection m_frames;
    std::shared_ptr<Shared> m_shared;
    std::unique_ptr<QThread> m_thread;
};

} // namespace gw
