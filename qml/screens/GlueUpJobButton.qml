import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// The head of the check: which work it is for. The whole head opens the list.
T.AbstractButton {
    id: root

    property string name
    property string note

    readonly property string shownName: root.name.length > 0 ? root.name : qsTr("Glue-up")

    Accessible.description: root.note
    Accessible.name: root.name.length > 0 ? qsTr("Work: %1").arg(root.name) : qsTr("Choose the work")
    Accessible.role: Accessible.ComboBox
    focusPolicy: Qt.StrongFocus
    implicitHeight: Math.max(Theme.touchMain, implicitContentHeight + 2 * Theme.space2)
    implicitWidth: 600
    leftPadding: Theme.space4
    rightPadding: Theme.space4

    Keys.onDownPressed: root.clicked()
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

    contentItem: RowLayout {
        spacing: Theme.space4

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                elide: Text.ElideRight
                font.weight: Font.Bold
                maximumLineCount: 2
                size: 28
                text: root.shownName
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                elide: Text.ElideRight
                maximumLineCount: 2
                quiet: true
                size: Theme.textSmall
                text: root.note
                visible: root.note.length > 0
            }
        }

        PlainText {
            Accessible.ignored: true
            color: Theme.accentInk
            strong: true
            text: root.name.length > 0 ? qsTr("Change") : qsTr("Choose the work")
            wrapMode: Text.NoWrap
        }

        Icon {
            color: Theme.accentInk
            name: "down"
            size: 24
        }
    }
}
