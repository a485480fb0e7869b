pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// Why a verdict stands, worst first, each reason a sentence to be read aloud. Where each has a verdict of its own its
// sign stands before it.
ColumnLayout {
    id: root

    property list<string> reasons
    property list<string> verdicts

    Accessible.name: qsTr("Reasons")
    Accessible.role: Accessible.List
    spacing: Theme.space3

    Repeater {
        model: root.reasons

        // Not a layout of its own: one more within those around it, and their heights no longer settle in one go.
        Item {
            id: line

            required property int index
            required property string modelData
            readonly property string verdict: root.verdicts[line.index] ?? ""

            Accessible.name: line.modelData
            Accessible.role: Accessible.ListItem
            Layout.fillWidth: true
            implicitHeight: Math.max(said.implicitHeight, sign.visible ? sign.height : 0)

            JointSign {
                id: sign
                Accessible.ignored: true
                size: 28
                verdict: line.verdict
                visible: line.verdict.length > 0
            }

            Rectangle {
                id: dot
                color: Theme.edge
                height: 8
                radius: 4
                visible: !sign.visible
                width: 8
                y: 9
            }

            PlainText {
                id: said
                Accessible.ignored: true
                anchors.left: parent.left
                anchors.leftMargin: (sign.visible ? sign.width : dot.width) + Theme.space3
                anchors.right: parent.right
                text: line.modelData
            }
        }
    }
}
