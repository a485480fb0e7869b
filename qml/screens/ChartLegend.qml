pragma ComponentBehavior: Bound

import QtQuick
import Gluewright.Ui

// What the colours of a chart mean, in words.
Flow {
    id: root

    required property list<color> inks
    required property list<bool> lines // a line rather than an area
    required property list<string> texts

    Accessible.ignored: true
    spacing: Theme.space4

    Repeater {
        model: root.texts

        Row {
            id: entry

            required property int index
            required property string modelData

            spacing: Theme.space2

            Rectangle {
                anchors.verticalCenter: parent.verticalCenter
                border.color: Theme.line
                border.width: root.lines[entry.index] ? 0 : 1
                color: root.inks[entry.index] ?? Theme.line
                height: root.lines[entry.index] ? 3 : 16
                radius: root.lines[entry.index] ? 0 : 3
                width: 24
            }

            PlainText {
                quiet: true
                size: Theme.textSmall
                text: entry.modelData
                width: Math.min(implicitWidth, root.width - 24 - Theme.space2)
            }
        }
    }
}
