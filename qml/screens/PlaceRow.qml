import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One place at the first start: whether there is such a place, its name, and how cold and warm it is taken to get.
Card {
    id: root

    property string name
    property int low
    property int high
    property bool chosen
    property string degreeUnit
    property bool wide: true

    signal nameEdited(name: string)
    signal lowEdited(degrees: int)
    signal highEdited(degrees: int)
    signal chosenEdited(chosen: bool)

    padding: Theme.space4

    ToggleRow {
        Layout.fillWidth: true
        checked: root.chosen
        text: root.name.length > 0 ? root.name : qsTr("Another place")
        onToggled: root.chosenEdited(!root.chosen)
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space4
        columns: root.wide ? 3 : 2
        rowSpacing: Theme.space3
        visible: root.chosen

        Field {
            Layout.alignment: Qt.AlignTop
            Layout.columnSpan: root.wide ? 1 : 2
            Layout.fillWidth: true
            Layout.preferredWidth: 300
            label: qsTr("Name")
            text: root.name
            onEdited: text => root.nameEdited(text)
        }

        Stepper {
            Layout.fillWidth: true
            Layout.preferredWidth: 220
            from: -40
            label: qsTr("Coldest of the year")
            suffix: root.degreeUnit
            to: 60
            value: root.low
            onChanged: value => root.lowEdited(value)
        }

        Stepper {
            Layout.fillWidth: true
            Layout.preferredWidth: 220
            from: -40
            label: qsTr("Warmest of the year")
            suffix: root.degreeUnit
            to: 60
            value: root.high
            onChanged: value => root.highEdited(value)
        }
    }
}
