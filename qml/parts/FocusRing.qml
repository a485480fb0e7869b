import QtQuick
import Gluewright.Ui

// The ring a keyboard user follows. It stands outside its control so that it is seen on any fill.
Rectangle {
    id: root

    property bool shown: false
    property real around: Theme.radius

    anchors.fill: parent
    anchors.margins: -5
    border.color: Theme.focus
    border.width: 3
    color: "transparent"
    radius: root.around + 5
    visible: root.shown
}
