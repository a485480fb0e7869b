import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// The sheets of a container's page, one for each act, and what the answer rests on. An act that is done closes its
// sheet; one that is refused leaves it open with the reason.
Item {
    id: root

    required property ContainerController controller

    function use() {
        acts.clearError();
        useSheet.begin();
    }

    function count() {
        acts.clearError();
        countSheet.begin();
    }

    function decant() {
        acts.clearError();
        decantSheet.begin();
    }

    function move() {
        acts.clearError();
        moveSheet.open();
    }

    function test() {
        acts.clearError();
        testSheet.begin();
    }

    function retire() {
        acts.clearError();
        retireSheet.begin();
    }

    function hold() {
        acts.clearError();
        holdSheet.begin();
    }

    function openContainer() {
        acts.open();
    }

    function release() {
        acts.release();
    }

    function printLabel() {
        labelSheet.show([root.controller.label]);
    }

    function readLabelAgain() {
        materialLabelSheet.begin();
    }

    function showFigures() {
        figuresSheet.open();
    }

    function closeAll() {
        useSheet.close();
        countSheet.close();
        decantSheet.close();
        moveSheet.close();
        testSheet.close();
        retireSheet.close();
        holdSheet.close();
        figuresSheet.close();
        labelSheet.close();
        materialLabelSheet.close();
    }

    visible: false

    ContainerActs {
        id: acts
        container: root.controller.container
        lot: root.controller.lot
        objectName: "containerActs"
        services: AppServices
        onDone: root.closeAll()
    }

    Connections {
        function onMoved() {
            root.closeAll();
        }

        target: AppServices.navigation
    }

    AmountSheet {
        id: useSheet
        actIcon: "use"
        actText: qsTr("Take it out")
        acts: acts
        hint: root.controller.opened ? qsTr("%1 is left.").arg(root.controller.amountLeft) : qsTr("%1 is left. It is sealed; taking some out opens it.").arg(root.controller.amountLeft)
        label: qsTr("How much is used")
        title: qsTr("Use some")
        units: root.controller.units
        onTaken: (amount, unit) => acts.use(amount, unit)
    }

    AmountSheet {
        id: countSheet
        actIcon: "count"
        actText: qsTr("That is left")
        acts: acts
        hint: qsTr("%1 by the ledger. Weigh or measure what is really there; the difference is written down.").arg(root.controller.amountLeft)
        label: qsTr("What is really left")
        title: qsTr("Count what is left")
        units: root.controller.units
        onTaken: (amount, unit) => acts.count(amount, unit)
    }

    AmountSheet {
        id: decantSheet
        actIcon: "decant"
        actText: qsTr("Pour it over")
        acts: acts
        asksPlace: true
        hint: qsTr("%1 is left. The new container takes over dates, lot, tests and holds.").arg(root.controller.amountLeft)
        label: qsTr("How much goes over")
        place: root.controller.place
        places: root.controller.allPlaces
        title: qsTr("Pour over into a new container")
        units: root.controller.units
        onTaken: (amount, unit) => acts.decant(amount, unit, decantSheet.place)
    }

    MoveSheet {
        id: moveSheet
        acts: acts
        places: root.controller.places
        standsIn: root.controller.place
    }

    TestSheet {
        id: testSheet
        acts: acts
        controller: root.controller
    }

    WordSheet {
        id: retireSheet
        actIcon: "retire"
        actText: qsTr("Retire it")
        acts: acts
        hint: qsTr("It leaves the shelf with what is in it. Get rid of the contents as the label and the safety data sheet say.")
        label: qsTr("Why")
        title: qsTr("Retire this container")
        words: [qsTr("empty"), qsTr("gone off"), qsTr("failed its test"), qsTr("froze"), qsTr("broken or spilt")]
        onTaken: why => acts.retire(why)
    }

    WordSheet {
        id: holdSheet
        actIcon: "hold"
        actText: qsTr("Hold it back")
        acts: acts
        hint: qsTr("Every container of lot %1 counts as do not use until the lot is released, here and what is still to come.").arg(root.controller.lot)
        label: qsTr("Why")
        title: qsTr("Hold back lot %1").arg(root.controller.lot)
        words: [qsTr("joint failed"), qsTr("smells wrong"), qsTr("recalled by the maker"), qsTr("being looked into")]
        onTaken: why => acts.hold(why)
    }

    LabelSheet {
        id: labelSheet
    }

    MaterialLabelSheet {
        id: materialLabelSheet
        container: root.controller.container
    }

    FiguresSheet {
        id: figuresSheet
        figures: root.controller.figures
    }
}
