#include <QTest>

#include "gluing/family.h"
#include "support/csvrows.h"

using namespace gw;

/// What a job takes.
class TestNeed : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void jobEstimate_isReproduced_data();
    void jobEstimate_isReproduced();
    void fixedLoss_isPaidOnce();
    void extra_isPaidForEachPiece();
    void noPieces_needNothing();
    void missingEstimate_isZeroAndNotNegative();
};

// Shop estimates: areas by geometry, spread and losses common practice (inside handbook spreads of 146-439
// g/m2, from memory of the Wood Handbook ch. 10).
void TestNeed::jobEstimate_isReproduced_data()
{
    QTest::addColumn<double>("area");
    QTest::addColumn<double>("spread");
    QTest::addColumn<double>("waste");
    QTest::addColumn<double>("fixedLoss");
    QTest::addColumn<double>("extra");
    QTest::addColumn<double>("net");
    QTest::addColumn<double>("estimate");
    QTest::addColumn<QString>("unit");
    const auto rows = test::readCheckTable(QStringLiteral("usage_per_job.csv"));
    QCOMPARE(rows.size(), 22);
    for (const test::CsvRow& row : rows) {
        const auto value = [&row](const char* column) { return row.value(QLatin1String(column)).toDouble(); };
        QTest::newRow(qPrintable(row.value(QStringLiteral("job"))))
            << value("area_cm2") << value("spread_per_m2") << value("waste") << value("fixed_loss")
            << value("extra") << value("net") << value("estimate") << row.value(QStringLiteral("counted_in"));
    }
}

void TestNeed::jobEstimate_isReproduced()
{
    QFETCH(double, area);
    QFETCH(double, spread);
    QFETCH(double, waste);
    QFETCH(double, fixedLoss);
    QFETCH(double, extra);
    QFETCH(double, net);
    QFETCH(double, estimate);
    QFETCH(QString, unit);
    JobType job;
    job.areaCm2 = area;
    job.spread = spread;
    job.waste = waste;
    job.fixedLoss = fixedLoss;
    job.extra = extra;
    job.dimension = *dimensionOfUnit(unit.toStdString());

    const Amount need = needFor(job, 1);
    QCOMPARE(need.dimension, job.dimension);
    // The table has one decimal, its areas too.
    QVERIFY2(std::abs(need.value() - estimate) <= 0.055, qPrintable(QString::number(need.value())));

    job.waste = job.fixedLoss = job.extra = 0;
    QVERIFY2(std::abs(needFor(job, 1).value() - net) <= 0.006,
        qPrintable(QString::number(needFor(job, 1).value())));
}

void TestNeed::fixedLoss_isPaidOnce()
{
    JobType job;
    job.areaCm2 = 100;
    job.spread = 100; // 1 g
    job.waste = 0.5;
    job.fixedLoss = 15;
    QCOMPARE(needFor(job, 1), grams(16.5));
    QCOMPARE(needFor(job, 4), grams(21));
}

void TestNeed::extra_isPaidForEachPiece()
{
    JobType job;
    job.extra = 10;
    job.fixedLoss = 5;
    QCOMPARE(needFor(job, 3), grams(35));
}

void TestNeed::noPieces_needNothing()
{
    JobType job;
    job.fixedLoss = 15;
    QCOMPARE(needFor(job, 0), grams(0));
    QCOMPARE(needFor(job, -2), grams(0));
}

void TestNeed::missingEstimate_isZeroAndNotNegative()
{
    JobType job;
    job.dimension = Dimension::Volume;
    QCOMPARE(needFor(job, 1), millilitres(0));
    job.areaCm2 = -500;
    job.spread = 100;
    QCOMPARE(needFor(job, 1), millilitres(0));
    job.areaCm2 = std::numeric_limits<double>::quiet_NaN();
    QCOMPARE(needFor(job, 1), millilitres(0));
}

QTEST_APPLESS_MAIN(TestNeed)
#include "tst_need.moc"
