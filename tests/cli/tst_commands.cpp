#include <QTest>

#include "cli/program.h"
#include "support/drawnsymbol.h"

using namespace gw::test;

/// The commands and the keys of their JSON answers, as the command line promises them.
class CommandsTest : public QObject {
    Q_OBJECT

private:
    static QString arriveOne(const Program& program, const QStringList& more = {})
    {
        const Ran ran = program(
            QStringList { QStringLiteral("arrive"), QStringLiteral("--material"), QStringLiteral("White PVA"),
                QStringLiteral("--class"), QStringLiteral("pva_white"), QStringLiteral("--amount"),
                QStringLiteral("500g"), QStringLiteral("--place"), QStringLiteral("Bench") }
            + more);
        if (ran.status != 0)
            qFatal("%s", ran.err.constData());
        return ran.json()[u"containers"].toArray().first().toString();
    }

    static void hasKeys(const QJsonObject& json, const QStringList& keys)
    {
        for (const QString& key : keys)
            QVERIFY2(json.contains(key), qPrintable(key));
    }

private Q_SLOTS:
    void theMainJob_fromArrivalToOrder()
    {
        const Program program;
        QCOMPARE(program({ QStringLiteral("place"), QStringLiteral("Bench"), QStringLiteral("--low"),
                             QStringLiteral("18C"), QStringLiteral("--high"), QStringLiteral("72F") })
                     .status,
            0);
        const QString id = arriveOne(program,
            { QStringLiteral("--lot"), QStringLiteral("L-1"), QStringLiteral("--label-date"),
                QStringLiteral("2199-01-31") });
        QVERIFY(!id.isEmpty());

        const QJsonObject shelf = program({ QStringLiteral("shelf") }).json();
        hasKeys(shelf, { QStringLiteral("as_of"), QStringLiteral("containers") });
        const QJsonObject item = shelf[u"containers"].toArray().first().toObject();
        hasKeys(item,
            { QStringLiteral("id"), QStringLiteral("material"), QStringLiteral("class"),
                QStringLiteral("place"), QStringLiteral("amount"), QStringLiteral("opened"),
                QStringLiteral("label_date"), QStringLiteral("verdict"), QStringLiteral("reasons"),
                QStringLiteral("sealed"), QStringLiteral("opened_life"), QStringLiteral("frost_events"),
                QStringLiteral("good_until") });
        QCOMPARE(item[u"id"].toString(), id);
        QCOMPARE(item[u"verdict"].toString(), QStringLiteral("good"));
        QCOMPARE(item[u"amount"].toObject()[u"value"].toDouble(), 500.0);
        QCOMPARE(item[u"amount"].toObject()[u"unit"].toString(), QStringLiteral("g"));
        QCOMPARE(item[u"label_date"].toString(), QStringLiteral("2199-01-31"));
        QVERIFY(item[u"opened"].isNull());
        QCOMPARE(item[u"frost_events"].toInt(-1), 0); // the bench is never below 18 C

        const Ran used = program({ QStringLiteral("use"), id, QStringLiteral("8 oz"), QStringLiteral("--job"),
            QStringLiteral("Hall table") });
        QCOMPARE(used.status, 0);
        hasKeys(used.json(), { QStringLiteral("entry"), QStringLiteral("container") });
        // 8 oz avoirdupois is 226.796 g (NIST SP 811: 28.34952 g each).
        QVERIFY(qAbs(used.json()[u"container"].toObject()[u"amount"].toObject()[u"value"].toDouble()
                    - (500.0 - 226.796))
            < 0.001);

        const QJsonObject piece = program({ QStringLiteral("piece"), QStringLiteral("Hall table") }).json();
        QCOMPARE(piece[u"used"].toArray().size(), 1);
        const QJsonObject lot = program({ QStringLiteral("lot"), id }).json();
        QCOMPARE(lot[u"pieces"].toArray(), QJsonArray { QStringLiteral("Hall table") });
        QVERIFY(program({ QStringLiteral("lot"), QStringLiteral("no such lot") }).status != 0);

        const Ran undone = program({ QStringLiteral("undo"), used.json()[u"entry"].toString() });
        QCOMPARE(undone.status, 0);
        QCOMPARE(undone.json()[u"container"].toObject()[u"amount"].toObject()[u"value"].toDouble(), 500.0);

        const QJsonObject page = program({ QStringLiteral("show"), id }).json();
        hasKeys(page, { QStringLiteral("entries"), QStringLiteral("history"), QStringLiteral("verdict") });

        const Ran check = program({ QStringLiteral("check"), QStringLiteral("panel_edge"),
            QStringLiteral("--air"), QStringLiteral("20C") });
        QCOMPARE(check.status, 0);
        hasKeys(check.json(),
            { QStringLiteral("answer"), QStringLiteral("first_fix"), QStringLiteral("gates"),
                QStringLiteral("use"), QStringLiteral("weigh_out"), QStringLiteral("clocks"),
                QStringLiteral("short_by") });
        QCOMPARE(check.json()[u"use"].toArray().first().toObject()[u"container"].toString(), id);

        QCOMPARE(
            program({ QStringLiteral("rate"), QStringLiteral("panel_edge"), QStringLiteral("60") }).status,
            0);
        QCOMPARE(program({ QStringLiteral("pack"), QStringLiteral("White PVA"), QStringLiteral("--amount"),
                             QStringLiteral("1kg"), QStringLiteral("--price"), QStringLiteral("9.50 EUR"),
                             QStringLiteral("--supplier"), QStringLiteral("Harbour Lane") })
                     .status,
            0);
        const QString csv = program.file(QStringLiteral("order.csv"));
        const Ran order = program({ QStringLiteral("order"), QStringLiteral("--csv"), csv });
        QCOMPARE(order.status, 0);
        hasKeys(order.json(), { QStringLiteral("month"), QStringLiteral("lines"), QStringLiteral("total") });
        const QJsonObject line = order.json()[u"lines"].toArray().first().toObject();
        hasKeys(line,
            { QStringLiteral("material"), QStringLiteral("packs"), QStringLiteral("need"),
                QStringLiteral("usable"), QStringLiteral("why"), QStringLiteral("latest_use") });
        QCOMPARE(order.json()[u"total"].toObject()[u"currency"].toString(), QStringLiteral("EUR"));
        QVERIFY(QFile::exists(csv));

        const QString pdf = program.file(QStringLiteral("order.pdf"));
        const Ran kept = program({ QStringLiteral("order"), QStringLiteral("--keep"), QStringLiteral("--pdf"),
            pdf, QStringLiteral("--more"), QStringLiteral("panel_edge=4"), QStringLiteral("--budget"),
            QStringLiteral("500 EUR") });
        QCOMPARE(kept.status, 0);
        QVERIFY(QFile::exists(pdf));
        hasKeys(kept.json(), { QStringLiteral("list"), QStringLiteral("left"), QStringLiteral("pdf") });
        const QString list = kept.json()[u"list"].toString();
        const Ran ordered = program({ QStringLiteral("ordered"), list });
        QCOMPARE(ordered.status, 0);
        QCOMPARE(ordered.json()[u"lines"].toArray().first().toObject()[u"state"].toString(),
            QStringLiteral("ordered"));
        QCOMPARE(program({ QStringLiteral("ordered"), list }).status, 1);
        const Ran orders = program({ QStringLiteral("orders") });
        QCOMPARE(orders.json()[u"lists"].toArray().size(), 1);
        const QString calendar = program.file(QStringLiteral("shop.ics"));
        QCOMPARE(program({ QStringLiteral("calendar"), calendar }).status, 0);
        QVERIFY(QFile::exists(calendar));
        hasKeys(program({ QStringLiteral("expiring") }).json(),
            { QStringLiteral("items"), QStringLiteral("worth") });
        hasKeys(program({ QStringLiteral("disposal") }).json(),
            { QStringLiteral("groups"), QStringLiteral("caution") });
        hasKeys(
            program({ QStringLiteral("waste") }).json(), { QStringLiteral("year"), QStringLiteral("cost") });
        hasKeys(program({ QStringLiteral("planned") }).json(), { QStringLiteral("planned") });
    }

