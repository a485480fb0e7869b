import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// Books out what the answer says to use, on a client's piece. It can be undone.
Rectangle {
    id: root

    required property GlueUpController controller

    color: Theme.card
    implicitHeight: Theme.touchMain + 2 * Theme.space3
    implicitWidth: 600

    Rectangle {
        color: Theme.line
        height: 1
        width: parent.width
    }

    TextBox {
        id: piece
        Accessible.name: qsTr("Piece it is for")
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: record.left
        anchors.rightMargin: Theme.space4
        anchors.verticalCenter: parent.verticalCenter
        height: Theme.touchMain
        objectName: "pieceField"
        placeholderText: qsTr("For which piece?")

        onAccepted: record.clicked()
        onTextEdited: root.controller.piece = piece.text

        Binding on text {
            value: root.controller.piece
        }
    }

    BigButton {
        id: record
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.verticalCenter: parent.verticalCenter
        enabled: root.controller.canRecord
        iconName: "check"
        objectName: "recordButton"
        text: qsTr("Record it")
        width: Math.min(384, root.width / 2)
        onClicked: root.controller.record()
    }
}
