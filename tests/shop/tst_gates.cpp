#include <algorithm>
#include <set>

#include <QTest>

#include "shop/gluechoice.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Every gate of the check for every family of the reference data, by its own figures.
class GatesTest : public QObject {
    Q_OBJECT

private:
    Workbench m_bench { false };
    std::map<std::string, std::string> m_jobs; // job type of each family

    void eachFamily()
    {
        QTest::addColumn<QString>("family");
        for (const auto& [family, job] : m_jobs)
            QTest::newRow(family.c_str()) << QString::fromStdString(family);
    }
    FamilyRecord family(const QString& id) const
    {
        const auto catalogue = m_bench.shop->catalogue();
        return catalogue->families.at(FamilyId { id.toStdString() });
    }
    static Figure figure(const FamilyRecord& family, const char* name)
    {
        const auto found = std::ranges::find(family.figures, name, &Figure::figure);
        return found == family.figures.end() ? Figure {} : *found;
    }
    GlueUpAnswer checked(const QString& family, const Conditions& said) const
    {
        auto answer = checkJob(*m_bench.shop, m_jobs.at(family.toStdString()), 1, said, Workbench::day(3));
        if (!answer)
            qFatal("%s", answer.error().sentence.c_str());
        return std::move(*answer);
    }
    static GateResult result(const GlueUpAnswer& answer, const char* id)
    {
        const auto found = std::ranges::find(answer.gates, id, &Gate::id);
        if (found == answer.gates.end())
            qFatal("no gate %s", id);
        return found->result;
    }
    /// What only one thing said makes of its gate.
    GateResult with(
        const QString& family, const char* gate, const std::function<void(Conditions&)>& say) const
    {
        Conditions said;
        say(said);
        return result(checked(family, said), gate);
    }

private Q_SLOTS:
    void initTestCase()
    {
        const auto catalogue = m_bench.shop->catalogue();
        GW_OK(catalogue);
        QCOMPARE(catalogue->families.size(), std::size_t { 14 });
        for (const auto& [id, record] : catalogue->families) {
            const PotAsked asked { id, "Joint of " + id.text, { *parseJointWork("edge 900x22") }, 0, 1, {} };
            const auto type = saveJobTypeOf(*m_bench.shop, asked, Workbench::day(1));
            GW_OK(type);
            m_jobs.emplace(id.text, type->id.text);
        }
    }

    void nothingSaid_isUnknown_notAPass_data() { eachFamily(); }
    void nothingSaid_isUnknown_notAPass()
    {
        QFETCH(QString, family);
        const GlueUpAnswer answer = checked(family, {});
        for (const char* gate : { "air", "wood", "humidity", "moisture", "gap", "surface" })
            QCOMPARE(result(answer, gate), GateResult::Unknown);
        QVERIFY(result(answer, "undoing") != GateResult::Stop);
        QVERIFY(answer.answer != GlueUpVerdict::Go);
        QVERIFY(answer.asks.size() >= 6);
        for (const Gate& gate : answer.gates)
            QVERIFY2(!gate.text.empty() && !gate.name.empty(), gate.id.c_str());
        QVERIFY(std::ranges::find(answer.gates, "age", &Gate::id) != answer.gates.end());
        QVERIFY(std::ranges::find(answer.gates, "amount", &Gate::id) != answer.gates.end());
    }

    // What must stop it: room or wood too cold or hot, wood too wet, a gap too wide, a joint it is wrong for,
    // burning vapour without fresh air.
    void whatMustStop_stops_data() { eachFamily(); }
    void whatMustStop_stops()
    {
        QFETCH(QString, family);
        const FamilyRecord record = this->family(family);
        const auto air = figure(record, "air_temperature");
        QCOMPARE(
            with(family, "air", [&](Conditions& s) { s.air = Celsius { *air.low - 1 }; }), GateResult::Stop);
        QCOMPARE(
            with(family, "air", [&](Conditions& s) { s.air = Celsius { *air.high + 1 }; }), GateResult::Stop);
        const auto wood = figure(record, "wood_temperature");
        QCOMPARE(with(family, "wood", [&](Conditions& s) { s.wood = Celsius { *wood.low - 1 }; }),
            GateResult::Stop);
        const auto moisture = figure(record, "wood_moisture");
        QCOMPARE(with(family, "moisture", [&](Conditions& s) { s.woodMoisture = *moisture.high + 1; }),
            GateResult::Stop);
        QCOMPARE(with(family, "moisture", [&](Conditions& s) { s.woodMoisture = *moisture.low - 1; }),
            GateResult::Warn);
        const auto gap = figure(record, "gap");
        QCOMPARE(with(family, "gap", [&](Conditions& s) { s.gapMm = *gap.high + 0.1; }), GateResult::Stop);
        QCOMPARE(with(family, "gap", [&](Conditions& s) { s.gapMm = *gap.high; }), GateResult::Warn);
        // Wet wood: the dew point of 24 C at 60 % is near 16 C (Alduchov and Eskridge 1996).
        QCOMPARE(with(family, "humidity",
                     [](Conditions& s) {
                         s.air = Celsius { 24 };
                         s.wood = Celsius { 12 };
                         s.humidity = 60;
                     }),
            GateResult::Stop);
        if (family != QStringLiteral("contact")) // no row of the table says anything of it
            QCOMPARE(with(family, "joint", [](Conditions& s) { s.joint = "rot"; }),
                family == QStringLiteral("epoxy_neat") ? GateResult::Pass
                    : family == QStringLiteral("ca")   ? GateResult::Warn
                                                       : GateResult::Stop);
        const GlueUpAnswer wax = checked(family, [] {
            Conditions s;
            s.residue = "wax";
            return s;
        }());
        QCOMPARE(result(wax, "residue"), GateResult::Stop);
    }

