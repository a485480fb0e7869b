import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One thing that wants doing, and at the right the code on the container's label, to find it by.
T.AbstractButton {
    id: root

    required property string container
    required property string title
    required property string note
    required property string label
    required property string verdict
    required property string iconName

    Accessible.description: root.note
    Accessible.name: qsTr("%1, %2, label %3").arg(root.title).arg(root.iconName.length > 0 ? qsTr("bring it in") : Theme.verdictWord(root.verdict)).arg(root.label)
    Accessible.role: Accessible.ListItem
    bottomPadding: Theme.space3
    focusPolicy: Qt.StrongFocus
    implicitHeight: Math.max(Theme.touchMain, implicitContentHeight + topPadding + bottomPadding)
    leftPadding: Theme.space4
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
            Accessible.ignored: true
            size: 44
            verdict: root.verdict
            visible: root.iconName.length === 0
        }

        Icon {
            color: Theme.doNotUse
            name: root.iconName
            size: 44
            visible: root.iconName.length > 0
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 2

            RowLayout {
                Layout.fillWidth: true
                spacing: Theme.space3

                PlainText {
                    Accessible.ignored: true
                    Layout.fillWidth: true
                    strong: true
                    text: root.title
                }

                PlainText {
                    Accessible.ignored: true
                    quiet: true
                    size: Theme.textSmall
                    text: root.label
                    wrapMode: Text.NoWrap
                }
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                elide: Text.ElideRight
                maximumLineCount: 3
                quiet: true
                size: Theme.textSmall
                text: root.note
                visible: root.note.length > 0
            }
        }

        Icon {
            color: Theme.inkQuiet
            name: "next"
            size: 20
        }
    }
}
