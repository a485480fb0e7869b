pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The one big answer with the first thing to fix, and under it every condition that was looked at.
ColumnLayout {
    id: root

    required property GlueUpController controller

    signal sayWanted(gate: string)

    // What can be done about a gate from here: say what is not known, or look at the stock it speaks of.
    function actionOf(gate: string, result: string): string {
        switch (gate) {
        case "air": return result === "unknown" && !root.controller.air.said ? qsTr("Say") : "";
        case "wood": return result === "unknown" && !root.controller.wood.said ? qsTr("Say") : "";
        case "humidity": return result === "unknown" && !root.controller.humidity.said ? qsTr("Say") : "";
        case "moisture": return result === "unknown" && !root.controller.woodMoisture.said ? qsTr("Say") : "";
        case "gap": return result === "unknown" && !root.controller.gap.said ? qsTr("Say") : "";
        case "age": return result === "unknown" || result === "stop" ? qsTr("Shelf") : "";
        case "amount": return result === "stop" ? qsTr("Order") : "";
        default: return "";
        }
    }

    function act(gate: string) {
        if (gate === "age")
            AppServices.navigation.goTo(Navigation.Shelf);
        else if (gate === "amount")
            AppServices.navigation.goTo(Navigation.Order);
        else
            root.sayWanted(gate);
    }

    spacing: Theme.space2

    Card {
        Layout.bottomMargin: Theme.space2
        Layout.fillWidth: true
        edge: Theme.verdictColor(root.controller.verdict)
        objectName: "answerCard"
        wash: Theme.verdictWash(root.controller.verdict)

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.space5

            JointSign {
                Accessible.ignored: true
                Layout.alignment: Qt.AlignTop
                size: 88
                verdict: root.controller.verdict
            }

            ColumnLayout {
                Layout.alignment: Qt.AlignVCenter
                Layout.fillWidth: true
                spacing: Theme.space1

                PlainText {
                    Accessible.name: text
                    Accessible.role: Accessible.Heading
                    Layout.fillWidth: true
                    color: Theme.verdictColor(root.controller.verdict)
                    font.weight: Font.Bold
                    objectName: "answerText"
                    size: Theme.textScreen
                    text: root.controller.answer
                }

                PlainText {
                    Accessible.name: text
                    Accessible.role: Accessible.StaticText
                    Layout.fillWidth: true
                    objectName: "firstFixText"
                    size: Theme.textStrong
                    text: root.controller.firstFix
                }
            }
        }
    }

    ColumnLayout {
        Accessible.name: qsTr("What was looked at")
        Accessible.role: Accessible.List
        Layout.fillWidth: true
        objectName: "gateList"
        spacing: Theme.space2

        Repeater {
            model: root.controller.gates

            GateRow {
                id: gate

                required property string key
                required name
                required result
                required sentence

                Layout.fillWidth: true
                actionText: root.actionOf(gate.key, gate.result)
                nameWidth: 170
                objectName: "gate_" + gate.key
                onActed: root.act(gate.key)
            }
        }
    }
}
