import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// The one main act of a screen. While busy it stays in place, says so and takes no second press.
T.Button {
    id: root

    property string iconName
    property bool busy: false
    property string busyText: qsTr("Working…")

    Accessible.name: root.busy ? root.busyText : root.text
    enabled: !root.busy
    font.family: Theme.fontFamily
    font.pixelSize: Theme.textStrong
    font.weight: Font.Bold
    implicitHeight: Math.max(Theme.touchMain, contentItem.implicitHeight + 2 * Theme.space3)
    implicitWidth: contentItem.implicitWidth + 2 * Theme.space6
    opacity: root.enabled || root.busy ? 1 : 0.45
    padding: Theme.space4

    background: Rectangle {
        border.color: Theme.amberEdge
        border.width: 1
        color: root.down || root.busy ? Theme.amberPressed : Theme.amber
        radius: Theme.radius

        FocusRing {
            shown: root.visualFocus
        }
    }

    contentItem: IconLine {
        bold: true
        iconName: root.iconName
        ink: Theme.amberInk
        text: root.busy ? root.busyText : root.text
        textSize: root.font.pixelSize
    }
}
