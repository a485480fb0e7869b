import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One choice out of many: shows what is taken, opens the list over the screen.
FieldFrame {
    id: root

    property list<string> options
    property list<string> notes
    property int currentIndex: -1
    property string placeholder: qsTr("Choose")

    signal picked(index: int)

    function openList() {
        list.open();
    }

    T.Button {
        id: face
        objectName: "face"

        Accessible.description: root.spokenHelp
        Accessible.name: qsTr("%1: %2").arg(root.spokenName).arg(face.text)
        Accessible.role: Accessible.ComboBox
        focusPolicy: Qt.StrongFocus
        implicitHeight: 56
        implicitWidth: 200
        leftPadding: Theme.space4
        opacity: face.enabled ? 1 : 0.5
        rightPadding: Theme.space3
        text: root.options[root.currentIndex] ?? root.placeholder
        width: parent.width

        Keys.onDownPressed: list.open()
        Keys.onReturnPressed: list.open()
        onClicked: list.open()

        background: Rectangle {
            border.color: root.boxEdge
            border.width: 1
            color: face.down ? Theme.testFirstWash : Theme.sunken
            radius: Theme.radiusSmall

            FocusRing {
                around: Theme.radiusSmall
                shown: face.visualFocus
            }
        }

        contentItem: RowLayout {
            spacing: Theme.space2

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                elide: Text.ElideRight
                maximumLineCount: 1
                quiet: root.currentIndex < 0
                size: Theme.textStrong
                text: face.text
            }

            Icon {
                color: Theme.inkQuiet
                name: "down"
                size: 22
            }
        }
    }

    PickerList {
        id: list
        objectName: "list"
        currentIndex: root.currentIndex
        notes: root.notes
        options: root.options
        title: root.label

        onPicked: index => {
            root.picked(index);
            face.forceActiveFocus(Qt.PopupFocusReason);
        }
    }
}
