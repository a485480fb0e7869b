#include <cmath>

#include <QElapsedTimer>
#include <QTest>

#include "cli/program.h"

using namespace gw::test;

namespace {

QStringList words(const char* text) { return QString::fromUtf8(text).split(u' ', Qt::SkipEmptyParts); }

/// A reading every so many minutes from 1 January 2024 on, in UTC.
QByteArray loggerFile(int count, int minutes, const std::function<double(int)>& degrees)
{
    QByteArray file = "timestamp,temperature_c\n";
    const QDateTime start(QDate(2024, 1, 1), QTime(0, 0), Qt::UTC);
    for (int i = 0; i < count; ++i) {
        file += start.addSecs(qint64 { 60 } * minutes * i).toString(Qt::ISODate).toUtf8() + ','
            + QByteArray::number(degrees(i), 'f', 2) + '\n';
    }
    return file;
}

QString written(const Program& program, const QByteArray& bytes, const char* name = "logger.csv")
{
    const QString path = program.file(QString::fromUtf8(name));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size())
        qFatal("cannot write a file");
    return path;
}

void hasKeys(const QJsonObject& json, const char* keys)
{
    for (const QString& key : words(keys))
        QVERIFY2(json.contains(key), qPrintable(key));
}

void refused(const Ran& ran)
{
    QVERIFY2(ran.status == 1, ran.err.constData());
    const QByteArray said = ran.err.trimmed();
    QVERIFY2(said.size() > 20 && said.endsWith('.') && !said.contains('\n'), said.constData());
    QVERIFY(ran.out.isEmpty());
}

} // namespace

