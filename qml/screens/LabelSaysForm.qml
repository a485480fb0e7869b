import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What a label says of a material: how long it keeps, between which temperatures, and its hazards. All of it may be left
// out.
ColumnLayout {
    id: root

    required property LabelSays says

    spacing: Theme.space5

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space4
        columns: root.width > 520 ? 2 : 1
        rowSpacing: Theme.space5

        Field {
            objectName: "sealedMonths"
            Layout.fillWidth: true
            Layout.preferredWidth: 200
            errorText: root.says.lifeError
            inputMethodHints: Qt.ImhPreferNumbers
            label: qsTr("Keeps sealed")
            suffix: qsTr("months")
            text: root.says.sealedMonths
            onEdited: text => root.says.sealedMonths = text
        }

        Field {
            objectName: "openedMonths"
            Layout.fillWidth: true
            Layout.preferredWidth: 200
            inputMethodHints: Qt.ImhPreferNumbers
            label: qsTr("Keeps once opened")
            suffix: qsTr("months")
            text: root.says.openedMonths
            onEdited: text => root.says.openedMonths = text
        }

        Field {
            objectName: "keepLow"
            Layout.fillWidth: true
            Layout.preferredWidth: 200
            errorText: root.says.keepError
            inputMethodHints: Qt.ImhPreferNumbers
            label: qsTr("Keep it above")
            suffix: root.says.degreeUnit
            text: root.says.keepLow
            onEdited: text => root.says.keepLow = text
        }

        Field {
            objectName: "keepHigh"
            Layout.fillWidth: true
            Layout.preferredWidth: 200
            inputMethodHints: Qt.ImhPreferNumbers
            label: qsTr("Keep it below")
            suffix: root.says.degreeUnit
            text: root.says.keepHigh
            onEdited: text => root.says.keepHigh = text
        }
    }

    HazardForm {
        Layout.fillWidth: true
        says: root.says
    }
}
