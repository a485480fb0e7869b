// Any bytes as a picture file: loaded or refused with a sentence, and what loads is looked at by every
// engine. No crash, no hang, no memory without end. The file lies in memory.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <string>

#include <sys/mman.h>
#include <unistd.h>

#include <QGuiApplication>
#include <QImage>
#include <QLoggingCategory>

#include "scan/finding.h"
#include "scan/picturefile.h"

namespace {

/// Small pictures are looked at in every way, larger ones like a frame, the largest not at all: a look takes
/// as long as the picture is large, and the ways through the code are the same.
constexpr qint64 everyWay = 12'000;
constexpr qint64 likeAFrame = 200'000;

/// Stops the fuzzer, which then keeps the input.
void must(bool holds)
{
    if (!holds)
        std::abort();
}

void mustBeWhole(const std::vector<gw::Symbol>& symbols)
{
    for (const gw::Symbol& symbol : symbols) {
        must(!symbol.text.empty() && symbol.text.size() <= 8192);
        must(!symbol.format.empty() && symbol.symbology.starts_with("]") && !symbol.engine.empty());
    }
}

void look(const QImage& picture)
{
    static const auto still = gw::makeReader(gw::Effort::Picture);
    static const auto frame = gw::makeReader(gw::Effort::Frame);
    static qint64 number = 0;
    const qint64 pixels = qint64 { picture.width() } * picture.height();
    if (pixels <= everyWay)
        mustBeWhole(gw::findSymbols(picture, *still));
    if (pixels > likeAFrame)
        return;
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    mustBeWhole(gw::findInFrame(
        { grey.constBits(), grey.width(), grey.height(), grey.bytesPerLine() }, number++, *frame));
}

} // namespace

extern "C" int LLVMFuzzerInitialize(int* argc, char*** argv)
{
    static const QGuiApplication application(*argc, *argv);
    QLoggingCategory::setFilterRules(QStringLiteral("qt.*.warning=false"));
    return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    static const int file = memfd_create("picture", 0);
    must(file >= 0 && ftruncate(file, 0) == 0);
    must(pwrite(file, data, size, 0) == static_cast<ssize_t>(size));
    const auto picture = gw::loadPicture(QStringLiteral("/proc/self/fd/%1").arg(file));
    if (picture) {
        must(!picture->isNull() && qint64 { picture->width() } * picture->height() <= 16'100'000);
        look(*picture);
    } else {
        must(!picture.error().sentence.empty() && picture.error().sentence.size() < 1000);
    }
    return 0;
}
