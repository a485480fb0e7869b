#include <cmath>

#include <QTest>

#include "cli/program.h"

using namespace gw::test;

/// Mixing, choosing a glue and reckoning joints on the demonstration shop, as people type them.
class MixCommandTest : public QObject {
    Q_OBJECT

    Program m_program;

    static void refused(const Ran& ran)
    {
        QVERIFY2(ran.status == 1, ran.err.constData());
        const QByteArray said = ran.err.trimmed();
        QVERIFY2(said.size() > 20 && said.endsWith('.') && !said.contains('\n'), said.constData());
    }
    static double amount(const QJsonObject& mix, int part)
    {
        return mix[u"parts"].toArray().at(part)[u"amount"][u"value"].toDouble();
    }

private Q_SLOTS:
    void initTestCase() { QCOMPARE(m_program({ QStringLiteral("demo") }).status, 0); }

    // Worked example: 50 g at 1.8 : 1 by mass is 17.9 g dry and 32.1 g of water.
    void mix_weighsOut_andNamesTheContainer()
    {
        const Ran ran
            = m_program({ QStringLiteral("mix"), QStringLiteral("hot_hide"), QStringLiteral("--need"),
                QStringLiteral("50g"), QStringLiteral("--grade"), QStringLiteral("192") });
        QCOMPARE(ran.status, 0);
        const QJsonObject mix = ran.json();
        QCOMPARE(amount(mix, 0), 17.9);
        QCOMPARE(amount(mix, 1), 32.1);
        QVERIFY(!mix[u"parts"].toArray().at(0)[u"take"].toArray().isEmpty());
        QVERIFY(!mix[u"steps"].toArray().isEmpty());
        QVERIFY(mix[u"limits"].toObject().contains(u"soak_min"));
        for (const char* word : { "compliant", "non-toxic" })
            QVERIFY(!ran.out.contains(word));
    }

    void mix_takesResinAndHardenerTogether()
    {
        const QJsonObject mix
            = m_program({ QStringLiteral("mix"), QStringLiteral("epoxy"), QStringLiteral("--need"),
                            QStringLiteral("30g"), QStringLiteral("--filler"), QStringLiteral("silica") })
                  .json();
        QCOMPARE(mix[u"recipe"].toString(), QStringLiteral("epoxy_thick"));
        QVERIFY(std::abs(amount(mix, 0) + amount(mix, 1) - 30) < 0.11);
        QVERIFY(!mix[u"pictograms"].toArray().isEmpty());
    }

    void mix_changesNothing()
    {
        // The clocks of the lives run on between two looks; the amounts must not.
        const auto left = [this] {
            QStringList amounts;
            for (const QJsonValue& item :
                m_program({ QStringLiteral("shelf") }).json()[u"containers"].toArray())
                amounts.append(
                    item[u"id"].toString() + QString::number(item[u"amount"][u"value"].toDouble()));
            amounts.sort();
            return amounts;
        };
        const QStringList before = left();
        QVERIFY(!before.isEmpty());
        m_program({ QStringLiteral("mix"), QStringLiteral("shellac"), QStringLiteral("--need"),
            QStringLiteral("250 ml") });
        QCOMPARE(left(), before);
    }

    void which_ranksWithReasons()
    {
        const QJsonObject which
            = m_program({ QStringLiteral("which"), QStringLiteral("--joint"),
                            QStringLiteral("chair_tenon_sound"), QStringLiteral("--piece"),
                            QStringLiteral("period"), QStringLiteral("--gap"), QStringLiteral("0.1") })
                  .json();
        const QJsonArray families = which[u"families"].toArray();
        QCOMPARE(families.size(), 14);
        // db/reference/joint_fitness, conservation practice (S8): hide glue is the default.
        QVERIFY(families.at(0)[u"family"].toString().contains(QStringLiteral("hide")));
        for (const QJsonValue& family : families)
            QVERIFY(!family[u"reasons"].toArray().isEmpty());
    }

    void joints_becomeAJobType_thatCanBeChecked()
    {
        const Ran made = m_program({ QStringLiteral("howmuch"), QStringLiteral("--family"),
            QStringLiteral("hot_hide"), QStringLiteral("4 tenon 30x40x10"), QStringLiteral("--save-as"),
            QStringLiteral("Hall bench") });
        QVERIFY2(made.status == 0, made.err.constData());
        // 120 cm2 x 350 g/m2 x 1.3 + 15 g, worked out by hand.
        QVERIFY(std::abs(made.json()[u"need"][u"value"].toDouble() - 20.46) < 0.001);
        const Ran checked = m_program({ QStringLiteral("check"), QStringLiteral("Hall bench"),
            QStringLiteral("--residue"), QStringLiteral("wax") });
        QCOMPARE(checked.status, 0);
        QCOMPARE(checked.json()[u"answer"].toString(), QStringLiteral("fix_first"));
        QVERIFY(std::abs(checked.json()[u"need"][u"value"].toDouble() - 20.46) < 0.001);
        refused(m_program({ QStringLiteral("howmuch"), QStringLiteral("--family"), QStringLiteral("hot_hide"),
            QStringLiteral("edge 10x10"), QStringLiteral("--save-as"),
            QStringLiteral("Chair, full reglue") }));
    }

    void whatCannotBe_isASentence_data()
    {
        QTest::addColumn<QStringList>("arguments");
        const auto row
            = [](const char* text) { QTest::newRow(text) << QString::fromLatin1(text).split(u'|'); };
        row("mix|hot_hide|--need|3mg");
        row("mix|hot_hide|--need|0.003g");
        row("mix|hot_hide");
        row("mix|no such recipe|--need|50g");
        row("mix|epoxy_neat|--need|50g|--ratio|0:1");
        row("mix|epoxy_neat|--need|50g|--mass-ratio|100:0");
        row("mix|epoxy_neat|--need|50g|--alcohol|1");
        row("mix|shellac|--need|50g");
        row("mix|shellac|--from-cut|2");
        row("mix|casein|--need|50g|--scale|5 ml");
        row("which|--gap|40");
        row("which|--joint|no such joint");
        row("howmuch|--family|hot_hide");
        row("howmuch|--family|no such family|edge 900x22");
        row("howmuch|--family|hot_hide|edge 900");
        row("howmuch|--family|hot_hide|--with|panel_edge");
        row("check|chair_full|--pieces|0");
        row("check|chair_full|--gap|40");
        row("check|chair_full|--rh|300");
        row("check|chair_full|--surface-age|-3");
        row("check|chair_full|--wood-stood|no such place");
        row("check|chair_full|--residue|no such residue");
    }
    void whatCannotBe_isASentence()
    {
        QFETCH(QStringList, arguments);
        refused(m_program(arguments));
    }
};

QTEST_GUILESS_MAIN(MixCommandTest)
#include "tst_mix.moc"