    void everyAct_answersWithItsEntry()
    {
        const Program program;
        const QString id = arriveOne(program, { QStringLiteral("--lot"), QStringLiteral("L-1") });
        const QList<QStringList> acts {
            { QStringLiteral("open"), id },
            { QStringLiteral("move"), id, QStringLiteral("Lean-to") },
            { QStringLiteral("count"), id, QStringLiteral("450g") },
            { QStringLiteral("decant"), id, QStringLiteral("50 g") },
            { QStringLiteral("test"), id, QStringLiteral("--pass"), QStringLiteral("--wood-failure"),
                QStringLiteral("80") },
            { QStringLiteral("hold"), QStringLiteral("L-1") },
            { QStringLiteral("release"), QStringLiteral("L-1") },
            { QStringLiteral("retire"), id, QStringLiteral("--why"), QStringLiteral("spilt") },
        };
        for (const QStringList& act : acts) {
            const Ran ran = program(act);
            QVERIFY2(ran.status == 0, (act.join(u' ').toUtf8() + ": " + ran.err).constData());
            QVERIFY(!ran.json()[u"entry"].toString().isEmpty());
            QVERIFY(ran.err.isEmpty());
        }
        QCOMPARE(program({ QStringLiteral("verify") }).json()[u"ok"].toBool(), true);
    }

