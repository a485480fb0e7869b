import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The camera, over whatever screen one is on; beside it a line for a code that cannot be read any other way.
Sheet {
    id: root

    property bool wanted: false

    title: qsTr("Scan")

    onClosed: {
        closing.stop();
        root.wanted = false;
        entry.clear();
    }
    onOpenedChanged: if (root.opened) root.wanted = true

    Connections {
        function onScanned() {
            // The camera's tick is seen before the sheet goes.
            if (root.opened)
                closing.start();
        }

        target: AppServices.scanner
    }

    Timer {
        id: closing
        interval: AppServices.scanner.camera.state === LabelCamera.Held ? 2 * Theme.move : 0
        onTriggered: root.close()
    }

    Viewfinder {
        objectName: "sheetViewfinder"
        Layout.fillWidth: true
        Layout.preferredHeight: width * 0.75
        wanted: root.wanted
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("Hold the code still, a hand's breadth away. A hand scanner works on every screen without this.")
    }

    CodeEntry {
        id: entry
        Layout.fillWidth: true
    }
}
