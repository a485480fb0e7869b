import QtQuick
import Gluewright.Ui

// What every field shares: its label above, below it either what is wrong or a hint. The field itself goes inside and
// takes the width of its parent.
Column {
    id: root

    property string label
    property string hint
    property string errorText
    property bool required: false

    readonly property bool wrong: root.errorText.length > 0
    readonly property color boxEdge: root.wrong ? Theme.doNotUse : Theme.edge
    readonly property string spokenName: root.required ? qsTr("%1, needed").arg(root.label) : root.label
    readonly property string spokenHelp: root.wrong ? root.errorText : root.hint

    default property alias content: slot.data

    spacing: Theme.space1 + 2

    PlainText {
        Accessible.ignored: true
        size: Theme.textSmall
        strong: true
        text: root.required ? qsTr("%1 · needed").arg(root.label) : root.label
        visible: root.label.length > 0
        width: root.width
    }

    Column {
        id: slot
        spacing: Theme.space2
        width: root.width
    }

    Item {
        implicitHeight: help.implicitHeight
        visible: root.spokenHelp.length > 0
        width: root.width

        Icon {
            id: mark
            color: Theme.doNotUse
            name: "warning"
            size: 20
            visible: root.wrong
        }

        PlainText {
            id: help
            Accessible.role: root.wrong ? Accessible.AlertMessage : Accessible.StaticText
            Accessible.name: text
            anchors.left: parent.left
            anchors.leftMargin: root.wrong ? mark.width + Theme.space2 : 0
            anchors.right: parent.right
            color: root.wrong ? Theme.doNotUse : Theme.inkQuiet
            size: Theme.textSmall
            text: root.spokenHelp
        }
    }
}
