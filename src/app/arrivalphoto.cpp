// The photograph of a label under Arrivals: from the camera's picture or a file, kept with the material.
#include <memory>

#include <QPromise>
#include <QThreadPool>

#include "app/arrivalcontroller.h"
#include "app/labelphoto.h"
#include "app/whendone.h"
#include "scan/picturefile.h"

namespace gw {

void ArrivalController::takePhoto()
{
    const QImage picture = services()->scanner()->camera()->picture();
    if (picture.isNull())
        return setError(tr("There is no camera picture now; choose a picture file instead."));
    m_photo = picture;
    Q_EMIT shown();
}

void ArrivalController::readPhoto(const QUrl& file)
{
    // A large picture takes a while; the screen does not wait for it.
    auto promise = std::make_shared<QPromise<Result<QImage>>>();
    promise->start();
    take(promise->future(), [this](const QImage& picture) {
        m_photo = picture;
        Q_EMIT shown();
    });
    QThreadPool::globalInstance()->start([promise, path = file.toLocalFile()] {
        promise->addResult(loadPicture(path));
        promise->finish();
    });
}

void ArrivalController::dropPhoto()
{
    m_photo = {};
    Q_EMIT shown();
}

std::optional<LabelPhoto> ArrivalController::photoToKeep() const
{
    const std::string jpeg = smallJpeg(m_photo, LabelPhoto::mostBytes);
    return jpeg.empty() ? std::nullopt : std::optional(LabelPhoto { services()->clock().now(), jpeg });
}

} // namespace gw
