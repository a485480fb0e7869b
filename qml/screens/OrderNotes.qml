import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// What else is to be known about the list, under its last line.
Item {
    id: root

    property list<string> notes

    implicitHeight: root.notes.length > 0 ? card.implicitHeight + 2 * Theme.space4 : Theme.space4

    width: parent ? parent.width : 0

    Card {
        id: card
        anchors.left: parent.left
        anchors.right: parent.right
        padding: Theme.space4
        visible: root.notes.length > 0
        y: Theme.space4

        SectionTitle {
            Layout.fillWidth: true
            text: qsTr("Notes")
        }

        ReasonList {
            Layout.fillWidth: true
            objectName: "orderNotes"
            reasons: root.notes
        }
    }
}
