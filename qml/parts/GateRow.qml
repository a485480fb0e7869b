import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One condition of the check before a glue-up: its sign, its name, what was found and what is wanted.
T.AbstractButton {
    id: root

    property string result
    property string name
    property string sentence
    property string actionText
    property int nameWidth: 190

    readonly property bool first: root.result === "stop"
    readonly property bool narrow: root.width < 560
    readonly property string resultWord: {
        switch (root.result) {
        case "pass": return qsTr("Passes");
        case "warn": return qsTr("Take care");
        case "stop": return qsTr("Stop");
        default: return qsTr("Not known");
        }
    }

    signal acted

    Accessible.description: root.sentence
    Accessible.name: qsTr("%1: %2").arg(root.name).arg(root.resultWord)
    Accessible.role: Accessible.ListItem
    focusPolicy: Qt.StrongFocus
    implicitHeight: Math.max(Theme.touchMain, implicitContentHeight + topPadding + bottomPadding)
    implicitWidth: 600
    leftPadding: Theme.space4
    padding: Theme.space2
    rightPadding: Theme.space3

    Keys.onReturnPressed: root.clicked()

    background: Rectangle {
        border.color: root.first ? Theme.doNotUse : Theme.line
        border.width: 1
        color: root.down ? Theme.testFirstWash : root.first ? Theme.doNotUseWash : Theme.card
        radius: Theme.radius

        FocusRing {
            shown: root.visualFocus
        }
    }

    contentItem: RowLayout {
        spacing: Theme.space4

        JointSign {
            size: 40
            verdict: Theme.gateVerdict(root.result)
        }

        GateWords {
            Layout.fillWidth: true
            name: root.name
            nameWidth: root.nameWidth
            narrow: root.narrow
            result: root.result
            resultWord: root.resultWord
            sentence: root.sentence
        }

        PlainButton {
            text: root.actionText
            visible: root.actionText.length > 0
            onClicked: root.acted()
        }
    }
}
