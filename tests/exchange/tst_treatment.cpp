#include <QPdfWriter>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include "exchange/treatment.h"
#include "support/verdicts.h"

using namespace gw;

/// The treatment record as a client is given it: read back from the PDF by a program that is not ours
/// (pdftotext of poppler-utils).
class TreatmentTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir m_folder;

    static Treatment chair()
    {
        Treatment treatment;
        treatment.piece = "Rocking chair <Linden> & Söhne";
        treatment.date = "1 May 2026";
        TreatmentStep step;
        step.date = "25 April 2026";
        step.title = "Chair, full reglue";
        step.materials = { { "Hide glue", "Hide granules, 192 g", "H-3", "13.4 g" },
            { "Old bottle", "White PVA", "", "5 g" } };
        step.conditions = { { "Room", "24 °C" }, { "Done by", "K." } };
        step.comesApart = { "Heat with water" };
        step.note = "Left arm was doweled before";
        treatment.steps = { step, { "26 April 2026", "Touching up", {}, {}, {}, {} } };
        treatment.cautions = { "Sanding dust counts as skin contact." };
        treatment.pictograms = { "GHS07" };
        return treatment;
    }

    QString textOf(const QString& file)
    {
        QProcess reader;
        reader.start(QStringLiteral("pdftotext"), { QStringLiteral("-layout"), file, QStringLiteral("-") });
        return reader.waitForFinished() ? QString::fromUtf8(reader.readAllStandardOutput()).simplified()
                                        : QString();
    }

private Q_SLOTS:
    void initTestCase()
    {
        if (QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty())
            QSKIP("pdftotext (poppler-utils) is not here; nothing else reads our PDF back.");
    }

    void everythingRecorded_isOnPaper()
    {
        const QString file = m_folder.filePath(QStringLiteral("chair.pdf"));
        GW_OK(writeTreatmentPdf(chair(), file));
        const QString text = textOf(file);
        for (const char* word : { "Rocking chair <Linden> & Söhne", "1 May 2026",
                 "25 April 2026: Chair, full reglue", "Hide granules, 192 g", "H-3", "13.4 g", "24 °C",
                 "Done by K.", "Heat with water", "Left arm was doweled before", "Sanding dust counts",
                 "26 April 2026: Touching up", "safety data sheets" })
            QVERIFY2(text.contains(QString::fromUtf8(word)), qPrintable(QString::fromUtf8(word) + text));
        // What is not known is said to be so, and nothing is promised.
        QVERIFY(text.contains(QStringLiteral("White PVA not recorded")));
        QVERIFY(text.contains(QStringLiteral("No material is recorded.")));
        QVERIFY(text.contains(QStringLiteral("Conditions: not recorded")));
        for (const char* word : { "compliant", "non-toxic", "safe " })
            QVERIFY2(!text.contains(QLatin1String(word), Qt::CaseInsensitive), word);
    }

    void longTreatment_losesNoStepBetweenPages()
    {
        Treatment treatment = chair();
        treatment.steps.clear();
        for (int i = 0; i < 120; ++i) {
            TreatmentStep step = chair().steps.front();
            step.title = "Step number " + std::to_string(i) + " of many";
            treatment.steps.push_back(step);
        }
        const QString file = m_folder.filePath(QStringLiteral("long.pdf"));
        GW_OK(writeTreatmentPdf(treatment, file));
        const QString text = textOf(file);
        for (int i = 0; i < 120; ++i)
            QVERIFY(text.contains(QStringLiteral("Step number %1 of many").arg(i)));
        QCOMPARE(text.count(QStringLiteral("Left arm was doweled before")), 120);
    }

    void nothingRecorded_orNoFolder_isASentence()
    {
        Treatment empty = chair();
        empty.steps.clear();
        const QString file = m_folder.filePath(QStringLiteral("empty.pdf"));
        GW_FAILS(writeTreatmentPdf(empty, file), ErrorCode::BadInput);
        QVERIFY(!QFile::exists(file));
        GW_FAILS(writeTreatmentPdf(chair(), m_folder.filePath(QStringLiteral("no/such/folder.pdf"))),
            ErrorCode::FileUnwritable);
    }
};

QTEST_MAIN(TreatmentTest)
#include "tst_treatment.moc"
