#include "scan/framesource.h"

#include <algorithm>
#include <cstring>

#include <QCamera>
#include <QCameraDevice>
#include <QFileInfo>
#include <QImageReader>
#include <QMediaCaptureSession>
#include <QMediaDevices>
#include <QMediaPlayer>
#include <QTimer>
#include <QUrl>
#include <QVideoFrame>
#include <QVideoFrameFormat>

#include "scan/picturefile.h"

namespace gw {

/// One way of making frames. Ending it is destroying it.
struct FrameSource::Feed {
    Feed() = default;
    Feed(const Feed&) = delete;
    Feed& operator=(const Feed&) = delete;
    virtual ~Feed() = default;
    virtual void attach(QVideoSink* sink) = 0;
};

namespace {

/// A camera's format that shows a label well without drowning the worker: 720 lines or a little more, 15 to
/// 30 frames a second.
QCameraFormat labelFormat(const QCameraDevice& device)
{
    const auto rank = [](const QCameraFormat& format) {
        const int lines = format.resolution().height();
        const bool fits = lines >= 720 && lines <= 1080;
        const bool quick = format.maxFrameRate() >= 15;
        const bool plain = format.pixelFormat() != QVideoFrameFormat::Format_Jpeg;
        return std::tuple(quick, fits, plain, fits ? -lines : std::min(lines, 720));
    };
    const auto formats = device.videoFormats();
    const auto best = std::max_element(
        formats.begin(), formats.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
    return best == formats.end() ? QCameraFormat() : *best;
}

/// A frame of its own each time: a sink is silent about one that it has shown already.
QVideoFrame frameOf(const QImage& picture)
{
    QVideoFrame frame(QVideoFrameFormat(picture.size(), QVideoFrameFormat::Format_BGRX8888));
    if (!frame.map(QVideoFrame::WriteOnly))
        return {};
    const auto length
        = static_cast<std::size_t>(std::min(frame.bytesPerLine(0), int(picture.bytesPerLine())));
    for (int y = 0; y < picture.height(); ++y)
        std::memcpy(frame.bits(0) + qsizetype(y) * frame.bytesPerLine(0), picture.constScanLine(y), length);
    frame.unmap();
    return frame;
}

Error cannotPlay(const QString& path, const QString& why)
{
    const auto reason = why.isEmpty() ? std::string() : " (" + why.toStdString() + ')';
    return { ErrorCode::FileUnreadable,
        QFileInfo(path).fileName().toStdString() + " cannot be played" + reason
            + "; give a picture such as a PNG or JPEG, or a video such as WebM." };
}

/// Whether the account may open a camera that is a device file; true where that cannot be told.
bool mayOpen(const QCameraDevice& device)
{
    const QFileInfo file(QString::fromLocal8Bit(device.id()));
    return !file.isAbsolute() || !file.exists() || (file.isReadable() && file.isWritable());
}

QCameraDevice chosenCamera(const QByteArray& id)
{
    for (const QCameraDevice& device : QMediaDevices::videoInputs()) {
        if (!id.isEmpty() && device.id() == id)
            return device;
    }
    return QMediaDevices::defaultVideoInput();
}

} // namespace

Error cameraTrouble(const QString& words, bool mayOpen)
{
    const auto says
        = [&](const char* part) { return words.contains(QLatin1String(part), Qt::CaseInsensitive); };
    const std::string quoted = words.isEmpty() ? std::string() : " (" + words.toStdString() + ')';
    if (!mayOpen || says("permission") || says("not permitted") || says("access denied"))
        return { ErrorCode::CameraAbsent,
            "This account may not use the camera" + quoted
                + "; allow it in the system's settings, on Linux by the group video, and start again." };
    if (says("busy") || says("in use"))
        return { ErrorCode::CameraAbsent,
            "Another program has the camera" + quoted + "; close that one, then tap here." };
    return { ErrorCode::CameraAbsent,
        "The camera cannot be used" + quoted + "; close other programs that use it, or plug it in again." };
}

struct FrameSource::Camera final : Feed {
    Camera(FrameSource& source, const QCameraDevice& device)
        : camera(device)
    {
        session.setCamera(&camera);
        const QCameraFormat format = labelFormat(device);
        if (!format.isNull())
            camera.setCameraFormat(format);
        // Queued, since the answer destroys what is speaking; by then another source may have been opened.
        QObject::connect(
            &camera, &QCamera::errorOccurred, &source,
            [&source, mine = source.m_opened, device](QCamera::Error code, const QString& words) {
                if (code != QCamera::NoError && mine == source.m_opened)
                    source.fail(cameraTrouble(words, mayOpen(device)));
            },
            Qt::QueuedConnection);
        QObject::connect(
            &devices, &QMediaDevices::videoInputsChanged, &source,
            [&source, mine = source.m_opened, id = device.id()] {
                const auto inputs = QMediaDevices::videoInputs();
                if (mine == source.m_opened
                    && std::none_of(
                        inputs.begin(), inputs.end(), [&](const auto& input) { return input.id() == id; }))
                    source.fail(
                        { ErrorCode::CameraAbsent, "The camera was unplugged; plug it in and start again." });
            },
            Qt::QueuedConnection);
        QObject::connect(
            &camera, &QCamera::activeChanged, &source, [&source](bool on) { source.setActive(on); });
    }
    ~Camera() override { camera.stop(); }

