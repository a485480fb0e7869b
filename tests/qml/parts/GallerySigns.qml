pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

ScreenPage {
    id: root

    subtitle: qsTr("The four signs, the vessels, the drawings")
    title: qsTr("Signs and vessels")

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space6

        Repeater {
            model: ["good", "test_first", "do_not_use", "not_known"]

            ColumnLayout {
                id: column
                required property string modelData
                spacing: Theme.space2

                RowLayout {
                    spacing: Theme.space3
                    JointSign { size: 96; verdict: column.modelData }
                    JointSign { size: 48; verdict: column.modelData }
                    JointSign { size: 28; verdict: column.modelData }
                }
                VerdictBadge { verdict: column.modelData }
            }
        }
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space5

        Repeater {
            model: ["bottle", "jar", "tin", "bag", "tube", "box", "item"]

            Row {
                id: vessels
                required property string modelData
                required property int index
                spacing: Theme.space3

                Vessel { contents: Theme.contentsColor(["pva", "hide", "resin", "hide", "hardener", "powder", "wax"][vessels.index]); level: [0.62, 0.3, 0.9, 0.08, 1, 0.5, 1][vessels.index]; shape: vessels.modelData }
                Vessel { height: 54; level: -1; shape: vessels.modelData; width: 36 }
            }
        }
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space4

        Repeater {
            model: ["scan", "type-in", "open", "use", "move", "decant", "count", "bench-test", "retire", "hold", "release", "undo", "search", "filter", "back", "torch", "add", "minus", "check", "close", "warning", "camera", "save", "buy", "weigh", "pot", "clock", "thermometer", "humidity", "frost", "label", "print", "piece", "calendar", "edit", "import", "export", "info", "more", "bottle"]

            Icon {
                required property string modelData
                name: modelData
                size: 40
            }
        }
    }

    ColumnLayout {
        Layout.fillWidth: true
        Layout.maximumWidth: 480
        spacing: Theme.space4

        LevelBar { Layout.fillWidth: true; label: qsTr("Left"); level: 0.62 }
        LevelBar { Layout.fillWidth: true; label: qsTr("Life used"); level: 0.9; mark: 0.75; verdict: "test_first" }
        LevelBar { Layout.fillWidth: true; label: qsTr("Left") }
    }
}
