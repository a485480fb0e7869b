import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// How many containers have one verdict: sign, number and word, the whole tile a target.
T.AbstractButton {
    id: root

    property string verdict
    property int count: 0

    Accessible.name: qsTr("%1: %2").arg(Theme.verdictWord(root.verdict)).arg(root.count)
    Accessible.role: Accessible.Button
    focusPolicy: Qt.StrongFocus
    implicitHeight: 92
    implicitWidth: 200
    padding: Theme.space4

    Keys.onReturnPressed: root.clicked()

    background: Rectangle {
        border.color: Theme.line
        border.width: 1
        color: root.down ? Theme.testFirstWash : root.count > 0 ? Theme.verdictWash(root.verdict) : Theme.card
        radius: Theme.radius + 4

        FocusRing {
            around: Theme.radius + 4
            shown: root.visualFocus
        }
    }

    contentItem: RowLayout {
        spacing: Theme.space4

        JointSign {
            Accessible.ignored: true
            size: 56
            verdict: root.verdict
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Figures {
                Accessible.ignored: true
                color: Theme.verdictColor(root.verdict)
                size: Theme.textScreen
                strong: true
                text: String(root.count)
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                elide: Text.ElideRight
                maximumLineCount: 1
                text: Theme.verdictWord(root.verdict)
            }
        }
    }
}
