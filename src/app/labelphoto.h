#pragma once

#include <QImage>
#include <QQuickPaintedItem>
#include <QVariant>

#include "app/controller.h"

namespace gw {

/// Shows a picture that is in memory, whole and in its own proportions.
class LabelPicture : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QVariant image READ shownImage WRITE showImage NOTIFY imageChanged) ///< a QImage
    // How large it comes out in this item; 0 while there is none.
    Q_PROPERTY(double paintedWidth READ paintedWidth NOTIFY paintedSizeChanged)
    Q_PROPERTY(double paintedHeight READ paintedHeight NOTIFY paintedSizeChanged)

public:
    explicit LabelPicture(QQuickItem* parent = nullptr);

    QImage image() const { return m_image; }
    void setImage(const QImage& image);
    QVariant shownImage() const { return m_image; }
    void showImage(const QVariant& image) { setImage(image.value<QImage>()); }
    void paint(QPainter* painter) override;
    double paintedWidth() const { return place().width(); }
    double paintedHeight() const { return place().height(); }

Q_SIGNALS:
    void imageChanged();
    void paintedSizeChanged();

private:
    QRectF place() const;

    QImage m_image;
};

/// The photograph of the label of what is in a container.
class LabelPhotoController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString container READ container WRITE setContainer NOTIFY containerChanged) ///< its id
    Q_PROPERTY(QVariant image READ shownImage NOTIFY shown) ///< a QImage
    Q_PROPERTY(bool there READ there NOTIFY shown)
    Q_PROPERTY(QString taken READ taken NOTIFY shown) ///< "25 May 2026"

public:
    using Controller::Controller;

    QString container() const { return m_container; }
    void setContainer(const QString& container);
    QImage image() const { return m_image; }
    QVariant shownImage() const { return m_image; }
    bool there() const { return !m_image.isNull(); }
    QString taken() const { return m_taken; }

Q_SIGNALS:
    void containerChanged();
    void shown();

protected:
    void begin() override;

private:
    void read();

    QString m_container, m_taken;
    QImage m_image;
};

} // namespace gw
