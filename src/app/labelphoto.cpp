#include "app/labelphoto.h"

#include <utility>

#include <QPainter>

#include "app/words.h"
#include "shop/stock.h"

namespace gw {

namespace {

struct Photo {
    QImage image;
    QString taken;
};

Result<Photo> photoOf(const Shop& shop, const std::string& container)
{
    auto found = findContainer(shop, container);
    if (!found)
        return tl::unexpected(found.error());
    auto kept = shop.store().labelPhoto(found->material);
    if (!kept)
        return tl::unexpected(kept.error());
    if (!*kept)
        return Photo {};
    const std::string& jpeg = (*kept)->jpeg;
    const QByteArray bytes(jpeg.data(), static_cast<qsizetype>(jpeg.size()));
    return Photo { QImage::fromData(bytes, "JPEG"), dateText(localDay((*kept)->taken)) };
}

} // namespace

LabelPicture::LabelPicture(QQuickItem* parent)
    : QQuickPaintedItem(parent)
{
    connect(this, &QQuickItem::widthChanged, this, &LabelPicture::paintedSizeChanged);
    connect(this, &QQuickItem::heightChanged, this, &LabelPicture::paintedSizeChanged);
}

void LabelPicture::setImage(const QImage& image)
{
    m_image = image;
    Q_EMIT imageChanged();
    Q_EMIT paintedSizeChanged();
    update();
}

QRectF LabelPicture::place() const
{
    if (m_image.isNull())
        return {};
    QRectF place(QPointF(), QSizeF(m_image.size()).scaled(size(), Qt::KeepAspectRatio));
    place.moveCenter(boundingRect().center());
    return place;
}

void LabelPicture::paint(QPainter* painter)
{
    if (m_image.isNull())
        return;
    painter->setRenderHint(QPainter::SmoothPixmapTransform);
    painter->drawImage(place(), m_image);
}

void LabelPhotoController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &LabelPhotoController::read);
    read();
}

void LabelPhotoController::setContainer(const QString& container)
{
    if (container == m_container)
        return;
    m_container = container;
    Q_EMIT containerChanged();
    if (services())
        read();
}

void LabelPhotoController::read()
{
    if (m_container.isEmpty())
        return;
    take(services()->shop().run(
             [id = m_container.toStdString()](const Shop& shop) { return photoOf(shop, id); }),
        [this](Photo photo) {
            m_image = std::move(photo.image);
            m_taken = std::move(photo.taken);
            Q_EMIT shown();
        });
}

} // namespace gw
