import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// One thing to narrow a list by. A tick and a fill say that it is on; a count says how many it would leave.
T.AbstractButton {
    id: root

    property int count: -1
    property string verdict

    Accessible.checkable: true
    Accessible.checked: root.checked
    Accessible.name: root.count < 0 ? root.text : qsTr("%1, %2").arg(root.text).arg(root.count)
    Accessible.role: Accessible.CheckBox
    checkable: true
    implicitHeight: Theme.touch
    implicitWidth: implicitContentWidth + leftPadding + rightPadding
    leftPadding: Theme.space4
    opacity: root.enabled ? 1 : 0.45
    rightPadding: Theme.space4

    background: Rectangle {
        border.color: root.checked ? Theme.amberEdge : Theme.edge
        border.width: root.checked ? 2 : 1
        color: root.checked ? Theme.testFirstWash : Theme.card
        radius: height / 2

        FocusRing {
            around: parent.height / 2
            shown: root.visualFocus
        }
    }

    contentItem: Row {
        spacing: Theme.space2

        Icon {
            anchors.verticalCenter: parent.verticalCenter
            name: "check"
            size: 20
            visible: root.checked
        }

        JointSign {
            Accessible.ignored: true
            anchors.verticalCenter: parent.verticalCenter
            size: 24
            verdict: root.verdict
            visible: root.verdict.length > 0
        }

        PlainText {
            Accessible.ignored: true
            anchors.verticalCenter: parent.verticalCenter
            strong: root.checked
            text: root.text
            wrapMode: Text.NoWrap
        }

        Figures {
            Accessible.ignored: true
            anchors.verticalCenter: parent.verticalCenter
            color: Theme.inkQuiet
            text: root.count
            visible: root.count >= 0
        }
    }
}
