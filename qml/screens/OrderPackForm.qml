pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// One pack to fill in. Only the material and the amount have to be known.
ColumnLayout {
    id: root

    required property OrderPacksController controller

    spacing: Theme.space4

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: root.controller.material
        label: qsTr("Material")
        objectName: "packMaterial"
        options: root.controller.materials
        required: true
        onPicked: index => root.controller.material = index
    }

    Field {
        Layout.fillWidth: true
        label: qsTr("Amount in it")
        objectName: "packAmount"
        placeholder: qsTr("500 g, 8 fl oz, 50 pieces")
        required: true
        text: root.controller.amount
        onEdited: text => root.controller.amount = text
    }

    Field {
        Layout.fillWidth: true
        hint: root.controller.currency.length > 0 ? "" : qsTr("With its currency, such as 12.50 EUR.")
        inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
        label: qsTr("Price")
        objectName: "packPrice"
        suffix: root.controller.currency
        text: root.controller.price
        onEdited: text => root.controller.price = text
    }

    Field {
        Layout.fillWidth: true
        inputMethodHints: Qt.ImhNoPredictiveText
        label: qsTr("Supplier")
        objectName: "packSupplier"
        text: root.controller.supplier
        onEdited: text => root.controller.supplier = text
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space2
        visible: root.controller.suppliers.length > 0

        Repeater {
            model: root.controller.suppliers

            PlainButton {
                id: known

                required property string modelData

                text: known.modelData
                width: Math.min(implicitWidth, root.width)
                onClicked: root.controller.supplier = known.modelData
            }
        }
    }

    Field {
        Layout.fillWidth: true
        inputMethodHints: Qt.ImhDigitsOnly
        label: qsTr("Comes after")
        objectName: "packLeadDays"
        suffix: qsTr("days")
        text: root.controller.leadDays
        onEdited: text => root.controller.leadDays = text
    }

    Field {
        Layout.fillWidth: true
        hint: qsTr("The number under its bar code; a scan then knows it.")
        inputMethodHints: Qt.ImhDigitsOnly
        label: qsTr("GTIN")
        objectName: "packGtin"
        text: root.controller.gtin
        onEdited: text => root.controller.gtin = text
    }
}
