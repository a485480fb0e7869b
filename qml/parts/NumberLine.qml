import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// A name at the left, its number at the right where a thumb does not cover it.
RowLayout {
    id: root

    property string label
    property string value
    property string note
    property bool strong: false

    Accessible.name: root.note.length > 0 ? qsTr("%1: %2, %3").arg(root.label).arg(root.value).arg(root.note)
                                          : qsTr("%1: %2").arg(root.label).arg(root.value)
    Accessible.role: Accessible.StaticText
    spacing: Theme.space3

    ColumnLayout {
        Layout.fillWidth: true
        spacing: 0

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            strong: root.strong
            text: root.label
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            quiet: true
            size: Theme.textSmall
            text: root.note
            visible: root.note.length > 0
        }
    }

    Figures {
        Accessible.ignored: true
        Layout.alignment: Qt.AlignTop | Qt.AlignRight
        size: root.strong ? Theme.textTitle : Theme.textStrong
        strong: true
        text: root.value
    }
}
