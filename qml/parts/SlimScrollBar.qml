import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// Shows how far down a list one is; the list itself is what a thumb moves.
T.ScrollBar {
    id: root

    implicitHeight: 10
    implicitWidth: 10
    padding: 2
    policy: T.ScrollBar.AsNeeded
    visible: root.size < 1

    contentItem: Rectangle {
        color: Theme.edge
        implicitHeight: 6
        implicitWidth: 6
        opacity: root.active ? 1 : 0.6
        radius: 3
    }
}