/// The climate and the readings commands, as scripts use them.
class ClimateCommandsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void import_andShow_tellOfThePlace()
    {
        const Program program;
        QCOMPARE(program(words("place Lean-to --low -8C --high 34C --dec-feb -8C 6C")).status, 0);
        // Four days with a day's gap after the second; -3 C in the second night.
        QByteArray file = loggerFile(576, 10, [](int i) { return i >= 180 && i < 240 ? -3.0 : 7.5; });
        QList<QByteArray> lines = file.split('\n');
        lines.remove(1 + 288, 143);
        const QString path = written(program, lines.join('\n'));
        const Ran imported = program(words("climate import lean-to") << path);
        QVERIFY2(imported.status == 0, imported.err.constData());
        constexpr const char* promised = "readings from to low_c high_c mkt_c unwatched_hours frost";
        hasKeys(imported.json(), promised);
        hasKeys(imported.json(), "added already_there different set_aside set_aside_rows layout doubts");
        QCOMPARE(imported.json()[u"added"].toInt(), 433);

        const QJsonObject shown = program(words("climate show Lean-to")).json();
        hasKeys(shown, promised);
        QCOMPARE(shown[u"readings"].toInt(), 433);
        QCOMPARE(shown[u"from"].toString(), QStringLiteral("2024-01-01T00:00:00Z"));
        QCOMPARE(shown[u"to"].toString(), QStringLiteral("2024-01-04T23:50:00Z"));
        QCOMPARE(shown[u"low_c"].toDouble(), -3.0);
        QCOMPARE(shown[u"high_c"].toDouble(), 7.5);
        QVERIFY(std::abs(shown[u"unwatched_hours"].toDouble() - 24) < 1e-6);
        QCOMPARE(shown[u"frost"].toObject()[u"freezes"].toInt(), 1);
        QCOMPARE(shown[u"frost"].toObject()[u"thaws"].toInt(), 1);
        QVERIFY(shown[u"mkt_c"].toDouble() < 7.5 && shown[u"mkt_c"].toDouble() > 5);

        const QJsonObject again = program(words("climate import Lean-to") << path).json();
        QCOMPARE(again[u"added"].toInt(), 0);
        QCOMPARE(again[u"already_there"].toInt(), 433);
        QCOMPARE(again[u"readings"].toInt(), 433);
        // As of a moment, only what was read by then.
        const QJsonObject then = program(words("climate show Lean-to --as-of 2024-01-01T01:00:00Z")).json();
        QCOMPARE(then[u"readings"].toInt(), 7);
    }

    void show_ofAPlaceWithoutReadings_makesNothingUp()
    {
        const Program program;
        program(words("place Bench"));
        const QJsonObject shown = program(words("climate show Bench")).json();
        QCOMPARE(shown[u"readings"].toInt(), 0);
        for (const QString& key : words("from to low_c high_c mean_c mkt_c unwatched_hours"))
            QVERIFY2(shown.contains(key) && shown[key].isNull(), qPrintable(key));
    }

    void lowHigh_andTonight()
    {
        const Program program;
        program(words("place Lean-to --low -8C --high 34C"));
        program(words("arrive --material White_PVA --class pva_white --amount 500g --place Lean-to"));
        const Ran typed = program(words("climate low-high Lean-to 2024-11-02 -3C 41F"));
        QVERIFY2(typed.status == 0, typed.err.constData());
        QCOMPARE(typed.json()[u"added"].toInt(), 2);
        QCOMPARE(typed.json()[u"high_c"].toDouble(), 5.0);
        refused(program(words("climate low-high Lean-to 2024-11-02 -3C 12C")));
        refused(program(words("climate low-high Lean-to 2024-11-03 12C -3C")));
        refused(program(words("climate low-high Lean-to 0201-11-03 -3C 12C")));
        refused(program(words("climate low-high Lean-to 2199-11-03 -3C 12C")));
        refused(program(words("climate low-high Lean-to 2024-11-03 -3C 500C")));
        refused(program(words("climate low-high Lean-to 2024-11-03 -3 12C")));

        const Ran cold = program(words("climate tonight Lean-to -8C"));
        QVERIFY2(cold.status == 0, cold.err.constData());
        hasKeys(cold.json(), "as_of low_c places said");
        const QJsonObject place = cold.json()[u"places"].toArray().first().toObject();
        QCOMPARE(place[u"place"].toString(), QStringLiteral("Lean-to"));
        const QJsonObject container = place[u"containers"].toArray().first().toObject();
        hasKeys(container, "id material amount harm hours_to_freezing hours_to_frost_event text");
        QCOMPARE(container[u"harm"].toString(), QStringLiteral("spoils"));
        QVERIFY(program(words("climate tonight Lean-to 15C")).json()[u"places"].toArray().isEmpty());
        refused(program(words("climate tonight Attic -8C")));
        refused(program(words("climate tonight Lean-to -8")));
    }

    void badFiles_areRefusedInASentence_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::newRow("empty") << QByteArray();
        QTest::newRow("no table") << QByteArray("Dear client,\nthe chair is ready.\n");
        QTest::newRow("no temperature") << QByteArray("time,door\n2024-01-01 00:00:00,open\n");
        QTest::newRow("words for temperatures")
            << QByteArray("time,temperature_c\n2024-01-01 00:00,warm\n2024-01-01 01:00,cold\n");
        QTest::newRow("year 0201") << QByteArray(
            "time,temperature_c\n0201-01-01 00:00,12\n0201-01-01 01:00,13\n");
        QTest::newRow("500 C throughout")
            << QByteArray("time,temperature_c\n2024-01-01 00:00,500\n2024-01-01 01:00,500\n");
        QTest::newRow("zeros") << QByteArray(4000, '\0');
    }
    void badFiles_areRefusedInASentence()
    {
        QFETCH(QByteArray, bytes);
        const Program program;
        program(words("place Bench"));
        const QString path = written(program, bytes);
        refused(program(words("climate import Bench") << path));
        refused(program(words("readings") << path));
        QCOMPARE(program(words("climate show Bench")).json()[u"readings"].toInt(), 0);
    }

    void badRows_areSetAsideByLine()
    {
        const Program program;
        program(words("place Bench"));
        QByteArray file = loggerFile(48, 60, [](int) { return 18.0; });
        file.replace("2024-01-01T05:00:00Z,18.00", "2024-01-01T05:00:00Z,500");
        file.replace("2024-01-01T07:00:00Z,18.00", "0201-01-01T07:00:00Z,18.00");
        file += "2024-01-03T00:00:0";
        const Ran ran = program(words("climate import Bench") << written(program, file));
        QVERIFY2(ran.status == 0, ran.err.constData());
        QCOMPARE(ran.json()[u"added"].toInt(), 46);
        const QJsonArray rows = ran.json()[u"set_aside_rows"].toArray();
        QCOMPARE(rows.size(), 3);
        QCOMPARE(rows.at(0).toObject()[u"line"].toInt(), 7);
        QCOMPARE(rows.at(1).toObject()[u"line"].toInt(), 9);
        QCOMPARE(rows.at(2).toObject()[u"line"].toInt(), 50);
        refused(program(words("climate import Attic") << program.file(QStringLiteral("logger.csv"))));
        refused(program(words("climate import Bench") << program.file(QStringLiteral("none.csv"))));
        refused(program(words("climate import Bench") << program.file(QString())));
    }

    void readings_answerByThemselves()
    {
        const Program program;
        // 10 days at 30 C: by Q10 2 and 20 C as old as 20 days; half of a life of 40 days.
        const QString path = written(program, loggerFile(241, 60, [](int) { return 30.0; }));
        const Ran ran
            = program.plain(words("readings") << path << words("--q10 2 --ref 20C --life-days 40 --json"));
        QVERIFY2(ran.status == 0, ran.err.constData());
        const QJsonObject json = ran.json();
        hasKeys(json,
            "count from to mean_c mkt_c equivalent_days life_used freezes thaws hours_below low_c high_c");
        QCOMPARE(json[u"count"].toInt(), 241);
        QCOMPARE(json[u"from"].toString(), QStringLiteral("2024-01-01T00:00:00Z"));
        QCOMPARE(json[u"to"].toString(), QStringLiteral("2024-01-11T00:00:00Z"));
        QVERIFY(std::abs(json[u"mean_c"].toDouble() - 30) < 1e-9);
        QVERIFY(std::abs(json[u"mkt_c"].toDouble() - 30) < 1e-6);
        QVERIFY(std::abs(json[u"equivalent_days"].toDouble() - 20) < 1e-9);
        QVERIFY(std::abs(json[u"life_used"].toDouble() - 0.5) < 1e-9);
        QCOMPARE(json[u"freezes"].toInt(), 0);
        QVERIFY(!QFile::exists(program.store())); // no store is made for it

        const QJsonObject bare = program.plain(words("readings --json") << path).json();
        QVERIFY(bare[u"equivalent_days"].isNull() && bare[u"life_used"].isNull());

        // Frost with its own limits: down to -2.5 and up to 0.5 three times.
        const QString frost = written(
            program, loggerFile(97, 15, [](int i) { return i % 32 < 16 ? 0.5 : -2.5; }), "frost.csv");
        const QJsonObject usual = program.plain(words("readings --json") << frost).json();
        QCOMPARE(usual[u"freezes"].toInt(), 1);
        QCOMPARE(usual[u"thaws"].toInt(), 0);
        const QJsonObject limits
            = program.plain(words("readings --json --freeze -2C --thaw 0C") << frost).json();
        QCOMPARE(limits[u"freezes"].toInt(), 3);
        QCOMPARE(limits[u"thaws"].toInt(), 3);

        refused(program.plain(words("readings") << path << words("--q10 0.5 --ref 20C")));
        refused(program.plain(words("readings") << path << words("--q10 2 --ref 20")));
        refused(program.plain(words("readings") << path << words("--q10 2 --ref 20C --life-days 0")));
        refused(program.plain(words("readings") << path << words("--freeze 3C --thaw 1C")));
        QCOMPARE(program.plain(words("readings") << path << words("--q10 2")).status, 2);
        QCOMPARE(program.plain(words("readings") << path << words("--q10 2 --ea 83 --ref 20C")).status, 2);
    }

    void readings_ofDays_takeLowAndHigh()
    {
        const Program program;
        const QString path = written(
            program, "date,tmin_c,tmax_c\n2024-01-01,-5,3\n2024-01-02,-4,2\n2024-01-03,1,9\n", "days.csv");
        const Ran ran = program.plain(words("readings --json") << path);
        QVERIFY2(ran.status == 0, ran.err.constData());
        QCOMPARE(ran.json()[u"count"].toInt(), 3);
        QCOMPARE(ran.json()[u"low_c"].toDouble(), -5.0);
        QCOMPARE(ran.json()[u"high_c"].toDouble(), 9.0);
        QCOMPARE(ran.json()[u"freezes"].toInt(), 2);
        QCOMPARE(ran.json()[u"daily"].toBool(), true);
    }

    void import_thatIsKilled_leavesAllOrNothing()
    {
        const Program program;
        program(words("place Bench"));
        const QString path
            = written(program, loggerFile(120'000, 2, [](int i) { return 15 + i % 70 * 0.1; }));
        QStringList arguments = words("climate import Bench") << path << words("--store") << program.store();
        QElapsedTimer clock;
        clock.start();
        {
            const Program other;
            other(words("place Bench"));
            QVERIFY(other(words("climate import Bench") << path).status == 0);
        }
        const qint64 whole = clock.elapsed();
        int killed = 0;
        for (const int percent : { 15, 30, 45, 60, 75 }) {
            QProcess process;
            process.start(QStringLiteral(GW_PROGRAM), arguments);
            QVERIFY(process.waitForStarted());
            if (!process.waitForFinished(static_cast<int>(whole * percent / 100))) {
                process.kill();
                process.waitForFinished();
                ++killed;
            }
            QCOMPARE(program(words("verify")).status, 0);
            const int there = program(words("climate show Bench")).json()[u"readings"].toInt();
            QVERIFY2(there == 0 || there == 120'000, qPrintable(QString::number(there)));
        }
        QVERIFY(killed > 0);
        QVERIFY(program(words("climate import Bench") << path).status == 0);
        QCOMPARE(program(words("climate show Bench")).json()[u"readings"].toInt(), 120'000);
    }
};

QTEST_GUILESS_MAIN(ClimateCommandsTest)
#include "tst_climate.moc"
