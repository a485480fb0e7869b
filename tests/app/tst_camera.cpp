// The camera behind the viewfinders, with a picture of a label in its place: frames to the viewfinder, one
// word for each code, and at rest when nobody looks.
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <QVideoSink>

#include "app/camera.h"
#include "scan/framesource.h"
#include "support/drawnsymbol.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

class CameraTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir m_dir;
    QString m_label;

private Q_SLOTS:
    void initTestCase()
    {
        m_label = m_dir.filePath(u"label.png"_s);
        QVERIFY(placed(
            drawSymbol(Symbology::Gs1DataMatrix, "[01]09520123456788[10]H-2291", 4), QSize(640, 480), 240)
                .save(m_label));
    }

    void code_isToldOnce_andThePictureHolds()
    {
        Camera camera;
        camera.setFile(m_label);
        QSignalSpy read(&camera, &Camera::read);
        QVideoSink viewfinder;
        QCOMPARE(camera.state(), Camera::Off);
        camera.show(&viewfinder);
        QTRY_COMPARE_WITH_TIMEOUT(camera.state(), Camera::Held, 20000);
        QTRY_COMPARE(read.size(), 1);
        QCOMPARE(read.first().at(0).toString(), u"010952012345678810H-2291"_s);
        QCOMPARE(read.first().at(1).toString(), u"]d2"_s);
        QVERIFY(viewfinder.videoFrame().isValid());

        // The drawing stands in the middle of the sheet, and so does its outline.
        QTRY_COMPARE(camera.outline().size(), 4);
        QPointF middle;
        for (const QVariant& corner : camera.outline())
            middle += corner.toPointF() / 4;
        QVERIFY2(qAbs(middle.x() - 0.5) < 0.02 && qAbs(middle.y() - 0.5) < 0.02,
            qPrintable(u"%1 %2"_s.arg(middle.x()).arg(middle.y())));

        QTRY_COMPARE_WITH_TIMEOUT(camera.state(), Camera::Looking, 10000);
        QSignalSpy frames(&viewfinder, &QVideoSink::videoFrameChanged);
        QTRY_VERIFY(frames.size() > 2);
        QCOMPARE(read.size(), 1); // it is still before the lens
    }

    void trouble_saysWhatToDo_data()
    {
        QTest::addColumn<QString>("words");
        QTest::addColumn<bool>("mayOpen");
        QTest::addColumn<QString>("says");
        QTest::newRow("busy") << u"Device '/dev/video0' is busy"_s << true
                              << u"Another program has the camera"_s;
        QTest::newRow("no right") << u"Could not open device"_s << false << u"may not use the camera"_s;
        QTest::newRow("refused") << u"Permission denied"_s << true << u"may not use the camera"_s;
        QTest::newRow("other") << u"Internal data stream error"_s << true << u"cannot be used"_s;
        QTest::newRow("silent") << QString() << true << u"plug it in again"_s;
    }
    void trouble_saysWhatToDo()
    {
        QFETCH(QString, words);
        QFETCH(bool, mayOpen);
        QFETCH(QString, says);
        const Error error = cameraTrouble(words, mayOpen);
        QCOMPARE(error.code, ErrorCode::CameraAbsent);
        const QString sentence = QString::fromStdString(error.sentence);
        QVERIFY2(sentence.contains(says), qPrintable(sentence));
        QVERIFY(sentence.endsWith(u'.') && sentence.contains(words));
    }

    void picture_isTheOneInTheViewfinder_andAFileOffersNoKnobs()
    {
        Camera camera;
        QVERIFY(camera.picture().isNull());
        camera.setFile(m_label);
        QVideoSink viewfinder;
        camera.show(&viewfinder);
        QTRY_VERIFY_WITH_TIMEOUT(!camera.picture().isNull(), 20000);
        QCOMPARE(camera.picture().size(), QSize(640, 480));
        QVERIFY(!camera.hasTorch() && !camera.canFocus());
        QCOMPARE(camera.cameras().size(), 0);
        camera.setTorch(true); // kept for a camera that has a lamp; here it does nothing
        camera.focus();
        camera.nextCamera();
        camera.leave(&viewfinder);
        QVERIFY(camera.picture().isNull());
    }

    // The tick is ours: a short wave file, mono, 16 bits, nowhere near full loudness.
    void tick_isAShortQuietSound()
    {
        QFile file(u":/gluewright/sounds/tick.wav"_s);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QByteArray bytes = file.readAll();
        QVERIFY(bytes.startsWith("RIFF") && bytes.mid(8, 4) == "WAVE");
        QVERIFY(bytes.size() > 1000 && bytes.size() < 20'000);
        int loudest = 0;
        for (qsizetype at = 44; at + 1 < bytes.size(); at += 2) {
            const auto sample = static_cast<qint16>(static_cast<quint8>(bytes[at]) | (bytes[at + 1] << 8));
            loudest = std::max(loudest, std::abs(int(sample)));
        }
        QVERIFY2(loudest > 1000 && loudest < 12'000, qPrintable(QString::number(loudest)));
    }

    void ofSeveralViewfinders_theLastHasThePicture()
    {
        Camera camera;
        camera.setFile(m_label);
        QVideoSink screen, sheet;
        camera.show(&screen);
        QTRY_VERIFY_WITH_TIMEOUT(screen.videoFrame().isValid(), 20000);
        QTRY_COMPARE_WITH_TIMEOUT(camera.state(), Camera::Looking, 20000);
        camera.show(&sheet);
        QTRY_VERIFY(sheet.videoFrame().isValid());
        QSignalSpy onScreen(&screen, &QVideoSink::videoFrameChanged);
        QSignalSpy onSheet(&sheet, &QVideoSink::videoFrameChanged);
        QTRY_VERIFY(onSheet.size() > 2);
        QCOMPARE(onScreen.size(), 0);
        camera.leave(&sheet);
        QTRY_VERIFY(onScreen.size() > 0);
        camera.leave(&screen);
        QCOMPARE(camera.state(), Camera::Off);
        const auto seen = onScreen.size();
        QTest::qWait(700);
        QCOMPARE(onScreen.size(), seen);
    }

    void missingFile_isSaid_andLookedAtAgainWhenAsked()
    {
        Camera camera;
        const QString later = m_dir.filePath(u"later.png"_s);
        camera.setFile(later);
        QVideoSink viewfinder;
        camera.show(&viewfinder);
        QCOMPARE(camera.state(), Camera::Trouble);
        QVERIFY2(camera.trouble().endsWith(u'.'), qPrintable(camera.trouble()));
        QVERIFY(QFile::copy(m_label, later));
        camera.wake();
        QTRY_COMPARE_WITH_TIMEOUT(camera.state(), Camera::Held, 20000);
        QVERIFY(camera.trouble().isEmpty());
    }

    void viewfinderThatIsGone_doesNoHarm()
    {
        Camera camera;
        camera.setFile(m_label);
        auto viewfinder = std::make_unique<QVideoSink>();
        camera.show(viewfinder.get());
        QTRY_COMPARE_WITH_TIMEOUT(camera.state(), Camera::Held, 20000);
        viewfinder.reset();
        QTRY_COMPARE_WITH_TIMEOUT(camera.state(), Camera::Looking, 10000);
        QTest::qWait(500);
        QVideoSink other;
        camera.leave(&other);
        QCOMPARE(camera.state(), Camera::Off);
    }

    void ofOneLabelsSymbols_theMostTellingIsTaken()
    {
        const Symbol number { "9520123456788", "EAN-13", "]E0", {}, {} };
        const Symbol elements { "010952012345678810H-2291", "Data Matrix", "]d2", {}, {} };
        const Symbol page { "HTTPS://EXAMPLE.ORG", "QR Code", "]Q1", {}, {} };
        QCOMPARE(mostTelling({ page, number }).text, number.text);
        QCOMPARE(mostTelling({ number, elements, page }).text, elements.text);
        QCOMPARE(mostTelling({ page }).text, page.text);
    }
};

QTEST_MAIN(CameraTest)
#include "tst_camera.moc"
