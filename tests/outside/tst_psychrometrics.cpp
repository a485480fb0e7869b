#include <QDir>
#include <QProcess>
#include <QStandardPaths>
#include <QTest>

#include "measure/moistair.h"

using namespace gw;

/// Dew point and vapour pressure against a library of another's making, fetched from npm when the test runs:
/// psychrolib 1.1.1 (MIT), the formulae of the ASHRAE Handbook, Fundamentals 2017, chapter 1.
class TestPsychrometrics : public QObject {
    Q_OBJECT

private:
    QString m_said;

    static bool ran(QProcess& process, const QString& program, const QStringList& arguments)
    {
        process.start(program, arguments);
        return process.waitForFinished(120'000) && process.exitStatus() == QProcess::NormalExit
            && process.exitCode() == 0;
    }

private Q_SLOTS:
    void initTestCase()
    {
        const QString node = QStandardPaths::findExecutable(QStringLiteral("node"));
        const QString npm = QStandardPaths::findExecutable(QStringLiteral("npm"));
        if (node.isEmpty() || npm.isEmpty())
            QSKIP("node and npm are not here; the dew points are checked against the kept table only.");
        const QDir folder(QStringLiteral(GW_PSYCHRO_FOLDER));
        QVERIFY(QDir().mkpath(folder.path()));
        QProcess process;
        if (!folder.exists(QStringLiteral("node_modules/psychrolib"))
            && !ran(process, npm,
                { QStringLiteral("install"), QStringLiteral("--prefix"), folder.path(),
                    QStringLiteral("--no-audit"), QStringLiteral("--no-fund"), QStringLiteral("--silent"),
                    QStringLiteral("psychrolib@1.1.1") }))
            QSKIP("npm cannot fetch psychrolib; the dew points are checked against the kept table only.");
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("NODE_PATH"), folder.filePath(QStringLiteral("node_modules")));
        process.setProcessEnvironment(environment);
        QVERIFY2(ran(process, node, { QStringLiteral(GW_PSYCHRO_ORACLE) }), process.readAllStandardError());
        m_said = QString::fromUtf8(process.readAllStandardOutput());
    }

    void dewPointAndPressure_agree()
    {
        int points = 0, pressures = 0;
        double worst = 0;
        for (const QString& line : m_said.split(u'\n', Qt::SkipEmptyParts)) {
            const QStringList words = line.split(u' ');
            const double t = words.at(1).toDouble(), value = words.last().toDouble();
            if (words.first() == QStringLiteral("es")) {
                ++pressures;
                QVERIFY2(std::abs(saturationPressurePascal({ t }) / value - 1) < 0.003, qPrintable(line));
                continue;
            }
            // Below 0 C that library goes over to ice, where ours stays over water: the two part there.
            // Above 40 C ours says nothing of its error; no shop's air is hotter.
            if (value <= 0 || t > 40)
                continue;
            ++points;
            const auto dew = dewPoint({ t }, RelativeHumidity { words.at(2).toDouble() });
            QVERIFY2(dew.has_value(), qPrintable(line));
            worst = std::max(worst, std::abs(dew->value - value));
            QVERIFY2(std::abs(dew->value - value) < 0.03, qPrintable(line));
        }
        QCOMPARE(pressures, 100);
        QVERIFY(points > 1'000);
        qInfo("%d dew points, the worst %.4f C off", points, worst);
    }
};

QTEST_GUILESS_MAIN(TestPsychrometrics)
#include "tst_psychrometrics.moc"
