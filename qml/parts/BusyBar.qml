import QtQuick
import Gluewright.Ui

// Something is on its way from the store: a bead of glue runs along the line. It waits a moment before it shows, so
// that quick answers do not flicker.
Item {
    id: root

    property bool running: false
    property string label: qsTr("Working")

    Accessible.ignored: !root.visible
    Accessible.name: root.label
    Accessible.role: Accessible.ProgressBar
    clip: true
    implicitHeight: 4
    implicitWidth: 200
    visible: delay.shown

    Timer {
        id: delay
        property bool shown: false
        interval: 250
        running: root.running
        onRunningChanged: if (!root.running) shown = false
        onTriggered: shown = true
    }

    Rectangle {
        anchors.fill: parent
        color: Theme.line
    }

    Rectangle {
        id: bead
        color: Theme.amber
        height: parent.height
        radius: height / 2
        width: Math.max(48, parent.width / 5)

        XAnimator on x {
            duration: 1400
            easing.type: Easing.InOutSine
            from: -bead.width
            loops: Animation.Infinite
            running: root.visible
            to: root.width
        }
    }
}
