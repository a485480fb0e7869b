import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// The way back, on walnut.
T.Button {
    id: root

    Accessible.name: root.text
    implicitHeight: Theme.touch + 4
    implicitWidth: contentItem.implicitWidth + 2 * Theme.space4
    text: qsTr("Undo")

    background: Rectangle {
        border.color: Theme.railMark
        border.width: root.visualFocus ? 3 : 1
        color: root.down ? Theme.walnutLit : "transparent"
        radius: Theme.radius
    }

    contentItem: IconLine {
        bold: true
        iconName: "undo"
        ink: Theme.railMark
        text: root.text
    }
}
