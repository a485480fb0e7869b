import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One big number to read from across the bench.
ColumnLayout {
    id: root

    property string label
    property string value
    property string unit
    property string note

    Accessible.name: qsTr("%1: %2 %3").arg(root.label).arg(root.value).arg(root.unit)
    Accessible.role: Accessible.StaticText
    spacing: 0

    PlainText {
        Accessible.ignored: true
        Layout.fillWidth: true
        quiet: true
        text: root.label
    }

    Row {
        spacing: Theme.space2

        // Alone and this large, a number reads better in the font's own spacing than in even cells.
        PlainText {
            id: figures
            Accessible.ignored: true
            size: Theme.textBig
            strong: true
            text: root.value
            wrapMode: Text.NoWrap
        }

        PlainText {
            Accessible.ignored: true
            anchors.bottom: figures.bottom
            anchors.bottomMargin: 7
            quiet: true
            size: Theme.textTitle
            text: root.unit
            visible: root.unit.length > 0
            wrapMode: Text.NoWrap
        }
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
