pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A bench test: how it is made, and what came of it.
Sheet {
    id: root

    required property ContainerActs acts
    required property ContainerController controller

    property int outcome: -1
    property bool grainy: false
    property bool brokeJoint: false
    property string woodFailure
    property string note

    function begin() {
        root.outcome = -1;
        root.grainy = false;
        root.brokeJoint = false;
        root.woodFailure = "";
        root.note = "";
        root.open();
    }

    title: qsTr("Bench test")

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("How it is made")
        visible: root.controller.benchTest.length > 0
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: Theme.space3

        Repeater {
            model: root.controller.benchTest

            RowLayout {
                id: step

                required property int index
                required property string modelData

                Layout.fillWidth: true
                spacing: Theme.space3

                PlainText {
                    Layout.alignment: Qt.AlignTop
                    Layout.preferredWidth: 24
                    color: Theme.accentInk
                    strong: true
                    text: String(step.index + 1)
                }

                PlainText {
                    Layout.fillWidth: true
                    objectName: "testStep"
                    text: step.modelData
                }
            }
        }
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("No test is on record for this kind of material. Go by the label, the look and the smell, and glue two scraps of the wood you use.")
        visible: root.controller.benchTest.length === 0
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("Signs that it has gone off: %1").arg(root.controller.spoilageSigns)
        visible: root.controller.spoilageSigns.length > 0
    }

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.outcome
        iconNames: ["check", "close"]
        label: qsTr("What came of it")
        options: [qsTr("It passed"), qsTr("It failed")]
        objectName: "testOutcome"
        onPicked: index => root.outcome = index
    }

    ToggleRow {
        Layout.fillWidth: true
        checked: root.grainy
        note: qsTr("Grainy after frost stays do not use, whatever the joint did.")
        objectName: "grainyToggle"
        text: qsTr("It is grainy, curdled or stringy after frost")
        visible: root.controller.frostHarms
        onToggled: root.grainy = !root.grainy
    }

    ToggleRow {
        Layout.fillWidth: true
        checked: root.brokeJoint
        note: qsTr("Two scraps glued, left to harden, and broken apart.")
        objectName: "brokeToggle"
        text: qsTr("A joint was broken")
        onToggled: root.brokeJoint = !root.brokeJoint
    }

    Field {
        Layout.fillWidth: true
        hint: qsTr("How much of the broken face is torn wood: all of it is 100 %, bare glue is 0 %.")
        inputMethodHints: Qt.ImhDigitsOnly
        label: qsTr("Wood failure")
        objectName: "woodFailure"
        suffix: "%"
        text: root.woodFailure
        visible: root.brokeJoint
        onEdited: text => root.woodFailure = text
    }

    Field {
        Layout.fillWidth: true
        label: qsTr("Note")
        text: root.note
        onEdited: text => root.note = text
    }

    Banner {
        Layout.fillWidth: true
        dismissable: false
        kind: "error"
        text: root.acts.errorText
        visible: root.acts.errorText.length > 0
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: root.acts.busy
        enabled: root.outcome >= 0 && !root.acts.busy
        iconName: "bench-test"
        objectName: "writeTest"
        text: qsTr("Write it down")
        onClicked: root.acts.test(root.outcome === 0, root.brokeJoint ? root.woodFailure : "", root.grainy, root.note)
    }
}
