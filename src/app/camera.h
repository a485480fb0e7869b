#pragma once

#include <memory>
#include <mutex>
#include <vector>

#include <QImage>
#include <QList>
#include <QObject>
#include <QPointer>
#include <QTimer>
#include <QVariant>
#include <QVideoFrame>
#include <QVideoSink>
#include <QtQmlIntegration/qqmlintegration.h>

#include "scan/symbolreader.h"

class QMediaDevices;

namespace gw {

class FrameSource;
class VideoScanner;
struct Error;

/// The camera behind every viewfinder, or a file in its place. It runs while a viewfinder is in sight, stands
/// still for a moment when it has read a code, and rests when nothing was read for some minutes. GUI thread.
class Camera : public QObject {
    Q_OBJECT
    QML_NAMED_ELEMENT(LabelCamera) // Camera is QtMultimedia's, which viewfinders import too
    QML_UNCREATABLE("made once, by the program")
    Q_PROPERTY(State state READ state NOTIFY stateChanged)
    /// Why there is no picture, ready to show; empty unless the state is Trouble.
    Q_PROPERTY(QString trouble READ trouble NOTIFY stateChanged)
    /// Corners of the symbol in sight, 0 to 1 across the picture; empty when there is none.
    Q_PROPERTY(QVariantList outline READ outline NOTIFY outlineChanged)
    /// The names of the cameras there are, and which one looks; -1 when none does.
    Q_PROPERTY(QList<QString> cameras READ cameras NOTIFY camerasChanged)
    Q_PROPERTY(int cameraAt READ cameraAt NOTIFY camerasChanged)
    Q_PROPERTY(bool hasTorch READ hasTorch NOTIFY camerasChanged)
    Q_PROPERTY(bool torch READ torch WRITE setTorch NOTIFY camerasChanged)
    Q_PROPERTY(bool canFocus READ canFocus NOTIFY camerasChanged)

public:
    enum State {
        Off, ///< no viewfinder is in sight
        Starting,
        Looking,
        Held, ///< a code was just read; the picture stands
        Resting, ///< nothing was read for a long while; wake() goes on
        Trouble,
    };
    Q_ENUM(State)

    static constexpr int heldMs = 900;
    static constexpr int restAfterMs = 180'000;

    explicit Camera(QObject* parent = nullptr);
    ~Camera() override;

    /// A picture or video in place of the camera.
    void setFile(const QString& file) { m_file = file; }

    State state() const { return m_state; }
    QString trouble() const { return m_trouble; }
    QVariantList outline() const { return m_outline; }
    QStringList cameras() const;
    int cameraAt() const;
    bool hasTorch() const;
    bool torch() const { return m_torch; }
    void setTorch(bool on);
    bool canFocus() const;
    /// The picture in the viewfinder now; null when there is none.
    QImage picture() const;

    /// The camera to look with, as chosen on this device before; by the system's name for it.
    void setChosen(const QString& id) { m_chosen = id; }
    /// Looks with the next camera there is.
    Q_INVOKABLE void nextCamera();
    /// Focuses anew on what is near.
    Q_INVOKABLE void focus();

    /// A viewfinder (its VideoOutput's sink) came into sight. Of several the last one has the picture.
    Q_INVOKABLE void show(QVideoSink* viewfinder);
    /// It went out of sight again.
    Q_INVOKABLE void leave(QVideoSink* viewfinder);
    /// Looks again after a rest or after trouble.
    Q_INVOKABLE void wake();

Q_SIGNALS:
    void read(const QString& text, const QString& symbology);
    void stateChanged();
    void outlineChanged();
    void camerasChanged();
    void cameraChosen(const QString& id);

private:
    void make();
    void start();
    void stop(State state);
    void setState(State state);
    void setOutline(const QVariantList& outline);
    void take(const Symbol& symbol);
    void tell();
    void fail(const Error& error);
    void showFrame();
    QVideoSink* viewfinder() const;

    QString m_file;
    QString m_chosen;
    bool m_torch = false;
    QVideoFrame m_shown; ///< the last one the viewfinder had
    QList<QPointer<QVideoSink>> m_viewfinders;
    State m_state = Off;
    QString m_trouble;
    QVariantList m_outline;
    std::vector<Symbol> m_taken; ///< of one frame
    QTimer m_hold, m_rest;
    std::unique_ptr<QMediaDevices> m_devices; ///< watched while there is no camera

    std::mutex m_newestGuard;
    QVideoFrame m_newest; ///< put here by the thread that makes the frames, taken by the GUI thread
    // Made with the first look: a shop may have no camera at all.
    std::unique_ptr<QVideoSink> m_frames;
    std::unique_ptr<VideoScanner> m_scanner;
    std::unique_ptr<FrameSource> m_source;
};

/// Of the symbols on a label the one that says most: our own label, then one with identifiers, then the
/// others.
const Symbol& mostTelling(const std::vector<Symbol>& symbols);

} // namespace gw
