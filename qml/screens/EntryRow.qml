import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One line of a container's ledger: what happened, when, what was left after it.
Item {
    id: root

    required property string key
    required property string text
    required property string when
    required property string after
    required property string icon
    required property bool undone
    required property bool undoable

    signal undoWanted(key: string)

    Accessible.name: root.undone ? qsTr("%1, %2, taken back").arg(root.text).arg(root.when) : qsTr("%1, %2, %3 left").arg(root.text).arg(root.when).arg(root.after)
    Accessible.role: Accessible.ListItem
    implicitHeight: Math.max(Theme.touchMain, row.implicitHeight + 2 * Theme.space2)

    Rectangle {
        anchors.bottom: parent.bottom
        color: Theme.line
        height: 1
        width: parent.width
    }

    RowLayout {
        id: row
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        spacing: Theme.space3

        Icon {
            Layout.alignment: Qt.AlignTop
            Layout.topMargin: 2
            color: root.undone ? Theme.edge : Theme.inkQuiet
            name: root.icon
            size: 26
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                color: root.undone ? Theme.inkQuiet : Theme.ink
                font.strikeout: root.undone
                text: root.text
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: root.undone ? qsTr("%1, taken back").arg(root.when) : root.when
            }
        }

        PlainText {
            Accessible.ignored: true
            quiet: true
            text: root.after
            visible: !root.undone
            wrapMode: Text.NoWrap
        }

        IconButton {
            iconName: "undo"
            label: qsTr("Take this back: %1").arg(root.text)
            visible: root.undoable
            onClicked: root.undoWanted(root.key)
        }

        Item {
            implicitWidth: Theme.touch
            visible: !root.undoable
        }
    }
}
