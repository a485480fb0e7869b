// The drawings: each one reads, draws something, keeps to its grid and is found by the name the screens use.
#include <QtCore/QDirIterator>
#include <QtCore/QFile>
#include <QtCore/QRegularExpression>
#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtSvg/QSvgRenderer>
#include <QtTest/QTest>

using namespace Qt::StringLiterals;

namespace {

const auto iconFolder = u":/qt/qml/Gluewright/Ui/icons"_s;
const auto moduleFolder = u":/qt/qml/Gluewright/Ui"_s;

QString textOf(const QString& path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

bool isLineIcon(const QString& name)
{
    static const QStringList inColour { u"good"_s, u"test-first"_s, u"do-not-use"_s, u"not-known"_s,
        u"gluewright"_s };
    return !inColour.contains(QString(name).remove(u"-dark"_s)) || name == u"dark"_s;
}

} // namespace

class TestDrawings : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase() { QVERIFY(QDir(iconFolder).entryList({ u"*.svg"_s }).size() > 40); }

    void drawing_readsAndDraws_data()
    {
        QTest::addColumn<QString>("name");
        for (const auto& file : QDir(iconFolder).entryList({ u"*.svg"_s }))
            QTest::newRow(qPrintable(file)) << QString(file).remove(u".svg"_s);
    }

    void drawing_readsAndDraws()
    {
        QFETCH(QString, name);
        QSvgRenderer renderer(u"%1/%2.svg"_s.arg(iconFolder, name));
        QVERIFY(renderer.isValid());
        QImage image(96, 96, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        renderer.render(&painter);
        painter.end();
        int inked = 0;
        int onRim = 0;
        for (int y = 0; y < 96; ++y)
            for (int x = 0; x < 96; ++x)
                if (qAlpha(image.pixel(x, y)) > 127) {
                    ++inked;
                    onRim += x == 0 || y == 0 || x == 95 || y == 95;
                }
        // The shortest of them, the minus, is one stroke of 35 by 3 units: some 400 points at this size.
        QVERIFY2(inked > 300, qPrintable(QString::number(inked)));
        QVERIFY2(onRim == 0, "the drawing is cut off at its rim");
    }

    void lineIcon_keepsToTheGrid_data() { drawing_readsAndDraws_data(); }

    void lineIcon_keepsToTheGrid()
    {
        QFETCH(QString, name);
        if (!isLineIcon(name))
            return;
        const auto text = textOf(u"%1/%2.svg"_s.arg(iconFolder, name));
        QVERIFY(text.contains(u"viewBox=\"0 0 48 48\""_s));
        QVERIFY(text.contains(u"stroke-width=\"3\""_s));
        // One colour, so that it can be tinted.
        static const QRegularExpression colour(u"#[0-9A-Fa-f]{3,8}"_s);
        for (auto found = colour.globalMatch(text); found.hasNext();)
            QCOMPARE(found.next().captured(), u"#4A3426"_s);
    }

    void sign_hasALightAndADarkDrawing_data()
    {
        QTest::addColumn<QString>("name");
        for (const auto* name : { "good", "test-first", "do-not-use", "not-known" })
            QTest::newRow(name) << QString::fromLatin1(name);
    }

    void sign_hasALightAndADarkDrawing()
    {
        QFETCH(QString, name);
        const auto light = textOf(u"%1/%2.svg"_s.arg(iconFolder, name));
        const auto dark = textOf(u"%1/%2-dark.svg"_s.arg(iconFolder, name));
        QVERIFY(!light.isEmpty() && !dark.isEmpty());
        QVERIFY(light != dark);
        // The shapes are the same in both; only colours differ.
        static const QRegularExpression colour(u"#[0-9A-Fa-f]{6}"_s);
        QCOMPARE(QString(light).remove(colour), QString(dark).remove(colour));
    }

    void drawing_namedInAScreen_isThere()
    {
        static const QRegularExpression asked(u"(?:iconName|actionIcon): \"([a-z-]+)\""_s);
        int seen = 0;
        for (QDirIterator files(moduleFolder, { u"*.qml"_s }, QDir::Files, QDirIterator::Subdirectories);
            files.hasNext();) {
            const auto path = files.next();
            for (auto found = asked.globalMatch(textOf(path)); found.hasNext();) {
                const auto name = found.next().captured(1);
                QVERIFY2(QFile::exists(u"%1/%2.svg"_s.arg(iconFolder, name)),
                    qPrintable(path + u" asks for "_s + name));
                ++seen;
            }
        }
        QVERIFY(seen > 5);
    }
};

QTEST_MAIN(TestDrawings)

#include "tst_drawings.moc"
