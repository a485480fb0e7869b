import QtQuick
import QtQuick.Controls.impl
import Gluewright.Ui

// One of our line drawings, tinted. It carries no meaning of its own: the control around it is the one that is named.
Item {
    id: root

    property string name
    property int size: 28
    property color color: Theme.ink

    Accessible.ignored: true
    implicitHeight: root.size
    implicitWidth: root.size

    IconImage {
        anchors.centerIn: parent
        color: root.color
        height: root.size
        source: root.name.length > 0 ? Qt.resolvedUrl("../icons/" + root.name + ".svg") : ""
        sourceSize.height: root.size
        sourceSize.width: root.size
        width: root.size
    }
}
