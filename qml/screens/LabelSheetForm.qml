import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// Labels one by one from a roll, or many on a sheet, and where a begun sheet goes on.
Column {
    id: root

    required property LabelController controller
    readonly property bool onSheets: root.controller.page !== LabelController.Single

    spacing: Theme.space4

    FieldFrame {
        label: qsTr("Paper")
        width: parent.width

        Segmented {
            currentIndex: root.controller.page
            label: qsTr("Paper")
            objectName: "labelPage"
            options: [qsTr("One by one"), qsTr("A4 sheet"), qsTr("Letter sheet")]
            width: parent.width
            onPicked: index => root.controller.page = index
        }
    }

    Stepper {
        from: 1
        label: qsTr("Labels across")
        objectName: "labelColumns"
        to: 20
        value: root.controller.columns
        visible: root.onSheets
        width: parent.width
        onChanged: value => root.controller.columns = value
    }

    Stepper {
        from: 1
        label: qsTr("Labels down")
        objectName: "labelRows"
        to: 60
        value: root.controller.rows
        visible: root.onSheets
        width: parent.width
        onChanged: value => root.controller.rows = value
    }

    Stepper {
        from: 1
        hint: qsTr("Counted from the upper left, row by row. 1 is a new sheet.")
        label: qsTr("First label still on the sheet")
        objectName: "labelFirst"
        to: root.controller.columns * root.controller.rows
        value: root.controller.first
        visible: root.onSheets
        width: parent.width
        onChanged: value => root.controller.first = value
    }
}
