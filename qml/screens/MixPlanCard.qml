pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What to weigh and from where, what to do in which order, and what to keep to.
ColumnLayout {
    id: root

    required property MixController controller

    spacing: Theme.space4

    Banner {
        Layout.fillWidth: true
        dismissable: false
        kind: "warning"
        objectName: "mixProblem"
        text: root.controller.problem
        visible: root.controller.problem.length > 0
    }

    Card {
        Layout.fillWidth: true
        padding: Theme.space4
        visible: root.controller.parts.count > 0

        SectionTitle {
            Layout.fillWidth: true
            text: root.controller.name
        }

        Repeater {
            model: root.controller.parts

            PartLine {}
        }
    }

    Repeater {
        model: root.controller.warnings

        Banner {
            required property string modelData

            Layout.fillWidth: true
            dismissable: false
            kind: "warning"
            text: modelData
        }
    }

    Lines {
        numbered: true
        texts: root.controller.steps
        title: qsTr("In this order")
    }

    Lines {
        texts: root.controller.limits
        title: qsTr("Keep to")
    }

    Lines {
        texts: root.controller.cautions
        title: qsTr("Take care")
    }

    component PartLine: RowLayout {
        id: part

        required property string what
        required property string amount
        required property string from
        required property string result

        Layout.fillWidth: true
        spacing: Theme.space3

        JointSign {
            Accessible.ignored: true
            size: 32
            verdict: Theme.gateVerdict(part.result)
            visible: part.from.length > 0
        }

        NumberLine {
            Layout.fillWidth: true
            label: part.what
            note: part.from
            strong: true
            value: part.amount
        }
    }

    component Lines: Card {
        id: lines

        property list<string> texts
        property string title
        property bool numbered: false

        Layout.fillWidth: true
        padding: Theme.space4
        visible: lines.texts.length > 0

        SectionTitle {
            Layout.fillWidth: true
            text: lines.title
        }

        Repeater {
            model: lines.texts

            PlainText {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                text: lines.numbered ? qsTr("%1. %2").arg(index + 1).arg(modelData) : modelData
            }
        }
    }
}
