#pragma once

#include <memory>

#include <QByteArray>
#include <QObject>
#include <QPointer>
#include <QString>
#include <QVideoSink>

#include "measure/error.h"

namespace gw {

/// Gives frames to a video sink: from the camera, or from a file in place of one. Lives on the GUI thread.
class FrameSource : public QObject {
    Q_OBJECT
    Q_PROPERTY(QVideoSink* videoSink READ videoSink WRITE setVideoSink NOTIFY videoSinkChanged)
    Q_PROPERTY(bool active READ isActive NOTIFY activeChanged)

public:
    explicit FrameSource(QObject* parent = nullptr);
    ~FrameSource() override;

    QVideoSink* videoSink() const { return m_sink; }
    /// The sink stays its owner's. May be set before or after open().
    void setVideoSink(QVideoSink* sink);

    bool isActive() const { return m_active; } ///< frames come

    /// Which camera an empty spec means, by QCameraDevice::id(); empty, or one that is not there: the
    /// default.
    void setCamera(const QByteArray& id) { m_camera = id; }
    /// The camera that runs; empty when none does.
    QByteArray cameraId() const;
    bool hasTorch() const; ///< the camera that runs has a lamp
    void setTorch(bool on);
    bool canFocus() const; ///< it can be told to focus anew, near by
    void focusNear();

public Q_SLOTS:
    /// Empty: the default camera. A picture file: the picture as a still, five frames a second. Any other
    /// file: a video, over and over. Whatever was open is closed first. Trouble comes as error().
    void open(const QString& spec);
    void close();

Q_SIGNALS:
    /// CameraAbsent or FileUnreadable, the sentence ready to show. Nothing plays afterwards.
    void error(const gw::Error& error);
    void activeChanged();
    void videoSinkChanged();

private:
    struct Feed;
    struct Camera;
    struct Still;
    struct Video;

    void fail(const Error& trouble);
    void setActive(bool active);

    Camera* runningCamera() const;

    QPointer<QVideoSink> m_sink;
    QByteArray m_camera;
    std::unique_ptr<Feed> m_feed;
    int m_opened = 0; ///< tells late words of a source that was closed from those of the present one
    bool m_active = false;
};

/// What to say when a camera does not run: words are the system's own. mayOpen: this account may open the
/// device, as far as can be told.
Error cameraTrouble(const QString& words, bool mayOpen);

} // namespace gw
