// How long a look at a frame or a picture takes, and how much of it is the reader's. Prints milliseconds of
// processor time, the median of several looks.
#include <algorithm>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <memory>
#include <vector>

#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QVideoFrame>
#include <QVideoFrameFormat>

#include "scan/finding.h"
#include "scan/luminance.h"
#include "scan/symbolreader.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

constexpr QSize frameSize(1280, 720);

/// Milliseconds of this thread's processor time: what else the machine does does not count.
double now()
{
    timespec time {};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return double(time.tv_sec) * 1e3 + double(time.tv_nsec) / 1e6;
}

/// Counts what is spent in the reader behind it.
class Stopwatch final : public SymbolReader {
public:
    explicit Stopwatch(Effort effort)
        : m_reader(makeReader(effort))
    {
    }
    std::string name() const override { return m_reader->name(); }
    std::vector<Symbol> read(const LuminanceView& picture) override
    {
        const double start = now();
        auto symbols = m_reader->read(picture);
        spent += now() - start;
        ++looks;
        return symbols;
    }
    std::vector<Symbol> readBars(const LuminanceView& picture) override
    {
        const double start = now();
        auto symbols = m_reader->readBars(picture);
        spent += now() - start;
        ++looks;
        return symbols;
    }
    std::vector<Symbol> readByEach(const LuminanceView& picture, Sought sought) override
    {
        const double start = now();
        auto symbols = m_reader->readByEach(picture, sought);
        spent += now() - start;
        ++looks;
        return symbols;
    }
    double spent = 0;
    int looks = 0;

private:
    std::unique_ptr<SymbolReader> m_reader;
};

template <class Work> double medianOf(int times, Work work)
{
    std::vector<double> each;
    for (int i = 0; i < times; ++i) {
        const double start = now();
        work(i);
        each.push_back(now() - start);
    }
    std::nth_element(each.begin(), each.begin() + times / 2, each.end());
    return each[static_cast<std::size_t>(times / 2)];
}

/// A bench top: soft light, some grain, lines.
QImage benchTop(QSize size)
{
    QImage picture(size, QImage::Format_Grayscale8);
    for (int y = 0; y < size.height(); ++y)
        for (int x = 0; x < size.width(); ++x)
            picture.scanLine(y)[x]
                = static_cast<uchar>(120 + 60 * x / size.width() + (x * 7 + y * y / 90) % 23);
    return noisy(picture, 4);
}

QImage withSymbol(Symbology symbology, const char* text)
{
    QImage picture = benchTop(frameSize);
    const QImage symbol = drawSymbol(symbology, text, 2);
    QPainter(&picture).drawImage((frameSize.width() - symbol.width()) / 2, 240, symbol);
    return picture;
}

void report(const char* name, const QImage& frame)
{
    const LuminanceView view { frame.constBits(), frame.width(), frame.height(), frame.bytesPerLine() };
    Stopwatch reader(Effort::Frame);
    std::size_t found = 0;
    constexpr int times = 24;
    double whole = 0;
    double slowest = 0;
    for (int i = 0; i < times; ++i) {
        const double start = now();
        found += findInFrame(view, i, reader).empty() ? 0U : 1U;
        const double spent = now() - start;
        whole += spent / times;
        slowest = std::max(slowest, spent);
    }
    std::printf("frame    %-18s %7.1f  in the reader %7.1f  slowest %7.1f  read in %2zu of %d\n", name, whole,
        reader.spent / times, slowest, found, times);
}

void reportPicture(const char* name, const QImage& picture)
{
    Stopwatch reader(Effort::Picture);
    std::size_t found = 0;
    const double whole = medianOf(3, [&](int) { found = findSymbols(picture, reader).size(); });
    std::printf("picture  %-18s %7.1f  looks %d  found %zu\n", name, whole, reader.looks / 3, found);
}

void reportCopy(const char* name, QVideoFrameFormat::PixelFormat format)
{
    QVideoFrame frame(QVideoFrameFormat(frameSize, format));
    if (frame.map(QVideoFrame::WriteOnly)) {
        for (int plane = 0; plane < frame.planeCount(); ++plane)
            std::memset(frame.bits(plane), 90, static_cast<std::size_t>(frame.mappedBytes(plane)));
        frame.unmap();
    }
    Luminance luminance;
    std::printf("copying  %-18s %7.3f\n", name, medianOf(50, [&](int) { copyLuminance(frame, luminance); }));
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication app(argc, argv);
    std::printf("%s, milliseconds\n", makeReader()->name().c_str());
    report("bench top", benchTop(frameSize));
    QImage white(frameSize, QImage::Format_Grayscale8);
    white.fill(230);
    report("white", white);
    report("EAN-13", withSymbol(Symbology::Ean13, "952012345678"));
    report("EAN-8", withSymbol(Symbology::Ean8, "9521234"));
    report("UPC-A", withSymbol(Symbology::UpcA, "41600033610"));
    report("ITF-14", withSymbol(Symbology::Itf14, "1952012345678"));
    report("Code 128", withSymbol(Symbology::Code128, "GW7K4M9QX"));
    report("GS1-128", withSymbol(Symbology::Gs1_128, "[01]09520123456788[17]270630"));
    report("GS1 DataMatrix", withSymbol(Symbology::Gs1DataMatrix, "[01]09520123456788[10]H-2291[17]270630"));
    report("QR Code", withSymbol(Symbology::Qr, "GW7K4M9QX"));
    reportPicture("bench top 0.9 MP", benchTop(frameSize));
    reportPicture("bench top 12 MP", benchTop(QSize(4000, 3000)));
    reportPicture("Data Matrix 0.9 MP", withSymbol(Symbology::Gs1DataMatrix, "[01]09520123456788[10]H-2291"));
    reportPicture("EAN-13 0.9 MP", withSymbol(Symbology::Ean13, "952012345678"));
    reportCopy("NV12", QVideoFrameFormat::Format_NV12);
    reportCopy("YUYV", QVideoFrameFormat::Format_YUYV);
    reportCopy("BGRA", QVideoFrameFormat::Format_BGRA8888);
    return 0;
}
