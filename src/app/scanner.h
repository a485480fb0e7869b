#pragma once

#include <QObject>
#include <QString>
#include <QUrl>
#include <QtQmlIntegration/qqmlintegration.h>

#include "app/camera.h"
#include "app/wedge.h"

namespace gw {

/// Everything that reads a code: the hand scanner, the camera, a picture file, a line typed in. All of them
/// end in scanned().
class Scanner : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made once, by the program")
    Q_PROPERTY(gw::Camera* camera READ camera CONSTANT)
    /// What is wrong with the picture file chosen last, ready to show; empty when nothing is.
    Q_PROPERTY(QString trouble READ trouble NOTIFY troubleChanged)
    Q_PROPERTY(bool reading READ reading NOTIFY readingChanged) ///< a picture file is being looked at

public:
    explicit Scanner(QObject* parent = nullptr);

    /// A picture or video in place of the camera.
    void setCameraFile(const QString& file) { m_camera.setFile(file); }
    Wedge& wedge() { return m_wedge; }
    Camera* camera() { return &m_camera; }

    QString trouble() const { return m_trouble; }
    bool reading() const { return m_reading > 0; }

    /// Reads the codes of a picture file; trouble() when there is none in it.
    Q_INVOKABLE void readPicture(const QUrl& file);
    /// A code as a person typed it.
    Q_INVOKABLE void typed(const QString& text);
    Q_INVOKABLE void clearTrouble() { setTrouble({}); }

Q_SIGNALS:
    /// A code was read. symbology is the ISO/IEC 15424 identifier where the reader knew it.
    void scanned(const QString& text, const QString& symbology);
    void troubleChanged();
    void readingChanged();

private:
    void setTrouble(const QString& trouble);

    Wedge m_wedge;
    Camera m_camera;
    QString m_trouble;
    int m_reading = 0;
};

} // namespace gw
