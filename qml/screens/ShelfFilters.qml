pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Narrows the shelf: what is typed, a place, a verdict, each with how many it would leave.
GridLayout {
    id: root

    required property ShelfController controller

    columnSpacing: Theme.space3
    columns: root.width > 980 ? 3 : 2
    rowSpacing: Theme.space3

    SearchField {
        Layout.fillWidth: true
        Layout.minimumWidth: 220
        placeholder: qsTr("Name, lot or label")
        text: root.controller.text
        onCleared: root.controller.text = ""
        onEdited: text => root.controller.text = text
    }

    Picker {
        Layout.preferredWidth: 210
        currentIndex: root.controller.place
        notes: root.controller.placeNotes
        options: root.controller.places
        onPicked: index => root.controller.place = index
    }

    Flow {
        Layout.columnSpan: root.columns === 3 ? 1 : 2
        Layout.fillWidth: root.columns === 2
        Layout.preferredWidth: root.columns === 3 ? 560 : -1
        spacing: Theme.space2

        Repeater {
            model: root.controller.verdicts

            FilterChip {
                id: chip

                required property int index
                required property string modelData

                checked: root.controller.verdict === chip.modelData
                count: root.controller.verdictCounts[chip.index]
                text: Theme.verdictWord(chip.modelData)
                onClicked: root.controller.verdict = root.controller.verdict === chip.modelData ? "" : chip.modelData
            }
        }
    }
}
