#include "scan/picturefile.h"

#include <cmath>

#include <QBuffer>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>

#include "scan/finding.h"

namespace gw {

namespace {

constexpr int longestSideKept = 1600;
constexpr qint64 mostPixels = 16'000'000;
/// Beyond this a file is not decoded at all, scaled down or not: no camera makes it.
constexpr qint64 absurdPixels = 400'000'000;

tl::unexpected<Error> unreadable(const QString& path, const char* whatAndWhatToDo)
{
    return fail(ErrorCode::FileUnreadable, QFileInfo(path).fileName().toStdString() + ' ' + whatAndWhatToDo);
}

/// Black on nothing is meant as black on paper.
QImage onWhite(const QImage& picture)
{
    if (!picture.hasAlphaChannel())
        return picture;
    QImage paper(picture.size(), QImage::Format_RGB32);
    if (paper.isNull())
        return {};
    paper.fill(Qt::white);
    QPainter(&paper).drawImage(0, 0, picture);
    return paper;
}

} // namespace

Result<QImage> loadPicture(const QString& path)
{
    const QFileInfo file(path);
    if (!file.exists())
        return unreadable(path, "was not found; check the name and the folder.");
    // Not a folder, a pipe or a device: those may never end.
    if (!file.isFile())
        return unreadable(path, "is not a file; give a picture such as a PNG or JPEG.");
    if (!file.isReadable())
        return unreadable(path, "may not be read; ask for the right to read it, or copy it elsewhere.");
    if (file.size() == 0)
        return unreadable(path, "is empty; take or save the picture again.");

    QImageReader reader(path);
    reader.setDecideFormatFromContent(true);
    reader.setAutoTransform(true);
    // Drawings in text form can refer to other files and grow without end; symbols come as photographs or
    // prints.
    if (!reader.canRead() || reader.format().startsWith("svg"))
        return unreadable(path, "is not a picture that can be read; save it as PNG or JPEG.");

    const QSize size = reader.size();
    const qint64 pixels = qint64(size.width()) * size.height();
    if (size.isValid() && pixels > absurdPixels)
        return unreadable(path, "is far too large a picture; crop it to the label.");
    if (size.isValid() && pixels > mostPixels) {
        const double by = std::sqrt(double(mostPixels) / double(pixels));
        reader.setScaledSize((QSizeF(size) * by).toSize().expandedTo(QSize(1, 1)));
    }
    const QImage picture = reader.read();
    if (picture.isNull())
        return unreadable(path, "is broken or too large a picture; take or save it again.");
    QImage upright = onWhite(picture);
    if (upright.isNull())
        return unreadable(path, "is too large a picture; crop it to the label.");
    return upright;
}

std::string smallJpeg(const QImage& picture, std::size_t mostBytes)
{
    if (picture.isNull())
        return {};
    const QImage whole = picture.convertToFormat(QImage::Format_RGB32);
    // The pixels alone.
    QImage small
        = QImage(whole.constBits(), whole.width(), whole.height(), whole.bytesPerLine(), QImage::Format_RGB32)
              .copy();
    for (int side = longestSideKept; side >= 200; side /= 2) {
        if (small.width() > side || small.height() > side)
            small = small.scaled(side, side, Qt::KeepAspectRatio, Qt::SmoothTransformation);
        for (const int quality : { 85, 70, 50 }) {
            QBuffer buffer;
            buffer.open(QIODevice::WriteOnly);
            if (small.save(&buffer, "JPEG", quality) && static_cast<std::size_t>(buffer.size()) <= mostBytes)
                return buffer.data().toStdString();
        }
    }
    return {};
}

Result<std::vector<Symbol>> readPicture(const QString& path, SymbolReader& reader)
{
    const auto picture = loadPicture(path);
    if (!picture)
        return tl::unexpected<Error>(picture.error());
    auto symbols = findSymbols(*picture, reader);
    if (symbols.empty())
        return fail(ErrorCode::NoSymbol,
            "No bar code or square code was found in " + QFileInfo(path).fileName().toStdString()
                + "; take the picture closer, straight on and in good light.");
    return symbols;
}

Result<std::vector<Symbol>> readPicture(const QString& path)
{
    const auto reader = makeReader(Effort::Picture);
    return readPicture(path, *reader);
}

} // namespace gw
