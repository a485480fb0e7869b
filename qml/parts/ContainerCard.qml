import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One container on the shelf: what it looks like, how much is left, where it stands, and whether it is still good.
T.AbstractButton {
    id: root

    property string name
    property string amountText
    property string place
    property string verdict
    property string reason
    property string shape: "bottle"
    property real level: -1
    property color contents: Theme.contentsColor("unknown")

    Accessible.description: root.reason
    Accessible.name: qsTr("%1, %2, %3, %4").arg(root.name).arg(Theme.verdictWord(root.verdict)).arg(root.amountText).arg(root.place)
    Accessible.role: Accessible.Button
    focusPolicy: Qt.StrongFocus
    implicitHeight: 302
    implicitWidth: 264
    bottomPadding: Theme.space3
    leftPadding: Theme.space5 - 4
    rightPadding: Theme.space5 - 4
    topPadding: Theme.space4

    Keys.onReturnPressed: root.clicked()

    background: Rectangle {
        border.color: Theme.line
        border.width: 1
        color: root.down ? Theme.testFirstWash : Theme.card
        radius: Theme.radius + 4

        FocusRing {
            around: Theme.radius + 4
            shown: root.visualFocus
        }
    }

    contentItem: ColumnLayout {
        spacing: 1

        RowLayout {
            Layout.bottomMargin: Theme.space2
            Layout.fillWidth: true

            Vessel {
                Accessible.ignored: true
                Layout.preferredHeight: 96
                Layout.preferredWidth: 64
                contents: root.contents
                dimmed: root.verdict === "do_not_use"
                level: root.level
                shape: root.shape
            }

            ColumnLayout {
                Layout.fillHeight: true
                Layout.fillWidth: true

                JointSign {
                    Accessible.ignored: true
                    Layout.alignment: Qt.AlignRight | Qt.AlignTop
                    size: 60
                    verdict: root.verdict
                }

                PlainText {
                    Accessible.ignored: true
                    Layout.alignment: Qt.AlignBottom
                    Layout.fillWidth: true
                    elide: Text.ElideRight
                    horizontalAlignment: Text.AlignRight
                    maximumLineCount: 1
                    text: root.amountText
                }
            }
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            elide: Text.ElideRight
            lineHeight: 0.92
            maximumLineCount: 2
            size: Theme.textStrong
            strong: true
            text: root.name
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            elide: Text.ElideRight
            maximumLineCount: 1
            quiet: true
            text: root.place
        }

        Item {
            Layout.fillHeight: true
        }

        Rectangle {
            Layout.bottomMargin: Theme.space1
            Layout.fillWidth: true
            Layout.topMargin: Theme.space1
            color: Theme.line
            implicitHeight: 1
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            color: Theme.verdictColor(root.verdict)
            font.weight: Font.Bold
            text: Theme.verdictWord(root.verdict)
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            Layout.minimumHeight: 2 * 19
            elide: Text.ElideRight
            maximumLineCount: 2
            size: Theme.textSmall
            text: root.reason
            verticalAlignment: Text.AlignTop
        }
    }
}