    void attach(QVideoSink* sink) override
    {
        session.setVideoSink(sink);
        camera.setActive(sink != nullptr);
    }

    QMediaDevices devices;
    QMediaCaptureSession session;
    QCamera camera;
};

struct FrameSource::Still final : Feed {
    Still(FrameSource& forSource, const QImage& image)
        : source(forSource)
        , picture(image.convertToFormat(QImage::Format_RGB32))
    {
        using namespace std::chrono_literals;
        timer.setInterval(200ms);
        QObject::connect(&timer, &QTimer::timeout, &timer, [this] { show(); });
    }

    void attach(QVideoSink* sink) override
    {
        to = sink;
        source.setActive(sink != nullptr);
        if (!sink)
            return timer.stop();
        show();
        timer.start();
    }

    void show()
    {
        if (to)
            to->setVideoFrame(frameOf(picture));
    }

    FrameSource& source;
    QImage picture;
    QTimer timer;
    QPointer<QVideoSink> to;
};

struct FrameSource::Video final : Feed {
    Video(FrameSource& source, const QString& path)
    {
        player.setLoops(QMediaPlayer::Infinite);
        QObject::connect(
            &player, &QMediaPlayer::errorOccurred, &source,
            [&source, mine = source.m_opened, path](QMediaPlayer::Error code, const QString& words) {
                if (code != QMediaPlayer::NoError && mine == source.m_opened)
                    source.fail(cannotPlay(path, words));
            },
            Qt::QueuedConnection);
        QObject::connect(
            &player, &QMediaPlayer::mediaStatusChanged, &source,
            [&source, mine = source.m_opened, path](QMediaPlayer::MediaStatus status) {
                if (status == QMediaPlayer::InvalidMedia && mine == source.m_opened)
                    source.fail(cannotPlay(path, {}));
            },
            Qt::QueuedConnection);
        QObject::connect(&player, &QMediaPlayer::playbackStateChanged, &source,
            [&source](QMediaPlayer::PlaybackState state) {
                source.setActive(state == QMediaPlayer::PlayingState);
            });
        player.setSource(QUrl::fromLocalFile(QFileInfo(path).absoluteFilePath()));
    }
    ~Video() override { player.stop(); }

    void attach(QVideoSink* sink) override
    {
        player.setVideoSink(sink);
        if (sink)
            player.play();
        else
            player.pause();
    }

    QMediaPlayer player;
};

FrameSource::FrameSource(QObject* parent)
    : QObject(parent)
{
}

FrameSource::~FrameSource()
{
    blockSignals(true);
    m_feed.reset();
}

void FrameSource::setVideoSink(QVideoSink* sink)
{
    if (sink == m_sink)
        return;
    m_sink = sink;
    if (m_feed)
        m_feed->attach(sink);
    Q_EMIT videoSinkChanged();
}

void FrameSource::open(const QString& spec)
{
    close();
    if (spec.isEmpty()) {
        const QCameraDevice device = chosenCamera(m_camera);
        if (device.isNull())
            return fail({ ErrorCode::CameraAbsent,
                "No camera was found; plug one in, or scan with a hand scanner or a picture." });
        m_feed = std::make_unique<Camera>(*this, device);
    } else if (!QFileInfo(spec).isFile() || QImageReader(spec).canRead()) {
        const auto picture = loadPicture(spec);
        if (!picture)
            return fail(picture.error());
        m_feed = std::make_unique<Still>(*this, *picture);
    } else {
        m_feed = std::make_unique<Video>(*this, spec);
    }
    if (m_sink)
        m_feed->attach(m_sink);
}

FrameSource::Camera* FrameSource::runningCamera() const { return dynamic_cast<Camera*>(m_feed.get()); }

QByteArray FrameSource::cameraId() const
{
    const Camera* running = runningCamera();
    return running ? running->camera.cameraDevice().id() : QByteArray();
}

bool FrameSource::hasTorch() const
{
    const Camera* running = runningCamera();
    return running && running->camera.isTorchModeSupported(QCamera::TorchOn);
}

void FrameSource::setTorch(bool on)
{
    if (hasTorch())
        runningCamera()->camera.setTorchMode(on ? QCamera::TorchOn : QCamera::TorchOff);
}

bool FrameSource::canFocus() const
{
    const Camera* running = runningCamera();
    return running
        && (running->camera.isFocusModeSupported(QCamera::FocusModeAutoNear)
            || running->camera.supportedFeatures().testFlag(QCamera::Feature::CustomFocusPoint));
}

void FrameSource::focusNear()
{
    if (!canFocus())
        return;
    QCamera& camera = runningCamera()->camera;
    // Setting a mode that is set already does nothing: go by the automatic one.
    camera.setFocusMode(QCamera::FocusModeAuto);
    if (camera.supportedFeatures().testFlag(QCamera::Feature::CustomFocusPoint))
        camera.setCustomFocusPoint({ 0.5, 0.5 });
    if (camera.isFocusModeSupported(QCamera::FocusModeAutoNear))
        camera.setFocusMode(QCamera::FocusModeAutoNear);
}

void FrameSource::close()
{
    ++m_opened;
    m_feed.reset();
    setActive(false);
}

void FrameSource::fail(const Error& trouble)
{
    close();
    Q_EMIT error(trouble);
}

void FrameSource::setActive(bool active)
{
    if (m_active == active)
        return;
    m_active = active;
    Q_EMIT activeChanged();
}

} // namespace gw
