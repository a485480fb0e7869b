pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Before a glue-up: what is asked at the top, the answer under it, what to use and how long it takes beside it. At the
// foot, always under the thumb, the act that books it out.
Item {
    id: root

    readonly property bool portrait: root.height > root.width
    readonly property real footHeight: foot.height
    readonly property bool asked: controller.jobType.length > 0

    GlueUpController {
        id: controller
        objectName: "glueUpController"
        active: root.visible
        services: AppServices
    }

    GlueUpJobButton {
        id: job
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: pots.left
        anchors.rightMargin: Theme.space3
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        objectName: "jobTypePicker"
        name: controller.jobName
        note: controller.jobNote
        onClicked: jobList.open()
    }

    PlainButton {
        id: pots
        anchors.bottom: job.bottom
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.top: job.top
        iconName: "pot"
        objectName: "potsButton"
        text: qsTr("Mix, pots")
        onClicked: AppServices.navigation.openPots()
    }

    GlueUpJobList {
        id: jobList
        controller: controller
    }

    GlueUpMoreSheet {
        id: moreSheet
        controller: controller
    }

    GlueUpGluesSheet {
        id: gluesSheet
        controller: controller
    }

    GlueUpConditions {
        id: conditions
        anchors.left: job.left
        anchors.right: pots.right
        anchors.top: job.bottom
        anchors.topMargin: Theme.space2
        columns: root.portrait ? 3 : 6
        controller: controller
        visible: root.asked
        onGluesWanted: gluesSheet.open()
        onMoreWanted: moreSheet.open()
    }

    ScrollColumn {
        id: scroll
        anchors.bottom: foot.top
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: conditions.bottom
        objectName: "glueUpScroll"
        visible: root.asked

        Banner {
            Layout.fillWidth: true
            kind: "error"
            text: controller.errorText
            visible: controller.errorText.length > 0
            onDismissed: controller.clearError()
        }

        GridLayout {
            Layout.fillWidth: true
            columnSpacing: Theme.space5
            columns: root.portrait ? 1 : 2
            rowSpacing: Theme.space4
            visible: controller.answer.length > 0

            GlueUpGates {
                Layout.alignment: Qt.AlignTop
                Layout.fillWidth: true
                controller: controller
                onSayWanted: gate => conditions.focusOn(gate)
            }

            GlueUpSide {
                Layout.alignment: Qt.AlignTop
                Layout.fillWidth: true
                Layout.maximumWidth: root.portrait ? 10000 : 384
                Layout.minimumWidth: root.portrait ? 0 : 384
                controller: controller
            }
        }
    }

    GlueUpRecordBar {
        id: foot
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.right: parent.right
        controller: controller
        height: root.asked ? implicitHeight : 0
        visible: root.asked
    }

    EmptyState {
        anchors.bottom: parent.bottom
        anchors.left: job.left
        anchors.right: pots.right
        anchors.top: job.bottom
        actionIcon: "glue-up"
        actionText: qsTr("Choose the work")
        hint: qsTr("Say what is to be glued; the answer comes at once, with the first thing to fix.")
        iconName: "glue-up"
        text: qsTr("What is to be glued?")
        visible: !root.asked
        onActed: jobList.open()
    }
}
