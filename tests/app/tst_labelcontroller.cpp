// Our labels as the window prints them, on a real store with the demonstration shop.
#include <QDir>
#include <QFile>
#include <QSignalSpy>
#include <QTest>

#include "app/labelcontroller.h"
#include "scan/finding.h"
#include "shop/containerlabel.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

namespace {

struct Screen {
    explicit Screen(AppBench::Stock stock = AppBench::Stock::Demo)
        : bench(stock)
    {
        labels.setServices(&bench.services);
    }
    void take(const QStringList& containers)
    {
        labels.take(containers);
        settle();
    }
    void settle()
    {
        [this] { QTRY_VERIFY(!labels.busy()); }();
    }
    QStringList shelf(const std::optional<PlaceId>& place = {})
    {
        QStringList codes;
        for (const std::string& code :
            bench.ask([this, place](Shop& shop) { return shelfLabelCodes(shop, bench.now, place); }))
            codes.append(QString::fromStdString(code));
        return codes;
    }

    AppBench bench;
    LabelController labels;
};

/// What a reader finds in the preview, which is the label dot by dot.
std::string readFrom(const QVariant& preview)
{
    const auto reader = makeReader();
    const QImage picture = preview.value<QImage>().convertToFormat(QImage::Format_Grayscale8);
    const auto symbols = findSymbols(picture, *reader);
    return symbols.size() == 1 ? symbols.front().text : std::string();
}

} // namespace

class LabelControllerTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void oneContainer_isShownAsItPrints()
    {
        Screen screen;
        const QString code = screen.shelf().first();
        screen.take({ code });
        QVERIFY(screen.labels.ready());
        QCOMPARE(QString::fromStdString(readFrom(screen.labels.preview())), code);
        QVERIFY(screen.labels.previewWords().startsWith(code));
        QCOMPARE(screen.labels.summary(), u"1 label(s)"_s);
        screen.labels.setDots(1);
        screen.settle();
        QCOMPARE(screen.labels.preview().value<QImage>().width(), 591); // 50 mm at 300 dots per 25.4 mm
    }

    void labelScanned_whereverOneIs_opensItsContainer()
    {
        Screen screen;
        const QString code = screen.shelf().last();
        screen.take({ code });
        screen.bench.navigation.goTo(Navigation::Order);
        screen.bench.scanner.typed(QString::fromStdString(readFrom(screen.labels.preview())));
        QTRY_COMPARE(screen.bench.navigation.container(), code);
        QCOMPARE(screen.bench.navigation.destination(), static_cast<int>(Navigation::Order));
    }

    void pdf_isWritten_andSaid_andHowIsRemembered()
    {
        Screen screen;
        QSignalSpy said(&screen.bench.services, &AppServices::said);
        QSignalSpy done(&screen.labels, &LabelController::done);
        screen.take(screen.shelf().mid(0, 5));
        screen.labels.setSize(2);
        screen.labels.setPage(LabelController::A4);
        screen.settle();
        QCOMPARE(screen.labels.columns(), 3); // 70 mm into 210
        QCOMPARE(screen.labels.rows(), 8); // 37 mm into 297
        screen.labels.setFirst(23);
        screen.settle();
        QCOMPARE(screen.labels.summary(), u"5 label(s) on 2 sheet(s)"_s);
        const QString path = screen.bench.folder.filePath(u"labels.pdf"_s);
        screen.labels.savePdf(QUrl::fromLocalFile(path));
        QTRY_COMPARE(done.size(), 1);
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly) && file.read(5) == "%PDF-");
        QVERIFY(said.last().first().toString().contains(QDir::toNativeSeparators(path)));
        // Labels 23 and 24 were the last of that sheet; the next free one is the fourth of the second.
        QCOMPARE(screen.labels.first(), 4);

        LabelController next;
        next.setServices(&screen.bench.services);
        QCOMPARE(next.size(), 2);
        QCOMPARE(next.page(), LabelController::A4);
        QCOMPARE(next.first(), 4);
    }

    void aShelf_canBeNarrowedToAPlace()
    {
        Screen screen;
        screen.take({});
        const auto places = screen.bench.ask([](Shop& shop) { return shop.store().places(); });
        QCOMPARE(screen.labels.places().size(), static_cast<qsizetype>(places.size()) + 1);
        QCOMPARE(screen.labels.summary(), u"%1 label(s)"_s.arg(screen.shelf().size()));
        int all = 0;
        for (std::size_t i = 0; i < places.size(); ++i) {
            const auto there = screen.shelf(places[i].id);
            all += static_cast<int>(there.size());
            screen.labels.setPlace(static_cast<int>(i) + 1);
            screen.settle();
            QCOMPARE(screen.labels.ready(), !there.isEmpty());
            if (there.isEmpty())
                QVERIFY(screen.labels.errorText().contains(u"Nothing stands there"_s));
            else
                QCOMPARE(screen.labels.summary(), u"%1 label(s)"_s.arg(there.size()));
        }
        QVERIFY(all > 0);
    }

    void sizesThatCannotBe_areToldOf_andTheNextGoodOneClearsIt()
    {
        Screen screen;
        screen.take({ screen.shelf().first() });
        const int own = static_cast<int>(screen.labels.sizes().size()) - 1;
        screen.labels.setSize(own);
        screen.settle();
        QVERIFY(!screen.labels.ready() && !screen.labels.errorText().isEmpty());
        for (const QString& wrong : { u"50"_s, u"five by six"_s, u"4 x 4 mm"_s, u"900 x 900 mm"_s }) {
            screen.labels.setOwnSize(wrong);
            screen.settle();
            QVERIFY2(!screen.labels.ready() && !screen.labels.errorText().isEmpty(), qPrintable(wrong));
            QVERIFY(screen.labels.preview().value<QImage>().isNull());
        }
        screen.labels.setOwnSize(u"63,5 x 38,1"_s);
        screen.settle();
        QVERIFY(screen.labels.ready() && screen.labels.errorText().isEmpty());
        QCOMPARE(screen.labels.preview().value<QImage>().width(), 508); // 63.5 mm at 203 dots per 25.4 mm
        screen.labels.setPage(LabelController::A4);
        screen.labels.setColumns(4);
        screen.settle();
        QVERIFY(!screen.labels.ready() && screen.labels.errorText().contains(u"do not fit"_s));
    }

    void smallLabels_sayWhatTheyLeaveOut()
    {
        Screen screen;
        screen.take({}); // one of them has more to say than there is room
        screen.labels.setSize(0);
        screen.settle();
        QVERIFY(screen.labels.leftOut().startsWith(u"No room on this size for: "_s));
        screen.labels.setSize(3);
        screen.settle();
        QVERIFY(screen.labels.leftOut().isEmpty());
    }

    void emptyShelf_hasNothingToPrint()
    {
        Screen screen(AppBench::Stock::Places);
        screen.take({});
        QVERIFY(!screen.labels.ready());
        QVERIFY(screen.labels.errorText().contains(u"Nothing stands there"_s));
    }

    void containerThatIsGone_isToldOf()
    {
        Screen screen;
        screen.take({ u"GWNOSUCH2"_s });
        QVERIFY(!screen.labels.ready());
        QVERIFY(screen.labels.errorText().contains(u"GWNOSUCH2"_s));
    }

    void fileThatCannotBeWritten_isToldOf()
    {
        Screen screen;
        screen.take({ screen.shelf().first() });
        QSignalSpy done(&screen.labels, &LabelController::done);
        screen.labels.savePdf(QUrl::fromLocalFile(screen.bench.folder.filePath(u"no/such/labels.pdf"_s)));
        screen.settle();
        QCOMPARE(done.size(), 0);
        QVERIFY(!screen.labels.errorText().isEmpty());
    }
};

QTEST_MAIN(LabelControllerTest)
#include "tst_labelcontroller.moc"
