import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// The one window: the rail, the present screen, and over everything what was just done.
Window {
    id: root

    readonly property bool portrait: root.height > root.width
    // Of the screen it opens on, which may be smaller than the window would like.
    readonly property bool upright: Screen.desktopAvailableHeight > Screen.desktopAvailableWidth
    readonly property Navigation navigation: AppServices.navigation

    color: Theme.paper
    height: Math.min(root.upright ? 1280 : 800, Screen.desktopAvailableHeight)
    minimumHeight: 560
    minimumWidth: 480
    title: qsTr("Gluewright")
    visible: true
    width: Math.min(1280, Screen.desktopAvailableWidth)

    WindowController {
        id: window
        services: AppServices
    }

    PotAlarms {
        id: alarms
        objectName: "potAlarms"
        services: AppServices
    }

    Binding {
        property: "dark"
        target: Theme
        value: AppServices.settings.dark
    }

    Connections {
        function onSaid(text: string, undoKey: string) {
            undoBar.show(text, undoKey);
        }

        target: AppServices
    }

    Connections {
        function onScanWanted() {
            scanSheet.active = true;
            (scanSheet.item as ScanSheet).open();
        }

        target: root.navigation
    }

    Shortcut {
        sequences: ["Escape", "Alt+Left", "Back"]
        onActivated: root.navigation.back()
    }

    Rail {
        id: rail
        attention: window.attention
        current: root.navigation.destination
        height: root.portrait ? implicitHeight : root.height
        portrait: root.portrait
        visible: window.state === WindowController.Ready
        width: root.portrait ? root.width : implicitWidth
        y: root.portrait ? root.height - height : 0
        onPicked: index => root.navigation.goTo(index)
    }

    Item {
        id: page
        height: root.height - (root.portrait && rail.visible ? rail.height : 0)
        width: root.width - x
        x: root.portrait || !rail.visible ? 0 : rail.width

        Banner {
            id: backupBanner
            anchors.left: parent.left
            anchors.margins: visible ? Theme.space4 : 0
            anchors.right: parent.right
            anchors.top: parent.top
            height: visible ? implicitHeight : 0
            hint: qsTr("The shop works on; choose a folder for backups under Shop.")
            kind: "warning"
            text: window.backupTrouble
            visible: window.backupTrouble.length > 0
            onDismissed: window.dismissBackupTrouble()
        }

        Banner {
            id: potsBanner
            actionText: qsTr("Show")
            anchors.left: parent.left
            anchors.margins: visible ? Theme.space4 : 0
            anchors.right: parent.right
            anchors.top: backupBanner.bottom
            height: visible ? implicitHeight : 0
            hint: alarms.more > 0 ? qsTr("%n more", "", alarms.more) : ""
            kind: "warning"
            objectName: "potsBanner"
            text: alarms.text
            visible: alarms.text.length > 0 && window.state === WindowController.Ready
            onActed: root.navigation.openPots()
            onDismissed: alarms.putAway()
        }

        ScreenHost {
            id: host
            anchors.bottom: parent.bottom
            anchors.left: parent.left
            anchors.right: parent.right
            anchors.top: potsBanner.bottom
            windowState: window.state
        }
    }

    UndoBar {
        id: undoBar
        anchors.bottom: page.bottom
        anchors.bottomMargin: Theme.space4 + host.footHeight
        anchors.horizontalCenter: page.horizontalCenter
        parent: page
        width: Math.min(760, page.width - 2 * Theme.space4)
        z: 1
        onUndo: key => AppServices.undo(key)
    }

    Loader {
        id: scanSheet
        active: false
        sourceComponent: ScanSheet {}
    }
}
