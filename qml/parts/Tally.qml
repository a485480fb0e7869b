import QtQuick
import Gluewright.Ui

// How many things wait behind what it stands on; nothing at nought.
Rectangle {
    id: root

    property int count: 0

    Accessible.ignored: true
    color: Theme.amber
    implicitHeight: 26
    implicitWidth: Math.max(26, figures.implicitWidth + 14)
    radius: 13
    visible: root.count > 0

    Figures {
        id: figures
        Accessible.ignored: true
        anchors.centerIn: parent
        color: Theme.amberInk
        size: 15
        strong: true
        text: root.count
    }
}
