pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// A few choices all in sight, each a tile a thumb can hit. For more than about eight take a Picker.
FieldFrame {
    id: root

    property list<string> options
    property list<string> iconNames
    property int currentIndex: -1

    signal picked(index: int)

    Flow {
        Accessible.name: root.spokenName
        Accessible.role: Accessible.Grouping
        spacing: Theme.space2
        width: parent.width

        Repeater {
            model: root.options

            T.AbstractButton {
                id: tile

                required property int index
                required property string modelData
                readonly property bool taken: tile.index === root.currentIndex

                Accessible.checkable: true
                Accessible.checked: tile.taken
                Accessible.name: tile.modelData
                Accessible.role: Accessible.RadioButton
                focusPolicy: Qt.StrongFocus
                implicitHeight: Theme.touchMain
                implicitWidth: Math.max(96, implicitContentWidth + leftPadding + rightPadding)
                leftPadding: Theme.space4
                opacity: tile.enabled ? 1 : 0.45
                rightPadding: Theme.space4

                Keys.onReturnPressed: root.picked(tile.index)
                onClicked: root.picked(tile.index)

                background: Rectangle {
                    border.color: tile.taken ? Theme.amberEdge : root.boxEdge
                    border.width: tile.taken ? 3 : 1
                    color: tile.taken || tile.down ? Theme.testFirstWash : Theme.card
                    radius: Theme.radius

                    FocusRing {
                        shown: tile.visualFocus
                    }
                }

                contentItem: IconLine {
                    iconName: root.iconNames[tile.index] ?? ""
                    text: tile.modelData
                }
            }
        }
    }
}
