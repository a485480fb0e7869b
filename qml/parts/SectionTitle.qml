import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// The name of a group of rows, with an optional quiet note at its right.
RowLayout {
    id: root

    property string text
    property string note

    Accessible.role: Accessible.Heading
    Accessible.name: root.text
    spacing: Theme.space3

    PlainText {
        Accessible.ignored: true
        Layout.fillWidth: true
        size: Theme.textStrong
        strong: true
        text: root.text
    }

    PlainText {
        Layout.fillWidth: true
        horizontalAlignment: Text.AlignRight
        quiet: true
        size: Theme.textSmall
        text: root.note
        visible: root.note.length > 0
    }
}