    void lotCode_offersDates_andOneIsPicked()
    {
        const Program program;
        const QStringList white { QStringLiteral("--as-of"), QStringLiteral("2026-11-20") };
        const auto arrive = [&](const QString& lot, const QStringList& more) {
            return program(white
                + QStringList { QStringLiteral("arrive"), QStringLiteral("--material"),
                    QStringLiteral("White PVA"), QStringLiteral("--class"), QStringLiteral("pva_white"),
                    QStringLiteral("--amount"), QStringLiteral("500g"), QStringLiteral("--lot"), lot }
                + more);
        };
        const auto made = [](const Ran& ran) { return ran.json()[u"read"].toObject()[u"made"].toString(); };
        const Ran offered = arrive(QStringLiteral("L26145A"), {});
        QCOMPARE(offered.status, 0);
        QVERIFY(made(offered).isEmpty());
        QVERIFY(offered.json()[u"asks"].toArray().contains(QStringLiteral("lot_date")));
        const auto dates = offered.json()[u"lot_dates"].toArray();
        QCOMPARE(dates.first()[u"date"].toString(), QStringLiteral("2026-05-25"));
        QCOMPARE(dates.first()[u"text"].toString(), QStringLiteral("day 145 of 2026: 25 May 2026"));
        // Only what a person picks is taken, and then the next lot is read in the same way.
        QVERIFY(made(arrive(QStringLiteral("L26146A"), {})).isEmpty());
        QCOMPARE(
            made(arrive(QStringLiteral("L26147A"), { QStringLiteral("--lot-date"), QStringLiteral("1") })),
            QStringLiteral("2026-05-27"));
        const Ran next = arrive(QStringLiteral("L26148A"), {});
        QCOMPARE(made(next), QStringLiteral("2026-05-28"));
        QVERIFY(next.json()[u"lot_dates"].toArray().first()[u"as_last_time"].toBool());
        QVERIFY(!next.json()[u"asks"].toArray().contains(QStringLiteral("lot_date")));
        QVERIFY(
            made(arrive(QStringLiteral("L26149A"), { QStringLiteral("--lot-date"), QStringLiteral("none") }))
                .isEmpty());
        QCOMPARE(made(arrive(
                     QStringLiteral("L26149A"), { QStringLiteral("--made"), QStringLiteral("2026-01-02") })),
            QStringLiteral("2026-01-02"));
        for (const QString& wrong : { QStringLiteral("0"), QStringLiteral("99"), QStringLiteral("last") })
            QCOMPARE(arrive(QStringLiteral("L26149A"), { QStringLiteral("--lot-date"), wrong }).status, 1);
    }

    void arrive_asksForWhatIsMissing()
    {
        const Program program;
        const Ran ran = program({ QStringLiteral("arrive"), QStringLiteral("--code"),
            QStringLiteral("(01)09520123456788(10)AB-1(17)270531") });
        QCOMPARE(ran.status, 0);
        const QJsonObject json = ran.json();
        hasKeys(json,
            { QStringLiteral("containers"), QStringLiteral("material"), QStringLiteral("read"),
                QStringLiteral("asks") });
        QVERIFY(json[u"containers"].toArray().isEmpty());
        QCOMPARE(json[u"read"].toObject()[u"gtin"].toString(), QStringLiteral("09520123456788"));
        QCOMPARE(json[u"read"].toObject()[u"lot"].toString(), QStringLiteral("AB-1"));
        QCOMPARE(json[u"read"].toObject()[u"label_date"].toString(), QStringLiteral("2027-05-31"));
        QVERIFY(json[u"asks"].toArray().contains(QStringLiteral("class")));
    }

    void aLabelInAPicture_isReadAndBookedIn()
    {
        const Program program;
        const QString picture = program.file(QStringLiteral("label.png"));
        QVERIFY(
            drawSymbol(Symbology::Gs1DataMatrix, "[01]09520123456788[17]270531[10]AB-1", 4).save(picture));
        const Ran read = program.plain({ QStringLiteral("read"), picture, QStringLiteral("--json") });
        QCOMPARE(read.status, 0);
        const QJsonObject symbol
            = read.json()[u"files"].toArray().first().toObject()[u"symbols"].toArray().first().toObject();
        QCOMPARE(symbol[u"text"].toString(), QStringLiteral("01095201234567881727053110AB-1"));
        QCOMPARE(symbol[u"symbology"].toString(), QStringLiteral("]d2"));

        const Ran arrived = program({ QStringLiteral("arrive"), QStringLiteral("--picture"), picture,
            QStringLiteral("--material"), QStringLiteral("White PVA"), QStringLiteral("--class"),
            QStringLiteral("pva_white"), QStringLiteral("--amount"), QStringLiteral("500g"),
            QStringLiteral("--count"), QStringLiteral("2") });
        QCOMPARE(arrived.status, 0);
        QCOMPARE(arrived.json()[u"containers"].toArray().size(), 2);
        // The next one is known.
        const Ran next = program({ QStringLiteral("arrive"), QStringLiteral("--picture"), picture });
        QCOMPARE(next.status, 0);
        QCOMPARE(next.json()[u"containers"].toArray().size(), 1);
        QCOMPARE(next.json()[u"material"].toString(), QStringLiteral("White PVA"));
    }

