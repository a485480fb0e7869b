import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// How full a container is, as a picture to press.
T.AbstractButton {
    id: root

    property string shape
    property color contents
    property real level: 1

    Accessible.name: root.text
    Accessible.role: Accessible.Button
    focusPolicy: Qt.StrongFocus
    implicitHeight: 132
    implicitWidth: 96

    Keys.onReturnPressed: root.clicked()

    background: Rectangle {
        border.color: Theme.edge
        border.width: 1
        color: root.down ? Theme.testFirstWash : Theme.card
        radius: Theme.radius

        FocusRing {
            shown: root.visualFocus
        }
    }

    contentItem: Column {
        spacing: Theme.space1
        topPadding: Theme.space3

        Vessel {
            Accessible.ignored: true
            anchors.horizontalCenter: parent.horizontalCenter
            contents: root.contents
            height: 72
            level: root.level
            shape: root.shape
            width: 48
        }

        PlainText {
            Accessible.ignored: true
            horizontalAlignment: Text.AlignHCenter
            size: Theme.textSmall
            strong: true
            text: root.text
            width: parent.width
        }
    }
}
