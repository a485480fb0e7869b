import QtQuick
import Gluewright.Ui

// What a GateRow says: the gate and its result, then the sentence; beside each other where there is room.
Item {
    id: root

    property string name
    property string result
    property string resultWord
    property string sentence
    property bool narrow: false
    property int nameWidth: 190

    implicitHeight: root.narrow ? words.implicitHeight + said.implicitHeight : Math.max(words.implicitHeight, said.implicitHeight)
    implicitWidth: 300

    Column {
        id: words
        width: root.narrow ? root.width : root.nameWidth
        y: root.narrow ? 0 : (root.height - height) / 2

        PlainText {
            Accessible.ignored: true
            strong: true
            text: root.name
            width: parent.width
        }

        PlainText {
            Accessible.ignored: true
            color: Theme.verdictColor(Theme.gateVerdict(root.result))
            size: Theme.textSmall
            strong: true
            text: root.resultWord
            width: parent.width
        }
    }

    PlainText {
        id: said
        Accessible.ignored: true
        text: root.sentence
        width: root.narrow ? root.width : Math.max(0, root.width - x)
        x: root.narrow ? 0 : root.nameWidth + Theme.space4
        y: root.narrow ? words.height : (root.height - height) / 2
    }
}
