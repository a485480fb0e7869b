import QtQuick
import QtQuick.Templates as T
import QtQuick.Controls.Basic as Basic
import Gluewright.Ui

// A drawing alone, for acts every screen shares (back, close, torch). Its label is read aloud and shown on a long press.
T.Button {
    id: root

    required property string label
    property string iconName
    property color ink: Theme.ink
    property int iconSize: 26
    property bool outlined: false

    Accessible.name: root.label
    Basic.ToolTip.text: root.label
    Basic.ToolTip.visible: root.pressAndHeld || (root.hovered && hoverDelay.done)
    implicitHeight: Theme.touch
    implicitWidth: Theme.touch
    opacity: root.enabled ? 1 : 0.4

    property bool pressAndHeld: false

    onPressAndHold: root.pressAndHeld = true
    onPressedChanged: if (!root.pressed) root.pressAndHeld = false

    Timer {
        id: hoverDelay
        property bool done: false
        interval: 700
        running: root.hovered
        onRunningChanged: if (!running && !root.hovered) done = false
        onTriggered: done = true
    }

    background: Rectangle {
        border.color: Theme.edge
        border.width: root.outlined ? 1 : 0
        color: root.down ? Theme.testFirstWash : root.outlined ? Theme.card : "transparent"
        radius: Theme.radius

        FocusRing {
            shown: root.visualFocus
        }
    }

    contentItem: Icon {
        color: root.ink
        name: root.iconName
        size: root.iconSize
    }
}
