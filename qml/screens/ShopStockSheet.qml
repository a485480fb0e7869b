import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A table of stock on its way in: choose it, see what it would do and what cannot be, watch it come in.
Sheet {
    id: root

    required property StockFileController controller

    readonly property bool choosing: root.controller.stage === StockFileController.Choosing
    readonly property bool looked: root.controller.stage === StockFileController.Looked
    readonly property bool running: root.controller.stage === StockFileController.Running
    readonly property bool done: root.controller.stage === StockFileController.Done

    function begin() {
        root.controller.reset();
        root.open();
    }

    objectName: "stockSheet"
    title: qsTr("Bring in a table of stock")

    FileDialog {
        id: inFile
        currentFolder: root.controller.folder
        nameFilters: [qsTr("Tables (*.csv *.txt *.tsv)"), qsTr("All files (*)")]
        title: qsTr("A table of stock")
        onAccepted: root.controller.look(inFile.selectedFile)
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        objectName: "stockFileError"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("One line for each container, the first line naming the columns. Only material and capacity are needed; what a line leaves empty stays unknown. You see what it would do before anything comes in.")
        visible: root.choosing
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: root.controller.columns
        visible: root.choosing
    }

    SectionTitle {
        Layout.fillWidth: true
        text: root.controller.fileName
        visible: root.controller.fileName.length > 0
    }

    Banner {
        Layout.fillWidth: true
        dismissable: false
        kind: root.controller.refused ? "error" : "info"
        objectName: "stockSaid"
        text: root.controller.said
        visible: root.controller.said.length > 0
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "stockProgress"
        strong: true
        text: qsTr("%1 of %2 lines are in. Leaving this page does not stop it.").arg(root.controller.done).arg(root.controller.lines)
        visible: root.running
    }

    StockNotes {
        Layout.fillWidth: true
        controller: root.controller
        visible: root.looked
    }

    footer: [
        PlainButton {
            Layout.fillWidth: true
            Layout.preferredHeight: Theme.touchMain
            enabled: !root.controller.busy
            iconName: "open"
            objectName: "anotherStockFile"
            text: qsTr("Another file")
            visible: root.looked
            onClicked: inFile.open()
        },
        BigButton {
            Layout.fillWidth: true
            busy: root.controller.busy
            enabled: !root.controller.busy && (!root.looked || root.controller.canStart)
            iconName: root.looked ? "import" : root.choosing ? "open" : "check"
            objectName: "stockNext"
            text: root.looked ? qsTr("Bring it in") : root.choosing ? qsTr("Choose the file") : qsTr("Done")
            onClicked: root.looked ? root.controller.start() : root.choosing ? inFile.open() : root.close()
        }
    ]
}
