import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// A choice that is on or off, with the whole row to press.
T.Switch {
    id: root

    property string note

    Accessible.description: root.note
    Accessible.name: root.text
    implicitHeight: Math.max(Theme.touchMain, contentItem.implicitHeight + 2 * Theme.space2)
    implicitWidth: 280
    opacity: root.enabled ? 1 : 0.45

    background: Item {
        FocusRing {
            around: Theme.radiusSmall
            shown: root.visualFocus
        }
    }

    indicator: Rectangle {
        anchors.verticalCenter: parent.verticalCenter
        border.color: root.checked ? Theme.amberEdge : Theme.edge
        border.width: 2
        color: root.checked ? Theme.amber : Theme.sunken
        height: 32
        radius: 16
        width: 58
        x: root.mirrored ? 0 : root.width - width

        Rectangle {
            anchors.verticalCenter: parent.verticalCenter
            color: root.checked ? Theme.amberInk : Theme.edge
            height: 20
            radius: 10
            width: 20
            x: root.checked !== root.mirrored ? parent.width - width - 6 : 6

            Behavior on x {
                NumberAnimation {
                    duration: Theme.quick
                }
            }
        }
    }

    contentItem: ColumnLayout {
        spacing: 2

        PlainText {
            Accessible.ignored: true
            Layout.alignment: root.note.length > 0 ? Qt.AlignBottom : Qt.AlignVCenter
            Layout.fillWidth: true
            Layout.rightMargin: 58 + Theme.space4
            text: root.text
        }

        PlainText {
            Accessible.ignored: true
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            Layout.rightMargin: 58 + Theme.space4
            quiet: true
            size: Theme.textSmall
            text: root.note
            visible: root.note.length > 0
        }
    }
}
