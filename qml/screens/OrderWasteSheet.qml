pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What goes off soon and what to use it on; what is past use and how such things are usually handled; what was
// thrown away this year and what it cost.
Sheet {
    id: root

    property url folder

    objectName: "wasteSheet"
    title: qsTr("Going off and waste")

    OrderWasteController {
        id: controller
        objectName: "orderWasteController"
        services: AppServices
    }

    FileDialog {
        id: calendarFile
        currentFolder: root.folder
        defaultSuffix: "ics"
        fileMode: FileDialog.SaveFile
        nameFilters: [qsTr("Calendars (*.ics)"), qsTr("All files (*)")]
        title: qsTr("Save the days as a calendar")
        onAccepted: controller.saveCalendar(calendarFile.selectedFile)
    }

    component WasteRow: ListRow {
        id: row

        required property string kind
        required note
        required title
        required value

        Layout.fillWidth: true
        arrow: false
        focusPolicy: Qt.NoFocus
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    SectionTitle {
        Layout.fillWidth: true
        note: controller.soonTotal.length > 0 ? qsTr("worth %1").arg(controller.soonTotal) : ""
        text: qsTr("Goes off in 60 days")
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("Nothing that is good now.")
        visible: controller.loaded && controller.soon.count === 0
    }

    Repeater {
        model: controller.soon

        WasteRow {}
    }

    SectionTitle {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space4
        text: qsTr("Past use, to be disposed of")
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: controller.past.count > 0 ? controller.caution : qsTr("Nothing on the shelf.")
        visible: controller.loaded
    }

    Repeater {
        model: controller.past

        ColumnLayout {
            id: past

            required property string kind
            required property string note
            required property string title
            required property string value

            Layout.fillWidth: true

            PlainText {
                Layout.fillWidth: true
                Layout.topMargin: Theme.space2
                text: past.title
                visible: past.kind === "group"
            }

            ListRow {
                Layout.fillWidth: true
                arrow: false
                focusPolicy: Qt.NoFocus
                note: past.note
                title: past.title
                value: past.value
                visible: past.kind !== "group"
            }
        }
    }

    SectionTitle {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space4
        text: qsTr("Thrown away this year")
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: controller.gone.count > 0 ? controller.goneTotal : qsTr("Nothing so far.")
        visible: controller.loaded && text.length > 0
    }

    Repeater {
        model: controller.gone

        WasteRow {}
    }

    footer: PlainButton {
        Layout.fillWidth: true
        Layout.preferredHeight: Theme.touchMain
        iconName: "calendar"
        objectName: "saveCalendar"
        text: qsTr("Save the days as a calendar")
        onClicked: calendarFile.open()
    }
}
