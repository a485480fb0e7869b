pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic as Basic
import Gluewright.Backend
import Gluewright.Ui

// Everything that stands on the shelf, as cards; worst verdict first.
Item {
    id: root

    ShelfController {
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
        subtitle: controller.loaded ? controller.summary : ""
        title: qsTr("Shelf")

        PlainButton {
            iconName: "scan"
            text: qsTr("Scan")
            onClicked: AppServices.navigation.scan()
        }
    }

    ShelfFilters {
        id: filters
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: header.bottom
        anchors.topMargin: Theme.space2
        controller: controller
        visible: controller.total > 0
    }

    GridView {
        id: grid

        readonly property int columns: Math.max(1, Math.floor(width / 262))

        Accessible.name: qsTr("Containers")
        Accessible.role: Accessible.List
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6 - Theme.space2
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6 - Theme.space2
        anchors.top: filters.bottom
        anchors.topMargin: Theme.space3
        bottomMargin: 2 * Theme.space7
        boundsBehavior: Flickable.StopAtBounds
        cacheBuffer: 600
        cellHeight: 302 + 2 * Theme.space2
        cellWidth: Math.floor(width / columns)
        clip: true
        keyNavigationEnabled: true
        model: controller.model
        reuseItems: true

        Basic.ScrollBar.vertical: SlimScrollBar {}
        Keys.onReturnPressed: (grid.currentItem as ShelfCell)?.open()

        delegate: ShelfCell {
            height: grid.cellHeight
            width: grid.cellWidth
        }
    }

    EmptyState {
        anchors.fill: grid
        actionIcon: controller.total > 0 ? "" : "scan"
        actionText: controller.total > 0 ? qsTr("Show all") : qsTr("Scan the first one")
        hint: controller.total > 0 ? "" : qsTr("Scan a bottle's code, or book it in by hand under Arrivals.")
        iconName: controller.total > 0 ? "search" : "shelf"
        text: controller.total > 0 ? qsTr("No container is like that") : qsTr("Nothing stands on the shelf yet")
        visible: controller.loaded && controller.model.count === 0
        onActed: controller.total > 0 ? controller.showAll() : AppServices.navigation.scan()
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
