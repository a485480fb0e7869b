import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The low and high of a day, read off a min/max thermometer.
Sheet {
    id: root

    required property PlaceController controller

    property string day
    property string low
    property string high

    function begin() {
        root.day = root.controller.today;
        root.low = "";
        root.high = "";
        root.controller.clearError();
        root.open();
    }

    objectName: "lowHighSheet"
    title: qsTr("A day's low and high")

    Connections {
        function onTyped() {
            root.close();
        }

        target: root.controller
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Read both off the min/max thermometer in %1, then set it back for the next day.").arg(root.controller.name)
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    Field {
        Layout.fillWidth: true
        inputMethodHints: Qt.ImhPreferNumbers
        label: qsTr("Lowest")
        objectName: "typedLow"
        required: true
        suffix: root.controller.unit
        text: root.low
        onEdited: text => root.low = text
    }

    Field {
        Layout.fillWidth: true
        inputMethodHints: Qt.ImhPreferNumbers
        label: qsTr("Highest")
        objectName: "typedHigh"
        required: true
        suffix: root.controller.unit
        text: root.high
        onEdited: text => root.high = text
    }

    DateField {
        Layout.fillWidth: true
        known: true
        label: qsTr("Day")
        stepKind: 0
        text: root.day
        today: root.controller.today
        unknownAllowed: false
        onEdited: text => root.day = text
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: root.controller.busy
        enabled: root.low.length > 0 && root.high.length > 0 && !root.controller.busy
        iconName: "check"
        objectName: "keepLowHigh"
        text: qsTr("Keep them")
        onClicked: root.controller.typeLowHigh(root.day, root.low, root.high)
    }
}
