pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Work planned with a date: the list counts on it, and takes only the rest as uncertain.
Sheet {
    id: root

    objectName: "plannedSheet"
    title: qsTr("Planned work")

    OrderPlannedController {
        id: controller
        objectName: "orderPlannedController"
        services: AppServices
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("Work with a day is counted on; of its kind only what you expect beyond it stays uncertain.")
    }

    Repeater {
        model: controller.rows

        RowLayout {
            id: row

            required property string key
            required property string note
            required property bool overdue
            required property string title
            required property string value

            Layout.fillWidth: true
            spacing: Theme.space3

            ColumnLayout {
                Layout.fillWidth: true
                spacing: 0

                PlainText {
                    Layout.fillWidth: true
                    strong: true
                    text: row.title
                }

                PlainText {
                    Layout.fillWidth: true
                    color: row.overdue ? Theme.testFirst : Theme.inkQuiet
                    size: Theme.textSmall
                    text: row.value + (row.note.length > 0 ? " · " + row.note : "") + (row.overdue ? " · " + qsTr("its day is over") : "")
                }
            }

            PlainButton {
                Layout.preferredHeight: 56
                iconName: "check"
                objectName: "done"
                text: qsTr("Done")
                onClicked: controller.done(row.key)
            }

            IconButton {
                Layout.preferredHeight: 56
                Layout.preferredWidth: 56
                iconName: "close"
                label: qsTr("%1: will not be done").arg(row.title)
                objectName: "drop"
                outlined: true
                onClicked: controller.drop(row.key)
            }
        }
    }

    SectionTitle {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space4
        text: qsTr("Plan more")
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: controller.jobType
        label: qsTr("Kind of work")
        objectName: "plannedJobType"
        options: controller.jobTypes
        required: true
        onPicked: index => controller.jobType = index
    }

    DateField {
        Layout.fillWidth: true
        label: qsTr("Day")
        objectName: "plannedDay"
        stepKind: 0
        text: controller.day
        today: controller.today
        unknownAllowed: false
        onEdited: text => controller.day = text
    }

    Stepper {
        Layout.fillWidth: true
        from: 1
        label: qsTr("How many")
        objectName: "plannedPieces"
        to: 1000
        value: controller.pieces
        onChanged: value => controller.pieces = value
    }

    Field {
        Layout.fillWidth: true
        label: qsTr("Piece")
        objectName: "plannedPiece"
        placeholder: qsTr("Oak chair, front leg")
        text: controller.piece
        onEdited: text => controller.piece = text
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: controller.busy
        enabled: controller.canAdd && !controller.busy
        iconName: "add"
        objectName: "planIt"
        text: qsTr("Plan it")
        onClicked: controller.add()
    }
}
