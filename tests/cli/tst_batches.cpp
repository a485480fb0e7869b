#include <cmath>

#include <QTest>

#include "cli/program.h"

using namespace gw::test;

/// A day of a pot and the minutes of a cup on the demonstration shop, as people type them.
class BatchCommandTest : public QObject {
    Q_OBJECT

    Program m_program;

    Ran run(const char* line, const QStringList& more = {}) const
    {
        QStringList arguments = QString::fromLatin1(line).split(u'|', Qt::SkipEmptyParts);
        return m_program(arguments + more);
    }
    Ran runAt(const QDateTime& at, const char* line, const QStringList& more = {}) const
    {
        return run(line, more + QStringList { QStringLiteral("--as-of"), at.toString(Qt::ISODate) });
    }
    static void refused(const Ran& ran)
    {
        QVERIFY2(ran.status == 1, ran.err.constData());
        const QByteArray said = ran.err.trimmed();
        QVERIFY2(said.size() > 20 && said.endsWith('.') && !said.contains('\n'), said.constData());
    }
    double left(const QString& label) const
    {
        return run("show", { label }).json()[u"amount"][u"value"].toDouble();
    }
    static QDateTime hoursAgo(double hours)
    {
        return QDateTime::currentDateTimeUtc().addSecs(-qint64(hours * 3600));
    }

private Q_SLOTS:
    void initTestCase() { QCOMPARE(m_program({ QStringLiteral("demo") }).status, 0); }

    void aPot_throughItsDay()
    {
        const Ran made = runAt(
            hoursAgo(6), "mix|hot_hide|--need|50g|--grade|192|--record|--place|Bench|--who|A. Tester");
        QVERIFY2(made.status == 0, made.err.constData());
        const QJsonObject batch = made.json()[u"batch"].toObject();
        const QString label = batch[u"label"].toString();
        QVERIFY(label.startsWith(QStringLiteral("GW")));
        QCOMPARE(batch[u"left"][u"value"].toDouble(), 50.0);
        QCOMPARE(batch[u"who"].toString(), QStringLiteral("A. Tester"));
        QCOMPARE(batch[u"hot_glue"][u"stands"].toString(), QStringLiteral("soaking"));
        const QJsonObject granules = batch[u"parts"].toArray().at(0).toObject();
        QCOMPARE(granules[u"amount"][u"value"].toDouble(), 17.9);
        const QString bag = granules[u"container"].toString();
        const double after = left(bag);

        QCOMPARE(runAt(hoursAgo(5), "batch|note",
                     { label, QStringLiteral("heat_on"), QStringLiteral("--temp"), QStringLiteral("60C") })
                     .status,
            0);
        QCOMPARE(runAt(hoursAgo(2), "batch|note",
                     { label, QStringLiteral("used"), QStringLiteral("--amount"), QStringLiteral("20g") })
                     .status,
            0);
        const Ran shown = runAt(hoursAgo(2), "batch|show", { label });
        QCOMPARE(shown.status, 0);
        QCOMPARE(shown.json()[u"left"][u"value"].toDouble(), 30.0);
        // Three hours at 60 C are a dose of three.
        QVERIFY(std::abs(shown.json()[u"hot_glue"][u"dose_h_at_60c"].toDouble() - 3) < 0.01);
        QCOMPARE(shown.json()[u"hot_glue"][u"dose_band"].toString(), QStringLiteral("early"));
        QCOMPARE(shown.json()[u"verdict"].toString(), QStringLiteral("good"));

        // The clock set back: a sentence, and no note.
        refused(runAt(hoursAgo(4), "batch|note", { label, QStringLiteral("heat_off") }));
        refused(runAt(hoursAgo(1), "batch|note",
            { label, QStringLiteral("used"), QStringLiteral("--amount"), QStringLiteral("31g") }));
        refused(run("undo", { made.json()[u"entry"].toString() })); // it has been used
        QCOMPARE(run("batch|show", { label }).json()[u"notes"].toArray().size(), 3);
        QCOMPARE(run("batch|list").json()[u"batches"].toArray().size(), 1);

        const Ran thrown = run("batch|note", { label, QStringLiteral("thrown_away") });
        QCOMPARE(thrown.status, 0);
        QCOMPARE(run("batch|list").json()[u"batches"].toArray().size(), 0);
        QCOMPARE(run("batch|list|--all").json()[u"batches"].toArray().size(), 1);
        QCOMPARE(run("undo", { thrown.json()[u"entry"].toString() }).status, 0);
        QCOMPARE(run("batch|list").json()[u"batches"].toArray().size(), 1);
        QCOMPARE(left(bag), after);
        QVERIFY(run("verify").json()[u"ok"].toBool());
    }

    void aCup_isUndoneWhole()
    {
        const Ran made = run("mix|epoxy|--need|30g|--pot-life|25|--room|25C|--record");
        QVERIFY2(made.status == 0, made.err.constData());
        const QJsonObject batch = made.json()[u"batch"].toObject();
        QCOMPARE(batch[u"parts"].toArray().size(), 2);
        QCOMPARE(batch[u"due"].toArray().at(0)[u"key"].toString(), QStringLiteral("cup"));
        QCOMPARE(made.json()[u"containers"].toArray().size(), 2);
        const Ran undone = run("undo", { made.json()[u"entry"].toString() });
        QVERIFY2(undone.status == 0, undone.err.constData());
        QVERIFY(run("batch|show", { batch[u"label"].toString() }).json()[u"gone"].toBool());
        QVERIFY(run("verify").json()[u"ok"].toBool());
    }

    void whatCannotBe_isASentence_andNothingWritten_data()
    {
        QTest::addColumn<QStringList>("arguments");
        const auto row
            = [](const char* text) { QTest::newRow(text) << QString::fromLatin1(text).split(u'|'); };
        row("mix|hot_hide|--need|3mg|--record");
        row("mix|epoxy_neat|--need|50g|--ratio|0:1|--record");
        row("mix|hot_hide|--need|40kg|--record"); // more than there is
        row("mix|hot_hide|--need|50g|--record|--from|granules");
        row("mix|hot_hide|--need|50g|--record|--from|granules=no such container");
        row("mix|hot_hide|--need|50g|--record|--from|resin=-");
        row("mix|hot_hide|--need|50g|--record|--as-of|2150-01-01");
        row("batch|show|no such batch");
        row("batch|note|no such batch|used_up");
    }
    void whatCannotBe_isASentence_andNothingWritten()
    {
        QFETCH(QStringList, arguments);
        const auto batches = [this] { return run("batch|list|--all").json()[u"batches"].toArray().size(); };
        const auto before = batches();
        refused(m_program(arguments));
        QCOMPARE(batches(), before);
    }

    void aRetiredContainer_isRefused()
    {
        const QJsonObject mix = run("mix|hot_hide|--need|50g").json();
        const QString bag = mix[u"parts"].toArray().at(0)[u"take"].toArray().at(0)[u"container"].toString();
        QVERIFY(!bag.isEmpty());
        QCOMPARE(run("retire", { bag, QStringLiteral("--why"), QStringLiteral("spilt") }).status, 0);
        refused(run("mix|hot_hide|--need|50g|--record|--from", { QStringLiteral("granules=") + bag }));
    }
};

QTEST_GUILESS_MAIN(BatchCommandTest)
#include "tst_batches.moc"
