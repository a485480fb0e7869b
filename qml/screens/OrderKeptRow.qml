import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One row of the kept lists: a list's heading, a line of it with what can be said of it, or what happened.
ColumnLayout {
    id: root

    required property string kind
    required property string title
    required property string note
    required property string value
    required property string standing
    required property bool canOrder
    required property bool canCount
    required property bool canRecall
    required property bool canClose

    readonly property bool isList: root.kind === "list"
    readonly property bool isLine: root.kind === "line"

    signal ordered
    signal recalled
    signal closedRest
    signal counted(direction: int)

    spacing: Theme.space2

    RowLayout {
        Layout.fillWidth: true
        Layout.topMargin: root.isList ? Theme.space4 : 0
        spacing: Theme.space3

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            PlainText {
                Layout.fillWidth: true
                size: root.isList ? Theme.textTitle : Theme.textBody
                strong: true
                text: root.isLine ? qsTr("%1 %2").arg(root.value).arg(root.title) : root.title
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: root.note
                visible: root.note.length > 0
            }

            PlainText {
                Layout.fillWidth: true
                color: Theme.accentInk
                size: Theme.textSmall
                text: root.standing
                visible: root.standing.length > 0
            }
        }

        IconButton {
            Layout.preferredHeight: 56
            Layout.preferredWidth: 56
            iconName: "minus"
            label: qsTr("%1: fewer").arg(root.title)
            objectName: "fewer"
            outlined: true
            visible: root.canCount
            onClicked: root.counted(-1)
        }

        IconButton {
            Layout.preferredHeight: 56
            Layout.preferredWidth: 56
            iconName: "add"
            label: qsTr("%1: more").arg(root.title)
            objectName: "more"
            outlined: true
            visible: root.canCount
            onClicked: root.counted(1)
        }

        PlainButton {
            Layout.preferredHeight: 56
            iconName: "check"
            objectName: "ordered"
            text: root.isList ? qsTr("All ordered") : qsTr("Ordered")
            visible: root.canOrder
            onClicked: root.ordered()
        }

        PlainButton {
            Layout.preferredHeight: 56
            objectName: "recall"
            text: qsTr("Not ordered")
            visible: root.canRecall
            onClicked: root.recalled()
        }

        PlainButton {
            Layout.preferredHeight: 56
            objectName: "close"
            text: qsTr("Rest will not come")
            visible: root.canClose && !root.canRecall
            onClicked: root.closedRest()
        }
    }

    Rectangle {
        Layout.fillWidth: true
        color: Theme.line
        implicitHeight: 1
        visible: !root.isList
    }
}
