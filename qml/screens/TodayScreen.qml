pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic as Basic
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What wants doing today, most pressing first, and how the whole shelf stands.
Item {
    id: root

    readonly property bool portrait: root.height > root.width

    TodayController {
        id: controller
        services: AppServices
    }

    ScreenHeader {
        id: header
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        subtitle: controller.day
        title: qsTr("Today")

        PlainButton {
            iconName: "scan"
            text: qsTr("Scan")
            onClicked: AppServices.navigation.scan()
        }
    }

    GridLayout {
        id: tallies
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: header.bottom
        anchors.topMargin: Theme.space3
        columnSpacing: Theme.space3
        columns: root.portrait ? 2 : 4
        rowSpacing: Theme.space3
        visible: controller.containers > 0

        Repeater {
            model: controller.verdicts

            VerdictTile {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                count: controller.counts[index]
                verdict: modelData
                onClicked: AppServices.navigation.showShelf(modelData)
            }
        }
    }

    PotsLine {
        id: pots
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: tallies.bottom
        anchors.topMargin: visible ? Theme.space3 : 0
        height: visible ? implicitHeight : 0
        objectName: "potsLine"
        visible: standing > 0
    }

    TonightCard {
        id: tonight
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: pots.bottom
        anchors.topMargin: Theme.space3
    }

    ListView {
        id: list
        Accessible.name: qsTr("What wants doing")
        Accessible.role: Accessible.List
        anchors.bottom: parent.bottom
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: tonight.visible ? tonight.bottom : pots.bottom
        anchors.topMargin: Theme.space4
        bottomMargin: 2 * Theme.space7
        boundsBehavior: Flickable.StopAtBounds
        clip: true
        model: controller.model
        spacing: Theme.space3
        visible: controller.model.count > 0

        Basic.ScrollBar.vertical: SlimScrollBar {}

        delegate: TodayRow {
            width: ListView.view.width
            onClicked: AppServices.navigation.openContainer(container)
        }
    }

    EmptyState {
        anchors.bottom: parent.bottom
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: tonight.visible ? tonight.bottom : controller.containers > 0 ? pots.bottom : header.bottom
        actionIcon: controller.containers > 0 ? "" : "scan"
        actionText: controller.containers > 0 ? "" : qsTr("Scan the first one")
        hint: controller.containers > 0 ? qsTr("Everything on the shelf is good for a month or more.") : qsTr("Scan a bottle's code, or book it in by hand under Arrivals.")
        iconName: controller.containers > 0 ? "check" : "shelf"
        text: controller.containers > 0 ? qsTr("Nothing wants doing today") : qsTr("Nothing stands on the shelf yet")
        visible: controller.loaded && controller.model.count === 0
        onActed: AppServices.navigation.scan()
    }

    Banner {
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: header.bottom
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }
}
