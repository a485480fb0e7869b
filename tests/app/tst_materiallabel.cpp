// What a label says of a material, as it is typed when the material is learned and read again later.
#include <QSignalSpy>
#include <QTest>

#include "app/arrivalcontroller.h"
#include "app/materiallabelcontroller.h"
#include "shop/hazards.h"
#include "shop/shelf.h"
#include "support/appbench.h"

using namespace gw;
using namespace gw::test;
using namespace Qt::StringLiterals;

namespace {

MaterialRecord named(AppBench& bench, const std::string& name)
{
    for (const MaterialRecord& material : bench.ask([](Shop& shop) { return shop.store().materials(); })) {
        if (material.name == name)
            return material;
    }
    return {};
}

std::string firstContainerOf(AppBench& bench, const std::string& name)
{
    const auto items
        = bench.ask([&](Shop& shop) { return shelf(shop, { bench.now, {}, {}, name, false, true }); });
    return items.empty() ? std::string() : items.front().label;
}

} // namespace

class MaterialLabelTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void newHardener_isLearned_withItsResinAndItsSigns()
    {
        AppBench bench(AppBench::Stock::Demo);
        ArrivalController arrival;
        arrival.setServices(&bench.services);
        QTRY_VERIFY(arrival.loaded());
        arrival.byHand();
        arrival.chooseNew(u"Second hardener"_s);
        QVERIFY(arrival.form()->says()->partners().isEmpty());
        arrival.chooseClass(u"epoxy_hardener_slow"_s);
        LabelSays* says = arrival.form()->says();
        const auto resin = says->partners().indexOf(u"Epoxy resin"_s);
        QVERIFY(resin >= 0);
        QCOMPARE(says->partnerAt(), -1);
        QVERIFY(!says->usualSigns().isEmpty());
        says->setPartnerAt(static_cast<int>(resin));
        says->toggle(u"GHS07"_s);
        says->toggle(u"GHS05"_s);
        says->toggle(u"GHS99"_s); // there is no such sign
        says->setSignalWord(LabelSays::Danger);
        arrival.form()->setProperty("amount", u"200 g"_s);
        arrival.form()->setPlaceAt(0);
        arrival.form()->setProperty("dateKind", ArrivalForm::NoDate);
        arrival.bookIn();
        QTRY_COMPARE(arrival.state(), ArrivalController::Booked);

        const MaterialRecord learned = named(bench, "Second hardener");
        QVERIFY(learned.partner == named(bench, "Epoxy resin").id);
        const Hazards hazards = hazardsOf({}, learned);
        QVERIFY(hazards.fromLabel);
        QVERIFY(hazards.pictograms == std::vector<std::string>({ "GHS05", "GHS07" }));
        QCOMPARE(hazards.signalWord, std::string("Danger"));
    }

    void labelReadAgain_isShownAsItWasKept_andChanged()
    {
        AppBench bench(AppBench::Stock::Demo);
        MaterialLabelController label;
        label.setServices(&bench.services);
        label.setContainer(QString::fromStdString(firstContainerOf(bench, "White wood glue")));
        label.read();
        QTRY_VERIFY(label.loaded());
        QCOMPARE(label.name(), u"White wood glue"_s);
        QSignalSpy saved(&label, &MaterialLabelController::saved);
        label.says()->setProperty("openedMonths", u"x"_s);
        label.save();
        QVERIFY(!label.errorText().isEmpty() && !label.says()->lifeError().isEmpty());
        QCOMPARE(saved.size(), 0);
        label.says()->setProperty("openedMonths", u"9"_s);
        // A signal word stands beside signs: one alone was read wrongly.
        label.says()->setSignalWord(LabelSays::Warning);
        label.save();
        QVERIFY(label.errorText().contains(u"hazard signs"_s));
        label.says()->setNoSigns(true);
        label.says()->setSignalWord(LabelSays::NoWord);
        label.save();
        QTRY_COMPARE(saved.size(), 1);

        label.says()->clear();
        label.read();
        QTRY_COMPARE(label.says()->property("openedMonths").toString(), u"9"_s);
        QVERIFY(label.says()->noSigns());
        QCOMPARE(label.says()->signalWord(), static_cast<int>(LabelSays::NoWord));
        QVERIFY(hazardsOf({}, named(bench, "White wood glue")).fromLabel);
    }
};

QTEST_MAIN(MaterialLabelTest)
#include "tst_materiallabel.moc"
