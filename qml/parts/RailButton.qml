import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// One destination on the rail.
T.AbstractButton {
    id: root

    property string iconName
    property bool current: false
    property int attention: 0

    Accessible.name: root.attention > 0 ? qsTr("%1, %n want attention", "", root.attention).arg(root.text) : root.text
    Accessible.role: Accessible.PageTab
    Accessible.selectable: true
    Accessible.selected: root.current
    focusPolicy: Qt.StrongFocus

    background: Rectangle {
        border.color: Theme.railMark
        border.width: root.visualFocus ? 3 : 0
        color: root.current || root.down ? Theme.walnutLit : "transparent"
        radius: Theme.radius
    }

    contentItem: Item {
        Column {
            anchors.centerIn: parent
            spacing: Theme.space1
            width: parent.width

            Icon {
                anchors.horizontalCenter: parent.horizontalCenter
                color: root.current ? Theme.railMark : Theme.walnutInkQuiet
                name: root.iconName
                size: 40
            }

            PlainText {
                Accessible.ignored: true
                color: root.current ? Theme.walnutInk : Theme.walnutInkQuiet
                elide: Text.ElideRight
                horizontalAlignment: Text.AlignHCenter
                maximumLineCount: 1
                size: Theme.textSmall
                strong: root.current
                text: root.text
                width: parent.width
            }
        }

        Tally {
            count: root.attention
            x: parent.width / 2 + 8
            y: parent.height / 2 - 42
        }
    }
}
