// Compound use over random shops, worked out here and by R's actuar (Debian's r-cran-actuar), which sums
// every kind of work by its own recursion and then convolves. Skipped with a word where R or actuar is not
// installed.
#include <QProcess>
#include <QRandomGenerator>
#include <QStandardPaths>
#include <QTest>

#include <cmath>
#include <vector>

#include "demand/compounduse.h"

using namespace gw;

class TestDemandOracle : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void compoundUse_isWhatActuarSays();
};

namespace {

constexpr int cases = 60;
constexpr quint32 seed = 95'201'235;

struct Case {
    std::vector<UseStream> streams;
    QString line; ///< as the oracle reads it
};

QString text(double value) { return QString::number(value, 'g', 17); }

/// Amounts 0 to 8 with random chances; some are left out.
void addAmounts(QRandomGenerator& random, UseStream& stream, QString& line)
{
    std::vector<double> chances;
    double total = 0;
    for (int amount = 0; amount <= 8; ++amount) {
        chances.push_back(random.bounded(3) == 0 ? 0 : random.generateDouble());
        total += chances.back();
    }
    if (total == 0) {
        chances[1] = 1;
        total = 1;
    }
    for (std::size_t amount = 0; amount < chances.size(); ++amount) {
        stream.amounts.push_back({ static_cast<double>(amount), chances[amount] / total });
        line += u' ' + text(chances[amount] / total);
    }
}

Case someCase(QRandomGenerator& random)
{
    Case made;
    for (int n = 1 + random.bounded(4); n > 0; --n) {
        UseStream stream;
        QString line;
        if (random.bounded(3) == 0) {
            stream.mean = 4 * random.generateDouble();
            line = QStringLiteral("poisson ") + text(stream.mean) + QStringLiteral(" :");
        } else {
            stream.belief
                = GammaRate { 0.2 + 12 * random.generateDouble(), 0.5 + 6 * random.generateDouble() };
            stream.ahead = 0.3 + 1.5 * random.generateDouble();
            line = QStringLiteral("mixed ") + text(stream.belief->shape) + u' '
                + text(stream.belief->rate / stream.ahead) + QStringLiteral(" :");
        }
        addAmounts(random, stream, line);
        made.line += (made.line.isEmpty() ? QString() : QStringLiteral(" | ")) + line;
        made.streams.push_back(stream);
    }
    return made;
}

} // namespace

void TestDemandOracle::compoundUse_isWhatActuarSays()
{
    const QString r = QStandardPaths::findExecutable(QStringLiteral("Rscript"));
    if (r.isEmpty())
        QSKIP("R is not installed; r-cran-actuar would bring it.");
    QProcess has;
    has.start(r, { QStringLiteral("--vanilla"), QStringLiteral("-e"), QStringLiteral("library(actuar)") });
    QVERIFY(has.waitForFinished(60'000));
    if (has.exitCode() != 0)
        QSKIP("R is there, its package actuar is not (r-cran-actuar).");

    QRandomGenerator random(seed);
    std::vector<Case> all;
    QByteArray input;
    for (int i = 0; i < cases; ++i) {
        all.push_back(someCase(random));
        input += all.back().line.toUtf8() + '\n';
    }
    QProcess oracle;
    oracle.start(r, { QStringLiteral("--vanilla"), QFINDTESTDATA("aggregate_oracle.R") });
    oracle.write(input);
    oracle.closeWriteChannel();
    QVERIFY(oracle.waitForFinished(100'000));
    QCOMPARE(oracle.exitCode(), 0);
    const QList<QByteArray> lines = oracle.readAllStandardOutput().trimmed().split('\n');
    QCOMPARE(lines.size(), qsizetype { cases });
    double worst = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto use = compoundUseOnLattice(all[i].streams, 1);
        QVERIFY2(use, use ? "" : use.error().sentence.c_str());
        const QList<QByteArray> theirs = lines[static_cast<qsizetype>(i)].simplified().split(' ');
        QVERIFY(theirs.size() > 100);
        for (qsizetype amount = 0; amount < theirs.size(); ++amount) {
            const auto at = static_cast<std::size_t>(amount);
            const double mine = at < use->probabilities().size() ? use->probabilities()[at] : 0;
            const double off = std::abs(mine - theirs[amount].toDouble());
            // Their recursion stops where 1e-13 is left, each part of up to four.
            QVERIFY2(off < 1e-11, qPrintable(all[i].line));
            worst = std::max(worst, off);
        }
    }
    qInfo("%d cases, the furthest apart by %g", cases, worst);
}

QTEST_APPLESS_MAIN(TestDemandOracle)
#include "tst_demandoracle.moc"
