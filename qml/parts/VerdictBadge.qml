import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// The sign with its word, and below the word the first reason when there is one.
RowLayout {
    id: root

    property string verdict
    property string note
    property int size: 40
    property int wordSize: Theme.textStrong

    Accessible.role: Accessible.StaticText
    Accessible.name: root.note.length > 0 ? qsTr("%1. %2").arg(Theme.verdictWord(root.verdict)).arg(root.note)
                                          : Theme.verdictWord(root.verdict)
    spacing: Theme.space3

    JointSign {
        Accessible.ignored: true
        Layout.alignment: Qt.AlignVCenter
        size: root.size
        verdict: root.verdict
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: 2

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            color: Theme.verdictColor(root.verdict)
            size: root.wordSize
            strong: true
            text: Theme.verdictWord(root.verdict)
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            size: Theme.textSmall
            text: root.note
            visible: root.note.length > 0
        }
    }
}
