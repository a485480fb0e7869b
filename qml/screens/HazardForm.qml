pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Backend
import Gluewright.Ui

// Which hazard signs a label shows, and its signal word. Not looked at is another answer than none.
ColumnLayout {
    id: root

    required property LabelSays says

    spacing: Theme.space4

    FieldFrame {
        Layout.fillWidth: true
        hint: root.says.usualSigns.length > 0 ? qsTr("Usual for this kind of stuff: %1. The label decides.").arg(root.says.usualSigns) : qsTr("Tap those that are on the label.")
        label: qsTr("Hazard signs on the label")

        Flow {
            Accessible.name: qsTr("Hazard signs on the label")
            Accessible.role: Accessible.Grouping
            spacing: Theme.space2
            width: parent.width

            Repeater {
                model: root.says.signs

                SignTile {
                    required property int index
                    required property string modelData

                    checked: root.says.taken.includes(modelData)
                    code: modelData
                    objectName: "sign-" + modelData
                    text: root.says.signNames[index] ?? ""
                    onClicked: root.says.toggle(modelData)
                }
            }
        }
    }

    FilterChip {
        checkable: false
        checked: root.says.noSigns
        objectName: "noSigns"
        text: qsTr("It shows none")
        onClicked: root.says.noSigns = !root.says.noSigns
    }

    FieldFrame {
        Layout.fillWidth: true
        label: qsTr("Signal word")

        Segmented {
            currentIndex: root.says.signalWord
            label: qsTr("Signal word")
            objectName: "signalWord"
            options: [qsTr("Not read"), qsTr("None"), qsTr("Warning"), qsTr("Danger")]
            width: parent.width
            onPicked: index => root.says.signalWord = index
        }
    }

    component SignTile: T.AbstractButton {
        id: tile

        property string code

        Accessible.checkable: true
        Accessible.checked: tile.checked
        Accessible.name: tile.text
        Accessible.role: Accessible.CheckBox
        focusPolicy: Qt.StrongFocus
        implicitHeight: 112
        implicitWidth: 112

        Keys.onReturnPressed: tile.clicked()

        background: Rectangle {
            border.color: tile.checked ? Theme.amberEdge : Theme.edge
            border.width: tile.checked ? 3 : 1
            color: tile.checked || tile.down ? Theme.testFirstWash : Theme.card
            radius: Theme.radius

            FocusRing {
                shown: tile.visualFocus
            }
        }

        contentItem: Column {
            spacing: 2
            topPadding: Theme.space2

            Image {
                anchors.horizontalCenter: parent.horizontalCenter
                height: 56
                source: "qrc:/gluewright/hazards/" + tile.code + ".svg"
                sourceSize.height: 112
                sourceSize.width: 112
                width: 56
            }

            PlainText {
                Accessible.ignored: true
                horizontalAlignment: Text.AlignHCenter
                lineHeight: 0.9
                size: Theme.textSmall
                text: tile.text
                width: tile.width
            }
        }
    }
}
