pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What it is: the vessel filled to what is left, the amount, and the facts one asks for.
Card {
    id: root

    required property ContainerController controller

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space5

        Vessel {
            Layout.alignment: Qt.AlignTop
            Layout.preferredHeight: 168
            Layout.preferredWidth: 112
            contents: Theme.contentsColor(root.controller.contents)
            dimmed: root.controller.verdict === "do_not_use"
            level: root.controller.level
            shape: root.controller.shape
        }

        ColumnLayout {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            spacing: Theme.space1

            PlainText {
                Layout.fillWidth: true
                font.weight: Font.Bold
                objectName: "amountLeft"
                size: Theme.textScreen
                text: root.controller.amountLeft
            }

            PlainText {
                Layout.bottomMargin: Theme.space2
                Layout.fillWidth: true
                quiet: true
                text: root.controller.capacity
            }

            Repeater {
                model: root.controller.factNames

                RowLayout {
                    id: fact

                    required property int index
                    required property string modelData

                    Accessible.name: qsTr("%1: %2").arg(fact.modelData).arg(value.text)
                    Accessible.role: Accessible.StaticText
                    Layout.fillWidth: true
                    spacing: Theme.space3

                    PlainText {
                        Accessible.ignored: true
                        Layout.alignment: Qt.AlignTop
                        Layout.preferredWidth: 120
                        quiet: true
                        text: fact.modelData
                    }

                    PlainText {
                        id: value
                        Accessible.ignored: true
                        Layout.fillWidth: true
                        text: root.controller.factValues[fact.index] ?? ""
                    }
                }
            }
        }
    }
}
