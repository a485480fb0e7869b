import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One line of a PickerList.
T.ItemDelegate {
    id: root

    property string note
    property bool taken: false
    property bool current: false
    property bool shown: true

    Accessible.name: root.note.length > 0 ? qsTr("%1, %2").arg(root.text).arg(root.note) : root.text
    Accessible.role: Accessible.ListItem
    Accessible.selected: root.taken
    height: root.shown ? Math.max(Theme.touchMain, implicitContentHeight + 2 * Theme.space2) : 0
    leftPadding: Theme.space3
    rightPadding: Theme.space4
    visible: root.shown

    background: Rectangle {
        border.color: Theme.focus
        border.width: root.current ? 3 : 0
        color: root.taken || root.down ? Theme.testFirstWash : "transparent"
        radius: Theme.radiusSmall

        Rectangle {
            anchors.bottom: parent.bottom
            color: Theme.line
            height: 1
            width: parent.width
        }
    }

    contentItem: RowLayout {
        spacing: Theme.space3

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                strong: root.taken
                text: root.text
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: root.note
                visible: root.note.length > 0
            }
        }

        Icon {
            color: Theme.accentInk
            name: "check"
            size: 24
            visible: root.taken
        }
    }
}
