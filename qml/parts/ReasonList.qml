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

        RowLayout {
            id: line

            required property int index
            required property string modelData
            readonly property string verdict: root.verdicts[line.index] ?? ""

            Accessible.name: line.modelData
            Accessible.role: Accessible.ListItem
            Layout.fillWidth: true
            spacing: Theme.space3

            JointSign {
                Accessible.ignored: true
                Layout.alignment: Qt.AlignTop
                size: 28
                verdict: line.verdict
                visible: line.verdict.length > 0
            }

            Rectangle {
                Layout.alignment: Qt.AlignTop
                Layout.topMargin: 9
                color: Theme.edge
                implicitHeight: 8
                implicitWidth: 8
                radius: 4
                visible: line.verdict.length === 0
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                text: line.modelData
            }
        }
    }
}
