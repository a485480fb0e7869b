import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What else may be said of a mix, by its kind; what is not said is the recipe's own, or the shelf's.
ColumnLayout {
    id: root

    required property MixController controller

    spacing: Theme.space4
    visible: root.controller.kind.length > 0

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.controller.form
        label: qsTr("The dry glue")
        objectName: "mixForm"
        options: [qsTr("Granules"), qsTr("Pearls"), qsTr("Cake")]
        visible: root.controller.kind === "hot"
        onPicked: index => root.controller.form = index
    }

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.controller.pressing
        hint: qsTr("More water gives more time.")
        label: qsTr("From spreading to pressure")
        objectName: "mixPressing"
        options: [qsTr("Not said"), qsTr("At once"), qsTr("A minute")]
        visible: root.controller.kind === "hot"
        onPicked: index => root.controller.pressing = index
    }

    Field {
        Layout.fillWidth: true
        hint: qsTr("From the label; empty: as the resin on the shelf has it. Volumes are no masses.")
        label: qsTr("Resin to hardener by mass")
        objectName: "mixRatio"
        placeholder: qsTr("100:41.3")
        text: root.controller.massRatio
        visible: root.controller.kind === "epoxy"
        onEdited: text => root.controller.massRatio = text
    }

    Field {
        Layout.fillWidth: true
        hint: qsTr("The label's, for 100 g at 25 °C. Without it the cup has no clock.")
        inputMethodHints: Qt.ImhPreferNumbers
        label: qsTr("Pot life")
        objectName: "mixPotLife"
        suffix: qsTr("min")
        text: root.controller.potLife
        visible: root.controller.kind === "epoxy"
        onEdited: text => root.controller.potLife = text
    }

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.controller.hardener
        label: qsTr("Hardener")
        objectName: "mixHardener"
        options: [qsTr("Not said"), qsTr("Slow"), qsTr("Fast")]
        visible: root.controller.kind === "epoxy"
        onPicked: index => root.controller.hardener = index
    }

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.controller.filler
        label: qsTr("Filler")
        objectName: "mixFiller"
        options: [qsTr("None"), qsTr("Silica"), qsTr("Wood flour"), qsTr("Microspheres"), qsTr("Whiting")]
        visible: root.controller.kind === "epoxy"
        onPicked: index => root.controller.filler = index
    }

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.controller.consistency
        label: qsTr("As thick as")
        objectName: "mixConsistency"
        options: [qsTr("Syrup"), qsTr("Ketchup"), qsTr("Mayonnaise"), qsTr("Peanut butter")]
        visible: root.controller.kind === "epoxy" && root.controller.filler > 0
        onPicked: index => root.controller.consistency = index
    }

    Field {
        Layout.fillWidth: true
        hint: qsTr("Pounds of flakes to the US gallon of alcohol; empty is 2.")
        inputMethodHints: Qt.ImhPreferNumbers
        label: qsTr("Cut")
        objectName: "mixCut"
        suffix: qsTr("lb")
        text: root.controller.cut
        visible: root.controller.kind === "shellac"
        onEdited: text => root.controller.cut = text
    }

    ToggleRow {
        Layout.fillWidth: true
        checked: root.controller.waxy
        objectName: "mixWaxy"
        text: qsTr("Waxy flakes")
        visible: root.controller.kind === "shellac"
        onToggled: root.controller.waxy = checked
    }
}
