pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One batch: what it is and may still be used for, its clocks, and what can be noted of it.
Card {
    id: root

    required label
    required property string name
    required property string verdict
    required property string amount
    required property string standing
    required property string words
    required property string heat
    required property string band
    required property list<string> due
    required property list<string> joints
    required property string parts
    required property list<string> acts
    required property list<string> actTexts
    required property real level
    required property string contents
    required property bool gone

    signal acted(kind: string, text: string)

    opacity: root.gone ? 0.8 : 1

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space4

        Vessel {
            Accessible.ignored: true
            Layout.preferredHeight: 96
            Layout.preferredWidth: 64
            contents: Theme.contentsColor(root.contents)
            level: root.level
            shape: "jar"
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 2

            PlainText {
                Accessible.name: text
                Accessible.role: Accessible.Heading
                Layout.fillWidth: true
                size: Theme.textTitle
                strong: true
                text: root.name
            }

            PlainText {
                Layout.fillWidth: true
                strong: true
                text: root.standing
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: qsTr("%1 · %2 left").arg(root.label).arg(root.amount)
            }
        }
    }

    VerdictBadge {
        Layout.fillWidth: true
        note: root.words
        verdict: root.verdict
        visible: !root.gone
    }

    PlainText {
        Layout.fillWidth: true
        color: Theme.verdictColor(root.band)
        strong: true
        text: root.heat
        visible: root.heat.length > 0
    }

    Repeater {
        model: root.due

        ClockLine {}
    }

    Repeater {
        model: root.joints

        ClockLine {
            iconName: "glue-up"
        }
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: root.parts
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space2
        visible: root.acts.length > 0

        Repeater {
            model: root.acts

            PlainButton {
                required property int index
                required property string modelData

                height: Theme.touchMain
                objectName: "act_" + modelData
                text: root.actTexts[index] ?? ""
                onClicked: root.acted(modelData, text)
            }
        }
    }

    component ClockLine: RowLayout {
        id: line

        required property string modelData
        property string iconName: "clock"

        Layout.fillWidth: true
        spacing: Theme.space3

        Icon {
            Layout.alignment: Qt.AlignTop
            color: Theme.inkQuiet
            name: line.iconName
            size: 24
        }

        PlainText {
            Layout.fillWidth: true
            text: line.modelData
        }
    }
}
