import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Asks for an amount, with keys of its own so that no keyboard is needed; and for a place where the act needs one.
Sheet {
    id: root

    required property ContainerActs acts
    property string label
    property string hint
    property list<string> units
    property string actText
    property string actIcon
    property bool asksPlace: false
    property list<string> places
    property string place

    property string amount
    property string unit

    signal taken(amount: string, unit: string)

    function begin() {
        root.amount = "";
        root.unit = root.units[0] ?? "";
        root.open();
    }

    PlainText {
        Layout.fillWidth: true
        text: root.hint
    }

    AmountField {
        Layout.fillWidth: true
        errorText: root.acts.errorText
        label: root.label
        text: root.amount
        unit: root.unit
        units: root.units
        onAccepted: if (take.enabled) take.clicked()
        onEdited: text => root.amount = text
        onUnitPicked: unit => root.unit = unit
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: root.places.indexOf(root.place)
        label: qsTr("The new container goes to")
        options: root.places
        visible: root.asksPlace
        onPicked: index => root.place = root.places[index]
    }

    Numpad {
        Layout.fillWidth: true
        text: root.amount
        onEdited: text => root.amount = text
    }

    footer: BigButton {
        id: take
        Layout.fillWidth: true
        busy: root.acts.busy
        enabled: root.amount.length > 0 && !root.acts.busy && (!root.asksPlace || root.place.length > 0)
        iconName: root.actIcon
        text: root.actText
        onClicked: root.taken(root.amount, root.unit)
    }
}
