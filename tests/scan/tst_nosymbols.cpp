// A reading that is not there books in a bottle that is not there: pictures without a symbol must give none.
#include <QDir>
#include <QTest>

#include "scan/finding.h"
#include "scan/picturefile.h"
#include "textures.h"

using namespace gw;
using namespace gw::test;

namespace {

struct Texture {
    const char* name;
    QImage (*make)(QSize, unsigned);
};

constexpr Texture textures[] = {
    { "noise", noise },
    { "clouds", clouds },
    { "wood grain", woodGrain },
    { "stripes", stripes },
    { "checks", checks },
    { "small print", digits },
};

constexpr unsigned seeds = 4;
constexpr QSize size(640, 480);

std::string readings(const std::vector<Symbol>& symbols)
{
    std::string all;
    for (const Symbol& symbol : symbols)
        all += symbol.format + " \"" + symbol.text + "\" ";
    return all;
}

} // namespace

class NoSymbols : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void texture_readsAsNothing_data()
    {
        QTest::addColumn<int>("texture");
        for (int t = 0; t < int(std::size(textures)); ++t)
            QTest::newRow(textures[t].name) << t;
    }

    void texture_readsAsNothing()
    {
        QFETCH(int, texture);
        const auto still = makeReader(Effort::Picture);
        const auto frame = makeReader(Effort::Frame);
        for (unsigned seed = 1; seed <= seeds; ++seed) {
            const QImage picture = textures[texture].make(size, seed);
            QCOMPARE(readings(findSymbols(picture, *still)), std::string());
            QCOMPARE(readings(frame->read(
                         { picture.constBits(), picture.width(), picture.height(), picture.bytesPerLine() })),
                std::string());
            for (const int number : { 0, 1, 2 })
                QCOMPARE(readings(findInFrame({ picture.constBits(), picture.width(), picture.height(),
                                                  picture.bytesPerLine() },
                             number, *frame)),
                    std::string());
        }
    }

    // Anything that ever fooled the reader goes into this folder.
    void picturesInTheFolder_readAsNothing()
    {
        const QDir folder(QStringLiteral(GW_TEST_DATA "/pictures_without_symbols"));
        const auto files = folder.entryInfoList({ QStringLiteral("*.png"), QStringLiteral("*.jpg") });
        QVERIFY(!files.isEmpty());
        for (const QFileInfo& file : files) {
            const auto symbols = readPicture(file.filePath());
            QVERIFY2(!symbols, qPrintable(file.fileName()));
            QCOMPARE(symbols.error().code, ErrorCode::NoSymbol);
        }
    }
};

QTEST_GUILESS_MAIN(NoSymbols)
#include "tst_nosymbols.moc"
