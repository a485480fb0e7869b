#include "exchange/savefile.h"

#include <cerrno>

#include <QFileInfo>
#include <QSaveFile>
#include <QStorageInfo>

namespace gw {

namespace {

tl::unexpected<Error> whyNot(const QFileInfo& file, std::size_t length, int errorNumber)
{
    const std::string name = file.fileName().toStdString();
    const QStorageInfo disk(file.absolutePath());
    const bool full = errorNumber == ENOSPC || errorNumber == EDQUOT
        || (disk.isValid() && disk.bytesAvailable() < static_cast<qint64>(length));
    if (full)
        return fail(
            ErrorCode::StoreFull, name + " could not be written: the disk is full; make room and try again.");
    if (!QFileInfo::exists(file.absolutePath()))
        return fail(ErrorCode::FileUnwritable,
            name + " could not be written: there is no such folder; make it first.");
    if (file.isDir())
        return fail(ErrorCode::FileUnwritable, name + " is a folder; give the name of a file.");
    return fail(ErrorCode::FileUnwritable,
        name
            + " could not be written; check that the folder and the file may be written, or choose another.");
}

} // namespace

Result<void> saveFile(const QString& path, std::string_view bytes)
{
    const QFileInfo info(path);
    QSaveFile file(path);
    errno = 0;
    if (!file.open(QIODevice::WriteOnly))
        return whyNot(info, bytes.size(), errno);
    const auto all = QByteArray::fromRawData(bytes.data(), static_cast<qsizetype>(bytes.size()));
    if (file.write(all) != all.size() || !file.flush()) {
        const int number = errno;
        file.cancelWriting();
        return whyNot(info, bytes.size(), number);
    }
    if (!file.commit())
        return whyNot(info, bytes.size(), errno);
    return {};
}

} // namespace gw
