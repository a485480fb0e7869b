#include "app/camera.h"

#include <algorithm>
#include <array>
#include <utility>

#include <QCameraDevice>
#include <QMediaDevices>
#include <QPointF>

#include "app/words.h"
#include "codes/ownlabel.h"
#include "scan/framesource.h"
#include "scan/videoscanner.h"

namespace gw {

namespace {

/// Symbology identifiers that promise GS1 elements (GS1 General Specifications, table of symbology
/// identifiers).
constexpr std::array<std::string_view, 6> withElements { "]C1", "]e0", "]e1", "]d2", "]Q3", "]J1" };

/// What one frame shows is told within this.
constexpr int togetherMs = 30;

int telling(const Symbol& symbol)
{
    if (parseOwnLabel(symbol.text))
        return 3;
    if (std::find(withElements.begin(), withElements.end(), symbol.symbology) != withElements.end())
        return 2;
    // A bare item number says more than whatever else a maker prints on a label.
    return symbol.symbology.starts_with("]E") || symbol.symbology.starts_with("]I") ? 1 : 0;
}

} // namespace

const Symbol& mostTelling(const std::vector<Symbol>& symbols)
{
    return *std::max_element(symbols.begin(), symbols.end(),
        [](const Symbol& a, const Symbol& b) { return telling(a) < telling(b); });
}

Camera::Camera(QObject* parent)
    : QObject(parent)
{
    m_hold.setSingleShot(true);
    m_hold.setInterval(heldMs);
    connect(&m_hold, &QTimer::timeout, this, [this] {
        setState(Looking);
        tell();
    });
    m_rest.setSingleShot(true);
    m_rest.setInterval(restAfterMs);
    connect(&m_rest, &QTimer::timeout, this, [this] { stop(Resting); });
}

Camera::~Camera()
{
    // The makers of frames end first; then nobody is left to speak to what is going.
    if (m_source) {
        m_source->disconnect(this);
        m_source.reset();
    }
    m_scanner.reset();
}

void Camera::show(QVideoSink* viewfinder)
{
    if (!viewfinder)
        return;
    m_viewfinders.removeIf([=](const auto& sink) { return sink.isNull() || sink == viewfinder; });
    m_viewfinders.append(viewfinder);
    // The last picture of an earlier look is not what is before the lens now.
    viewfinder->setVideoFrame({});
    if (m_state == Off || m_state == Resting || m_state == Trouble)
        start();
}

void Camera::leave(QVideoSink* viewfinder)
{
    m_viewfinders.removeIf([=](const auto& sink) { return sink.isNull() || sink == viewfinder; });
    if (m_viewfinders.isEmpty() && m_state != Off)
        stop(Off);
}

void Camera::wake()
{
    if (m_state == Resting || m_state == Trouble)
        start();
}

void Camera::make()
{
    m_frames = std::make_unique<QVideoSink>();
    connect(
        m_frames.get(), &QVideoSink::videoFrameChanged, this,
        [this](const QVideoFrame& frame) {
            const std::lock_guard lock(m_newestGuard);
            const bool waits = m_newest.isValid();
            m_newest = frame;
            if (!waits)
                QMetaObject::invokeMethod(this, &Camera::showFrame, Qt::QueuedConnection);
        },
        Qt::DirectConnection);

    m_scanner = std::make_unique<VideoScanner>();
    m_scanner->setVideoSink(m_frames.get());
    connect(m_scanner.get(), &VideoScanner::read, this, &Camera::take);
    connect(m_scanner.get(), &VideoScanner::broken, this, &Camera::fail);
    connect(m_scanner.get(), &VideoScanner::position, this, [this](const QPolygonF& corners) {
        QVariantList outline;
        for (const QPointF& corner : corners)
            outline.append(corner);
        // It comes after the word of what was read, and then stays with the standing picture.
        if (m_state == Looking || (m_state == Held && !outline.isEmpty()))
            setOutline(outline);
    });

    m_source = std::make_unique<FrameSource>();
    m_source->setVideoSink(m_frames.get());
    connect(m_source.get(), &FrameSource::error, this, &Camera::fail);
}

void Camera::start()
{
    if (!m_source)
        make();
    m_devices.reset();
    m_trouble.clear();
    m_scanner->forget();
    setState(Starting);
    m_rest.start();
    m_source->setCamera(m_chosen.toLocal8Bit());
    m_source->open(m_file);
    if (m_torch)
        m_source->setTorch(true);
    Q_EMIT camerasChanged();
}

void Camera::stop(State state)
{
    m_hold.stop();
    m_rest.stop();
    m_taken.clear();
    if (m_source)
        m_source->close();
    {
        const std::lock_guard lock(m_newestGuard);
        m_newest = {};
    }
    m_shown = {};
    setOutline({});
    setState(state);
    Q_EMIT camerasChanged();
}

void Camera::fail(const Error& error)
{
    const bool none = error.code == ErrorCode::CameraAbsent && QMediaDevices::videoInputs().isEmpty();
    m_trouble = none ? tr("No camera here: type the number, use a hand scanner, or choose a picture.")
                     : q(error.sentence);
    stop(Trouble);
    if (error.code == ErrorCode::CameraAbsent) {
        m_devices = std::make_unique<QMediaDevices>();
        connect(
            m_devices.get(), &QMediaDevices::videoInputsChanged, this, &Camera::wake, Qt::QueuedConnection);
    }
}

void Camera::take(const Symbol& symbol)
{
    // A label often carries several symbols. Those of one frame come one after the other: wait for the last
    // of them. What is read while the picture holds is told after it.
    if (m_state != Looking && m_state != Starting && m_state != Held)
        return;
    m_taken.push_back(symbol);
    if (m_taken.size() == 1 && m_state != Held)
        QTimer::singleShot(togetherMs, this, &Camera::tell);
}

void Camera::tell()
{
    const auto taken = std::exchange(m_taken, {});
    if (taken.empty() || (m_state != Looking && m_state != Starting))
        return;
    m_hold.start();
    m_rest.start();
    setState(Held);
    const Symbol& symbol = mostTelling(taken);
    Q_EMIT read(q(symbol.text), q(symbol.symbology));
}

void Camera::showFrame()
{
    QVideoFrame frame;
    {
        const std::lock_guard lock(m_newestGuard);
        frame = std::exchange(m_newest, {});
    }
    if (!frame.isValid() || (m_state != Starting && m_state != Looking))
        return;
    if (QVideoSink* sink = viewfinder())
        sink->setVideoFrame(frame);
    m_shown = frame;
    // What a camera can do is known once it runs.
    if (m_state == Starting)
        Q_EMIT camerasChanged();
    setState(Looking);
}

QStringList Camera::cameras() const
{
    QStringList names;
    // A file in place of the camera is the only one.
    if (m_file.isEmpty()) {
        for (const QCameraDevice& device : QMediaDevices::videoInputs())
            names.append(device.description());
    }
    return names;
}

int Camera::cameraAt() const
{
    const QByteArray running = m_source ? m_source->cameraId() : QByteArray();
    const auto inputs = QMediaDevices::videoInputs();
    for (qsizetype i = 0; i < inputs.size() && !running.isEmpty(); ++i) {
        if (inputs[i].id() == running)
            return static_cast<int>(i);
    }
    return -1;
}

void Camera::nextCamera()
{
    const auto inputs = QMediaDevices::videoInputs();
    if (inputs.isEmpty() || !m_file.isEmpty())
        return;
    m_chosen = QString::fromLocal8Bit(inputs[(cameraAt() + 1) % inputs.size()].id());
    m_torch = false;
    Q_EMIT cameraChosen(m_chosen);
    if (m_state != Off)
        start();
}

bool Camera::hasTorch() const { return m_source && m_source->hasTorch(); }
bool Camera::canFocus() const { return m_source && m_source->canFocus(); }

void Camera::setTorch(bool on)
{
    m_torch = on;
    if (m_source)
        m_source->setTorch(on);
    Q_EMIT camerasChanged();
}

void Camera::focus()
{
    if (m_source)
        m_source->focusNear();
}

QImage Camera::picture() const { return m_shown.isValid() ? m_shown.toImage() : QImage(); }

QVideoSink* Camera::viewfinder() const
{
    return m_viewfinders.isEmpty() ? nullptr : m_viewfinders.last().data();
}

void Camera::setState(State state)
{
    if (state == m_state)
        return;
    m_state = state;
    if (state == Looking || state == Starting)
        setOutline({});
    Q_EMIT stateChanged();
}

void Camera::setOutline(const QVariantList& outline)
{
    if (outline == m_outline)
        return;
    m_outline = outline;
    Q_EMIT outlineChanged();
}

} // namespace gw
