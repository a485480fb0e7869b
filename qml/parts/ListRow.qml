import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One line of a list that leads somewhere: a sign or a drawing, a name with a note, a number at the right.
T.AbstractButton {
    id: root

    property string title
    property string note
    property string value
    property string iconName
    property string verdict
    property bool arrow: true

    // What stands in the row, read in one breath.
    readonly property string spokenVerdict: root.verdict.length > 0 ? qsTr("%1, %2").arg(root.title).arg(Theme.verdictWord(root.verdict)) : root.title

    Accessible.description: root.note
    Accessible.name: root.value.length > 0 ? qsTr("%1, %2").arg(root.spokenVerdict).arg(root.value) : root.spokenVerdict
    Accessible.role: Accessible.ListItem
    focusPolicy: Qt.StrongFocus
    implicitHeight: Math.max(Theme.touchMain, implicitContentHeight + topPadding + bottomPadding)
    implicitWidth: 320
    bottomPadding: Theme.space3
    leftPadding: Theme.space4
    opacity: root.enabled ? 1 : 0.45
    rightPadding: Theme.space3
    topPadding: Theme.space3

    Keys.onReturnPressed: root.clicked()

    background: Rectangle {
        border.color: Theme.line
        border.width: 1
        color: root.down ? Theme.testFirstWash : Theme.card
        radius: Theme.radius

        FocusRing {
            shown: root.visualFocus
        }
    }

    contentItem: RowLayout {
        spacing: Theme.space4

        JointSign {
            size: 40
            verdict: root.verdict
            visible: root.verdict.length > 0
        }

        Icon {
            color: Theme.inkQuiet
            name: root.iconName
            size: 32
            visible: root.iconName.length > 0 && root.verdict.length === 0
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 2

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                strong: true
                text: root.title
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: root.note
                visible: root.note.length > 0
            }
        }

        Figures {
            Accessible.ignored: true
            size: Theme.textStrong
            strong: true
            text: root.value
            visible: root.value.length > 0
        }

        Icon {
            color: Theme.inkQuiet
            name: "next"
            size: 20
            visible: root.arrow
        }
    }
}