    void code_saysWhatATextMeans()
    {
        const Program program;
        const QJsonObject json
            = program
                  .plain({ QStringLiteral("code"), QStringLiteral("010952012345678810ABC123<GS>17261231"),
                      QStringLiteral("--json") })
                  .json();
        hasKeys(json,
            { QStringLiteral("kind"), QStringLiteral("elements"), QStringLiteral("gtin"),
                QStringLiteral("lot"), QStringLiteral("made"), QStringLiteral("packed"),
                QStringLiteral("best_before"), QStringLiteral("use_by"), QStringLiteral("amounts"),
                QStringLiteral("error") });
    }

    void demo_andAnAnswerAsOfThen()
    {
        const Program program;
        const Ran demo = program({ QStringLiteral("demo") });
        QCOMPARE(demo.status, 0);
        hasKeys(demo.json(),
            { QStringLiteral("containers"), QStringLiteral("materials"), QStringLiteral("places"),
                QStringLiteral("jobs") });
        const auto now = program({ QStringLiteral("shelf") }).json()[u"containers"].toArray().size();
        QCOMPARE(now > 20, true);
        const auto long_ago
            = program({ QStringLiteral("shelf"), QStringLiteral("--as-of"), QStringLiteral("2001-01-01") })
                  .json();
        QVERIFY(long_ago[u"containers"].toArray().isEmpty());
        const QString backup = program.file(QStringLiteral("all.backup"));
        QCOMPARE(program({ QStringLiteral("backup"), backup }).status, 0);
        QCOMPARE(program({ QStringLiteral("restore"), backup }).json()[u"ok"].toBool(), true);
        const Ran plain
            = program.plain({ QStringLiteral("today"), QStringLiteral("--store"), program.store() });
        QCOMPARE(plain.status, 0);
        QVERIFY(plain.out.contains("containers on the shelf"));
    }

    void figures_needNoStore()
    {
        const Program program;
        // Wood Handbook (FPL-GTR-282) equation 4-5 at 20 C and 50 %: 9.271141; dew point 9.27 C (IAPWS
        // line 9.2735).
        const QJsonObject air
            = program
                  .plain({ QStringLiteral("air"), QStringLiteral("--temp"), QStringLiteral("20C"),
                      QStringLiteral("--rh"), QStringLiteral("50"), QStringLiteral("--json") })
                  .json();
        QVERIFY(qAbs(air[u"emc_percent"].toDouble() - 9.271141) < 1e-5);
        QVERIFY(qAbs(air[u"dew_point_c"].toDouble() - 9.2735) < 0.015);
        // Order-up-to for one span, N(120, 10), shortage 18, excess 2: 132.815515655446 (Snyder and Shen's
        // companion documentation).
        const QJsonObject stocking
            = program
                  .plain({ QStringLiteral("stocking"), QStringLiteral("--mean"), QStringLiteral("120"),
                      QStringLiteral("--sd"), QStringLiteral("10"), QStringLiteral("--shortage"),
                      QStringLiteral("18"), QStringLiteral("--excess"), QStringLiteral("2"),
                      QStringLiteral("--json") })
                  .json();
        QVERIFY(qAbs(stocking[u"level"].toDouble() - 132.815515655446) < 1e-6);
        // Loss Models (2012) example 9.10: g(0) = 0.04978707.
        const QJsonObject jobs
            = program
                  .plain(
                      { QStringLiteral("forecast"), QStringLiteral("--jobs-per-period"), QStringLiteral("3"),
                          QStringLiteral("--use"), QStringLiteral("1:0.633333333333 2:0.266666666667 3:0.1"),
                          QStringLiteral("--service"), QStringLiteral("60"), QStringLiteral("--json") })
                  .json();
        QVERIFY(qAbs(jobs[u"pmf"].toArray().first().toDouble() - 0.04978707) < 1e-8);
        QVERIFY(!QFile::exists(program.store()));
    }
};

QTEST_GUILESS_MAIN(CommandsTest)
#include "tst_commands.moc"
