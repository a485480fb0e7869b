import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Backend
import Gluewright.Ui

// A container that arrived lately: the row opens it, the button beside takes its arrival back.
RowLayout {
    id: root

    required property string key
    required property string container
    required property string label
    required property string name
    required property string note
    required property string shape
    required property string contents
    required property bool undoable

    spacing: Theme.space2

    T.AbstractButton {
        id: line
        objectName: "arrival-" + root.label

        Accessible.description: root.note
        Accessible.name: qsTr("%1, label %2").arg(root.name).arg(root.label)
        Accessible.role: Accessible.ListItem
        Layout.fillWidth: true
        focusPolicy: Qt.StrongFocus
        implicitHeight: Math.max(Theme.touchMain + Theme.space3, implicitContentHeight + 2 * Theme.space2)
        leftPadding: Theme.space4
        rightPadding: Theme.space3

        Keys.onReturnPressed: line.clicked()
        onClicked: AppServices.navigation.openContainer(root.container)

        background: Rectangle {
            border.color: Theme.line
            border.width: 1
            color: line.down ? Theme.testFirstWash : Theme.card
            radius: Theme.radius

            FocusRing {
                shown: line.visualFocus
            }
        }

        contentItem: RowLayout {
            spacing: Theme.space4

            Vessel {
                Accessible.ignored: true
                Layout.preferredHeight: 54
                Layout.preferredWidth: 36
                contents: Theme.contentsColor(root.contents)
                level: 1
                shape: root.shape
            }

            ColumnLayout {
                Layout.fillWidth: true
                spacing: 2

                PlainText {
                    Accessible.ignored: true
                    Layout.fillWidth: true
                    strong: true
                    text: root.name
                }

                PlainText {
                    Accessible.ignored: true
                    Layout.fillWidth: true
                    quiet: true
                    size: Theme.textSmall
                    text: root.note
                }
            }

            Figures {
                Accessible.ignored: true
                color: Theme.inkQuiet
                text: root.label
            }
        }
    }

    IconButton {
        objectName: "undoArrival"
        Layout.preferredHeight: Theme.touchMain
        Layout.preferredWidth: Theme.touchMain
        iconName: "undo"
        label: qsTr("Take back the arrival of %1").arg(root.name)
        visible: root.undoable
        onClicked: AppServices.undo(root.key)
    }
}