    // What only warns: humidity outside the band, a stale surface, glue too cool, a permanent glue in an old
    // piece.
    void whatOnlyWarns_warns_data() { eachFamily(); }
    void whatOnlyWarns_warns()
    {
        QFETCH(QString, family);
        const FamilyRecord record = this->family(family);
        const auto humidity = figure(record, "humidity");
        QCOMPARE(with(family, "humidity", [&](Conditions& s) { s.humidity = *humidity.low - 1; }),
            GateResult::Warn);
        QCOMPARE(with(family, "humidity", [&](Conditions& s) { s.humidity = *humidity.high + 1; }),
            GateResult::Warn);
        const auto surface = figure(record, "surface_age_max");
        QCOMPARE(with(family, "surface", [&](Conditions& s) { s.surfaceAgeHours = *surface.high + 1; }),
            GateResult::Warn);
        const auto glue = figure(record, "glue_temperature");
        QCOMPARE(with(family, "glue", [&](Conditions& s) { s.glue = Celsius { *glue.low - 2 }; }),
            GateResult::Warn);
        const bool ready = figure(record, "undoing").value == 2;
        QCOMPARE(with(family, "undoing", [](Conditions& s) { s.period = true; }),
            ready ? GateResult::Pass : GateResult::Warn);
    }

    // An advisory gate can at worst warn, whatever is said.
    void advisoryGates_neverStop_data() { eachFamily(); }
    void advisoryGates_neverStop()
    {
        QFETCH(QString, family);
        std::set<std::string> advisory;
        const std::optional<double> temperatures[] { {}, -5, 10, 24, 59 }, shares[] { {}, 0, 45, 100 };
        for (const auto& temperature : temperatures) {
            for (const auto& share : shares) {
                for (const auto& yes :
                    { std::optional<bool> {}, std::optional(true), std::optional(false) }) {
                    Conditions said;
                    if (temperature)
                        said.air = said.wood = said.glue = Celsius { *temperature };
                    said.humidity = said.woodMoisture = share;
                    said.gapMm = share ? std::optional(*share / 4) : std::nullopt;
                    said.surfaceAgeHours = share ? std::optional(*share * 800) : std::nullopt;
                    said.period = said.barrier = said.ventilated = yes;
                    for (const Gate& gate : checked(family, said).gates) {
                        if (!gate.advisory)
                            continue;
                        advisory.insert(gate.id);
                        QVERIFY2(gate.result != GateResult::Stop, gate.id.c_str());
                    }
                }
            }
        }
        QVERIFY(advisory.contains("surface") && advisory.contains("undoing") && advisory.contains("glue"));
    }

    // Vapour that burns asks for fresh air.
    void burningVapour_wantsFreshAir()
    {
        const auto contact
            = m_bench.arrive("Contact cement", "contact_cement", "500 ml", 1); // flame sign in the reference
        QVERIFY(!contact.empty());
        const QString family = QStringLiteral("contact");
        QCOMPARE(with(family, "ventilation", [](Conditions&) { }), GateResult::Unknown);
        QCOMPARE(with(family, "ventilation", [](Conditions& s) { s.ventilated = false; }), GateResult::Stop);
        QCOMPARE(with(family, "ventilation", [](Conditions& s) { s.ventilated = true; }), GateResult::Pass);
    }

    // Resin without hardener.
    void twoPartGlue_wantsItsPartner()
    {
        m_bench.arrive("Resin alone", "epoxy_resin", "500 g", 1);
        QCOMPARE(with(QStringLiteral("epoxy_neat"), "partner", [](Conditions&) { }), GateResult::Stop);
    }
};

QTEST_GUILESS_MAIN(GatesTest)
#include "tst_gates.moc"
