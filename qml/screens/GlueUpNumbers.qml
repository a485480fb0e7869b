pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A card of names with their numbers under a title; gone when there are none.
Card {
    id: root

    required property RowsModel model
    property string title
    property string note
    property string numbersName

    padding: Theme.space4
    visible: root.model.count > 0

    SectionTitle {
        Layout.fillWidth: true
        text: root.title
    }

    ColumnLayout {
        Accessible.name: root.title
        Accessible.role: Accessible.List
        Layout.fillWidth: true
        objectName: root.numbersName
        spacing: Theme.space2

        Repeater {
            model: root.model

            NumberLine {
                required label
                required note
                required value

                Layout.fillWidth: true
            }
        }
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: root.note
        visible: root.note.length > 0
    }
}
