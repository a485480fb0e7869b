pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The verdict with its reasons, the life clocks behind it, and the cautions.
ColumnLayout {
    id: root

    required property ContainerController controller
    required property ContainerSheets sheets

    Layout.fillWidth: true
    spacing: Theme.space4

    Card {
        Layout.fillWidth: true
        edge: Theme.verdictColor(root.controller.verdict)
        spacing: Theme.space4
        wash: Theme.verdictWash(root.controller.verdict)

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.space5

            JointSign {
                Accessible.ignored: true
                size: 104
                verdict: root.controller.verdict
            }

            ColumnLayout {
                Layout.fillWidth: true
                spacing: 0

                PlainText {
                    Accessible.name: text
                    Accessible.role: Accessible.Heading
                    Layout.fillWidth: true
                    color: Theme.verdictColor(root.controller.verdict)
                    font.weight: Font.Bold
                    objectName: "verdictWord"
                    size: Theme.textBig
                    text: Theme.verdictWord(root.controller.verdict)
                }

                PlainText {
                    Layout.fillWidth: true
                    size: Theme.textTitle
                    text: root.controller.headline
                    visible: root.controller.headline.length > 0
                }
            }
        }

        ReasonList {
            Layout.fillWidth: true
            reasons: root.controller.reasons
            verdicts: root.controller.reasonVerdicts
        }

        Flow {
            Layout.fillWidth: true

            PlainButton {
                flat: true
                iconName: "info"
                text: qsTr("What this rests on")
                onClicked: root.sheets.showFigures()
            }

            PlainButton {
                flat: true
                iconName: "edit"
                objectName: "readLabelAgain"
                text: qsTr("What its label says")
                onClicked: root.sheets.readLabelAgain()
            }
        }
    }

    Card {
        Layout.fillWidth: true
        visible: root.controller.clockNames.length > 0

        Repeater {
            model: root.controller.clockNames

            ColumnLayout {
                id: clock

                required property int index
                required property string modelData

                Layout.fillWidth: true
                spacing: Theme.space2

                PlainText {
                    Layout.fillWidth: true
                    strong: true
                    text: clock.modelData
                }

                LevelBar {
                    Layout.fillWidth: true
                    label: clock.modelData
                    level: root.controller.clockLevels[clock.index] ?? -1
                    verdict: root.controller.clockVerdicts[clock.index] ?? ""
                }

                PlainText {
                    Layout.fillWidth: true
                    quiet: true
                    size: Theme.textSmall
                    text: root.controller.clockTexts[clock.index] ?? ""
                }
            }
        }
    }

    Card {
        Layout.fillWidth: true

        IconLine {
            iconName: "warning"
            text: qsTr("Cautions")
            bold: true
        }

        Repeater {
            model: root.controller.cautions

            PlainText {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
            }
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("The label and the safety data sheet come first, and the rules where you work.")
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("Signs that it has gone off: %1").arg(root.controller.spoilageSigns)
            visible: root.controller.spoilageSigns.length > 0
        }
    }
}
