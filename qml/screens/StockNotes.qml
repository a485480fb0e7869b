pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What a table of stock says that cannot be, line by line, or what stands here otherwise.
ColumnLayout {
    id: root

    required property StockFileController controller

    spacing: Theme.space3

    Repeater {
        model: root.controller.notes

        ColumnLayout {
            id: note

            required property string where
            required property string text
            required property bool refused

            Layout.fillWidth: true
            spacing: 0

            PlainText {
                Layout.fillWidth: true
                color: note.refused ? Theme.doNotUse : Theme.ink
                strong: true
                text: note.where
            }

            PlainText {
                Layout.fillWidth: true
                text: note.text
            }
        }
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("And %n more.", "", root.controller.notListed)
        visible: root.controller.notListed > 0
    }
}
