import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A new place to fill in, its name and what is assumed of its temperatures; or another name for one there is.
Sheet {
    id: root

    required property ShopSettingsPlacesController controller

    objectName: "placeSheet"
    title: root.controller.isNew ? qsTr("Another place") : qsTr("Another name")

    Connections {
        function onSaved() {
            root.close();
        }

        target: root.controller
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
        label: qsTr("Name")
        objectName: "placeName"
        placeholder: qsTr("Bench shelf, lean-to, refrigerator")
        required: true
        text: root.controller.name
        onEdited: text => root.controller.name = text
    }

    ToggleRow {
        Layout.fillWidth: true
        checked: root.controller.assumed
        note: qsTr("Without one, everything that stands there is not known.")
        text: qsTr("Assume a range")
        visible: root.controller.isNew
        onToggled: root.controller.assumed = checked
    }

    Stepper {
        Layout.fillWidth: true
        from: root.controller.coldest
        label: qsTr("Coldest of the year")
        objectName: "placeLow"
        suffix: root.controller.unit
        to: root.controller.warmest
        value: root.controller.low
        visible: root.controller.isNew && root.controller.assumed
        onChanged: value => root.controller.low = value
    }

    Stepper {
        Layout.fillWidth: true
        from: root.controller.coldest
        label: qsTr("Warmest of the year")
        objectName: "placeHigh"
        suffix: root.controller.unit
        to: root.controller.warmest
        value: root.controller.high
        visible: root.controller.isNew && root.controller.assumed
        onChanged: value => root.controller.high = value
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("This is an assumption until readings come: it holds only for times nobody measured. If the place can freeze at all, let the coldest say so.")
        visible: root.controller.isNew && root.controller.assumed
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: root.controller.busy
        enabled: root.controller.canSave && !root.controller.busy
        iconName: "check"
        objectName: "savePlace"
        text: qsTr("Keep it")
        onClicked: root.controller.save()
    }
}
