import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// One label's size, and how fine the printer prints.
Column {
    id: root

    required property LabelController controller

    spacing: Theme.space4

    ChoiceRow {
        currentIndex: root.controller.size
        label: qsTr("Size of a label")
        objectName: "labelSize"
        options: root.controller.sizes
        width: parent.width
        onPicked: index => root.controller.size = index
    }

    Field {
        hint: qsTr("Width by height, in mm or in.")
        inputMethodHints: Qt.ImhNoPredictiveText
        label: qsTr("Its size")
        objectName: "labelOwnSize"
        placeholder: qsTr("63.5 x 38.1 mm")
        text: root.controller.ownSize
        visible: root.controller.size === root.controller.sizes.length - 1
        width: parent.width
        onEdited: text => root.controller.ownSize = text
    }

    FieldFrame {
        hint: qsTr("Squares of the code fall on whole dots, which keeps small labels readable.")
        label: qsTr("Dots per inch of the printer")
        width: parent.width

        Segmented {
            currentIndex: root.controller.dots
            label: qsTr("Dots per inch of the printer")
            objectName: "labelDots"
            options: ["203", "300"]
            width: parent.width
            onPicked: index => root.controller.dots = index
        }
    }
}
