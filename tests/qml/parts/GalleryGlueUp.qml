pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

ScreenPage {
    id: root

    canGoBack: true
    subtitle: qsTr("Hot hide glue, 1 chair")
    title: qsTr("Chair, full reglue")

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space5
        columns: root.portrait ? 1 : 2
        rowSpacing: Theme.space4

        ColumnLayout {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            spacing: Theme.space2

            Card {
                Layout.fillWidth: true
                edge: Theme.testFirst
                wash: Theme.testFirstWash

                RowLayout {
                    Layout.fillWidth: true
                    spacing: Theme.space5

                    JointSign { size: 88; verdict: "test_first" }
                    ColumnLayout {
                        Layout.fillWidth: true
                        PlainText { Layout.fillWidth: true; color: Theme.testFirst; size: 30; strong: true; text: qsTr("Fix first: warm the wood") }
                        PlainText { Layout.fillWidth: true; text: qsTr("Rails are 8 °C; hot hide glue wants 20 °C or more. At 18 °C in the room they are ready about 16:40.") }
                    }
                }
            }

            GateRow { Layout.fillWidth: true; name: qsTr("Stock"); result: "pass"; sentence: qsTr("Granules good until Nov 2029") }
            GateRow { Layout.fillWidth: true; name: qsTr("Amount"); result: "pass"; sentence: qsTr("Needs 13 g dry, 405 g here") }
            GateRow { Layout.fillWidth: true; actionText: qsTr("Measure"); name: qsTr("Wood temperature"); result: "warn"; sentence: qsTr("8 °C, wants 20 °C") }
            GateRow { Layout.fillWidth: true; name: qsTr("Room"); result: "pass"; sentence: qsTr("21 °C, 46 % humidity") }
            GateRow { Layout.fillWidth: true; name: qsTr("Wood moisture"); result: "stop"; sentence: qsTr("About 21 % (estimated from the air); this glue wants 12 % or less, and the joint would open as the wood dries") }
            GateRow { Layout.fillWidth: true; actionText: qsTr("Say"); name: qsTr("Old glue in joint"); result: "unknown"; sentence: qsTr("Not said: PVA residue would stop this") }
        }

        ColumnLayout {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            Layout.maximumWidth: root.portrait ? 10000 : 360
            Layout.minimumWidth: 320
            spacing: Theme.space3

            Card {
                Layout.fillWidth: true
                SectionTitle { Layout.fillWidth: true; text: qsTr("Use") }
                RowLayout {
                    spacing: Theme.space4
                    Vessel { contents: Theme.contentsColor("hide"); level: 0.8; shape: "bag" }
                    ColumnLayout {
                        Layout.fillWidth: true
                        PlainText { Layout.fillWidth: true; strong: true; text: qsTr("Hide granules 192 g") }
                        PlainText { Layout.fillWidth: true; quiet: true; text: qsTr("Dry cupboard, lot 24-118, oldest that is fit") }
                    }
                }
            }
            Card {
                Layout.fillWidth: true
                SectionTitle { Layout.fillWidth: true; note: qsTr("1 : 1.8 by weight"); text: qsTr("Weigh out") }
                NumberLine { Layout.fillWidth: true; label: qsTr("Granules"); value: qsTr("13.4 g") }
                NumberLine { Layout.fillWidth: true; label: qsTr("Cold water"); value: qsTr("24.0 g") }
                NumberLine { Layout.fillWidth: true; label: qsTr("Makes"); strong: true; value: qsTr("37.4 g") }
            }
            Card {
                Layout.fillWidth: true
                SectionTitle { Layout.fillWidth: true; text: qsTr("Clocks") }
                NumberLine { Layout.fillWidth: true; label: qsTr("Soak until"); value: "15:10" }
                NumberLine { Layout.fillWidth: true; label: qsTr("Unclamp at"); note: qsTr("Full load tomorrow 17:45"); value: "17:45" }
            }
            BigButton { Layout.fillWidth: true; iconName: "pot"; text: qsTr("Start the pot") }
        }
    }
}
