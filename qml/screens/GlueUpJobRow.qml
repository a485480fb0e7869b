import QtQuick
import Gluewright.Ui

// A kind of work in the list; the first of its family carries the family's name above it.
Column {
    id: root

    required property string name
    required property string note
    required property string family
    property bool headed: false
    property bool current: false
    property bool chosen: false

    signal taken

    PlainText {
        Accessible.name: text
        Accessible.role: Accessible.Heading
        bottomPadding: Theme.space1
        color: Theme.accentInk
        leftPadding: Theme.space3
        size: Theme.textSmall
        strong: true
        text: root.family
        topPadding: Theme.space4
        visible: root.headed
        width: root.width
    }

    PickerRow {
        current: root.current
        note: root.note
        taken: root.chosen
        text: root.name
        width: root.width
        onClicked: root.taken()
    }
}
