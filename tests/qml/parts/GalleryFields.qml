pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

ScreenPage {
    id: root

    property bool openSheet: false
    property bool openPicker: false

    subtitle: qsTr("What is typed, counted, chosen")
    title: qsTr("Fields")

    // A popup needs its window, which is not there yet while the page is being made.
    Timer {
        interval: 200
        running: root.openSheet || root.openPicker
        onTriggered: root.openSheet ? sheet.open() : picker.openList()
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space6
        columns: root.portrait ? 1 : 2
        rowSpacing: Theme.space5

        Field { Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; hint: qsTr("As the label gives it"); label: qsTr("Lot"); placeholder: qsTr("Lot number"); text: "24-118" }
        Field { Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; errorText: qsTr("A wood temperature above 60 °C cannot be right. Read the thermometer again and type what it says."); label: qsTr("Wood temperature"); required: true; suffix: "°C"; text: "180" }
        AmountField { id: amount; Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; hint: qsTr("Weigh the bottle and all, or look at the level"); label: qsTr("Amount left"); text: "310"; unit: "g"; units: ["g", "ml", "fl oz"]; onUnitPicked: unit => amount.unit = unit }
        Stepper { Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; label: qsTr("How many"); suffix: qsTr("bottles"); value: 3 }
        DateField { id: date; Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; label: qsTr("Made"); text: "2025-01-31"; today: "2025-11-25"; onEdited: text => date.text = text; onKnownPicked: known => date.known = known }
        DateField { Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; hint: qsTr("Without a date the age is reckoned from the arrival and the usual time in trade"); known: false; label: qsTr("Date on the label") }
        Picker { id: picker; Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; currentIndex: 1; label: qsTr("Place"); notes: [qsTr("18 to 23 °C"), qsTr("Can freeze"), qsTr("12 to 24 °C, dry"), "4 °C"]; options: [qsTr("Bench"), qsTr("Lean-to shelf"), qsTr("Dry cupboard"), qsTr("Fridge")]; onPicked: index => picker.currentIndex = index }
        Picker { Layout.alignment: Qt.AlignTop; Layout.fillWidth: true; Layout.preferredWidth: 1; errorText: qsTr("Choose the class: without it there is no life to reckon with."); label: qsTr("Class"); options: ["1", "2"]; required: true }
        ChoiceRow { id: joint; Layout.columnSpan: root.portrait ? 1 : 2; Layout.fillWidth: true; currentIndex: 0; label: qsTr("Joint"); options: [qsTr("Mortise and tenon"), qsTr("Dowel"), qsTr("Dovetail"), qsTr("Edge"), qsTr("Veneer"), qsTr("Crack")]; onPicked: index => joint.currentIndex = index }
        ToggleRow { Layout.fillWidth: true; Layout.preferredWidth: 1; checked: true; note: qsTr("Follows the tablet when off"); text: qsTr("Dark screens") }
        ToggleRow { Layout.fillWidth: true; Layout.preferredWidth: 1; text: qsTr("Read verdicts aloud") }
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space3
        BigButton { iconName: "save"; text: qsTr("Book in") }
        BigButton { busy: true; text: qsTr("Book in") }
        BigButton { enabled: false; text: qsTr("Book in") }
        PlainButton { iconName: "type-in"; text: qsTr("Type it in") }
        PlainButton { danger: true; iconName: "retire"; text: qsTr("Retire") }
        PlainButton { flat: true; text: qsTr("Why?") }
        IconButton { iconName: "torch"; label: qsTr("Torch"); outlined: true }
    }

    Sheet {
        id: sheet
        title: qsTr("Use from White PVA")

        footer: [
            PlainButton { text: qsTr("Not now"); onClicked: sheet.close() },
            Item { Layout.fillWidth: true },
            BigButton { iconName: "use"; text: qsTr("Record use"); onClicked: sheet.close() }
        ]

        VerdictBadge { Layout.fillWidth: true; note: qsTr("Opened 11 months ago, once below 10 °C"); verdict: "test_first" }
        AmountField { Layout.fillWidth: true; label: qsTr("Used"); text: "12"; unit: "g"; units: ["g", "ml"] }
        Picker { Layout.fillWidth: true; label: qsTr("For the job"); options: [qsTr("Chair, full reglue"), qsTr("Veneer patch")] }
        ReasonList {
            Layout.fillWidth: true
            reasons: [qsTr("Opened on 20 Dec 2024: 11 of 12 months used."), qsTr("Stood at 6 °C for 9 hours on 3 Feb; it did not freeze."), qsTr("No readings from 1 to 9 Mar; the place cannot freeze.")]
            verdicts: ["test_first", "good", "good"]
        }
    }
}
