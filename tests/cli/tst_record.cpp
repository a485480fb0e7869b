#include <QImage>
#include <QTest>

#include "cli/program.h"

using namespace gw::test;

/// Recording a glue-up and asking for it again, on the demonstration shop, as people type it.
class RecordCommandTest : public QObject {
    Q_OBJECT

    Program m_program;

    static QStringList words(const char* text) { return QString::fromUtf8(text).split(u'|'); }
    static void refused(const Ran& ran)
    {
        QVERIFY2(ran.status == 1, ran.err.constData());
        const QByteArray said = ran.err.trimmed();
        QVERIFY2(said.size() > 20 && said.endsWith('.') && !said.contains('\n'), said.constData());
    }
    QJsonArray entriesOf(const QString& container) const
    {
        return m_program({ QStringLiteral("show"), container }).json()[u"entries"].toArray();
    }

private Q_SLOTS:
    void initTestCase() { QCOMPARE(m_program({ QStringLiteral("demo") }).status, 0); }

    void record_takesFromTheShelf_andIsUndone()
    {
        QImage picture(3000, 1500, QImage::Format_RGB32);
        picture.fill(Qt::darkGreen);
        const QString file = m_program.file(QStringLiteral("joint.png"));
        QVERIFY(picture.save(file));
        QStringList arguments = words(
            "record|chair_full|--piece|Window seat|--air|24C|--wood|31C|--rh|45|--wood-moisture|8|--gap|0.1|"
            "--piece-is|period|--who|K.|--clamped|90|--note|Back rail|--photo");
        arguments << file;
        const Ran ran = m_program(arguments);
        QVERIFY2(ran.status == 0, ran.err.constData());
        const QJsonObject done = ran.json();
        QVERIFY(done[u"said"].toString().contains(QStringLiteral("Window seat")));
        const QString pdf = m_program.file(QStringLiteral("seat.pdf"));
        const Ran piece = m_program(
            { QStringLiteral("piece"), QStringLiteral("window seat"), QStringLiteral("--pdf"), pdf });
        QVERIFY2(piece.status == 0, piece.err.constData());
        const QJsonObject work = piece.json()[u"work"].toArray().at(0).toObject();
        QCOMPARE(work[u"said"][u"air"].toDouble(), 24.0);
        QCOMPARE(work[u"said"][u"who"].toString(), QStringLiteral("K."));
        QCOMPARE(work[u"photos"].toInt(), 1);
        QVERIFY(!work[u"gates"].toArray().isEmpty());
        QVERIFY(!work[u"comes_apart"].toArray().isEmpty());
        QCOMPARE(work[u"used"][0][u"verdict_then"].toString(), QStringLiteral("good"));
        QVERIFY(QFile(pdf).size() > 2000);
        QCOMPARE(m_program({ QStringLiteral("pieces"), QStringLiteral("window") })
                     .json()[u"pieces"]
                     .toArray()
                     .size(),
            1);
        const QJsonObject why = m_program({ QStringLiteral("failed"), QStringLiteral("Window seat"),
                                              QStringLiteral("--glassy"), QStringLiteral("yes") })
                                    .json();
        QVERIFY(why[u"recorded"].toBool());
        QVERIFY(why[u"causes"].toArray().size() > 8);
        for (const QJsonValue& cause : why[u"causes"].toArray())
            QVERIFY(!cause[u"test"].toString().isEmpty() && !cause[u"why"].toString().isEmpty());
        const QString container = done[u"container"][u"id"].toString();
        QVERIFY(!container.isEmpty());
        QVERIFY(!entriesOf(container).at(0)[u"undone"].toBool());
        const Ran undone = m_program({ QStringLiteral("undo"), done[u"entry"].toString() });
        QVERIFY2(undone.status == 0, undone.err.constData());
        QVERIFY(entriesOf(container).at(0)[u"undone"].toBool());
        refused(m_program({ QStringLiteral("undo"), done[u"entry"].toString() }));
        QCOMPARE(m_program({ QStringLiteral("verify") }).status, 0);
    }

    void whatCannotBe_isASentence_data()
    {
        QTest::addColumn<QStringList>("arguments");
        const auto row = [](const char* text) { QTest::newRow(text) << words(text); };
        row("record|chair_full|--piece|X|--pieces|0");
        row("record|chair_full|--piece|X|--gap|40");
        row("record|chair_full|--piece|X|--rh|300");
        row("record|chair_full|--piece|X|--wood|-20C");
        row("record|chair_full|--piece| ");
        row("record|chair_full|--piece|X|--used|13g");
        row("record|chair_full|--piece|X|--used|NOSUCH=13g");
        row("record|chair_full|--piece|X|--photo|no such file.png");
        row("record|chair_full|--piece|X|--clamped|-5");
        row("record|no such job|--piece|X");
        row("piece|no such piece");
        row("piece| ");
        row("failed|no such piece");
        row("failed|Bureau, scratched side|--wood-failure|140");
        row("failed|Armchair, arm joint|--on|2020-01-01");
        row("failed|Armchair, arm joint|--on|yesterday");
    }
    void whatCannotBe_isASentence()
    {
        QFETCH(QStringList, arguments);
        const QJsonObject before = m_program({ QStringLiteral("verify") }).json();
        QVERIFY(before[u"entries"].toInt() > 0);
        refused(m_program(arguments));
        QCOMPARE(m_program({ QStringLiteral("verify") }).json()[u"entries"], before[u"entries"]);
    }
};

QTEST_GUILESS_MAIN(RecordCommandTest)
#include "tst_record.moc"
