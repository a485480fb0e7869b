import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A note that wants a figure: what the thermometer in the glue reads, what pot and glue weigh, how much was used.
Sheet {
    id: root

    required property PotsController controller

    property string pot
    property string kind
    property string unit
    property string amount
    property int degrees
    readonly property bool asksDegrees: root.kind === "heat_on" || root.kind === "heat_read"
    // A pot may be put on the heat, or topped up, without a look at thermometer or scale.
    readonly property bool mayGoWithout: root.kind === "heat_on" || root.kind === "topped_up"

    function asks(kind: string): bool {
        return kind === "heat_on" || kind === "heat_read" || kind === "weighed" || kind === "topped_up" || kind === "used";
    }

    function begin(pot: string, kind: string, text: string, unit: string) {
        root.pot = pot;
        root.kind = kind;
        root.title = text;
        root.unit = kind === "used" ? unit : "g";
        root.amount = "";
        root.degrees = root.controller.usualDegrees;
        root.controller.clearError();
        root.open();
    }

    objectName: "potNoteSheet"

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    Stepper {
        Layout.fillWidth: true
        from: 0
        label: qsTr("The thermometer in the glue reads")
        objectName: "potDegrees"
        suffix: root.controller.degreeUnit
        to: 221
        value: root.degrees
        visible: root.asksDegrees
        onChanged: value => root.degrees = value
    }

    Field {
        Layout.fillWidth: true
        inputMethodHints: Qt.ImhPreferNumbers
        label: root.kind === "used" ? qsTr("How much was used") : qsTr("Pot and glue weigh together")
        objectName: "potAmount"
        suffix: root.unit
        text: root.amount
        visible: !root.asksDegrees
        onEdited: text => root.amount = text
    }

    Numpad {
        Layout.fillWidth: true
        text: root.amount
        visible: !root.asksDegrees
        onEdited: text => root.amount = text
    }

    footer: [
        PlainButton {
            height: Theme.touchMain
            objectName: "noteWithout"
            text: root.kind === "heat_on" ? qsTr("Not read yet") : qsTr("Not weighed")
            visible: root.mayGoWithout
            onClicked: root.controller.note(root.pot, root.kind)
        },
        BigButton {
            Layout.fillWidth: true
            busy: root.controller.busy
            enabled: root.asksDegrees || root.amount.length > 0
            iconName: "check"
            objectName: "noteIt"
            text: qsTr("Note it")
            onClicked: root.asksDegrees ? root.controller.noteTemperature(root.pot, root.kind, root.degrees)
                                        : root.controller.noteAmount(root.pot, root.kind, root.amount, root.unit)
        }
    ]
}
