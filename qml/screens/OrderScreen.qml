import QtQuick
import QtQuick.Dialogs
import Gluewright.Backend
import Gluewright.Ui

// What to buy for a month, by supplier, each line with its reason; at the foot what it comes to and the way out.
Item {
    id: root

    readonly property real footHeight: foot.height

    OrderController {
        id: controller
        objectName: "orderController"
        active: root.visible
        services: AppServices
    }

    FileDialog {
        id: csvFile
        currentFolder: controller.folder
        defaultSuffix: "csv"
        fileMode: FileDialog.SaveFile
        nameFilters: [qsTr("Tables (*.csv)"), qsTr("All files (*)")]
        title: qsTr("Save the order list")
        onAccepted: controller.saveCsv(csvFile.selectedFile)
    }

    OrderRatesSheet {
        id: ratesSheet
    }

    OrderPacksSheet {
        id: packsSheet
    }

    FileDialog {
        id: pagesFile
        currentFolder: controller.folder
        defaultSuffix: "pdf"
        fileMode: FileDialog.SaveFile
        nameFilters: [qsTr("Pages (*.pdf)"), qsTr("All files (*)")]
        title: qsTr("Save the order list")
        onAccepted: controller.savePages(pagesFile.selectedFile)
    }

    OrderKeptSheet {
        id: keptSheet
    }

    OrderPlannedSheet {
        id: plannedSheet
    }

    OrderWhatIfSheet {
        id: whatIfSheet
        controller: controller
    }

    OrderWasteSheet {
        id: wasteSheet
        folder: controller.folder
    }

    ScreenHeader {
        id: header
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        subtitle: controller.summary
        title: qsTr("Order")

        PlainButton {
            iconName: "calendar"
            objectName: "ratesButton"
            text: qsTr("Work a month")
            onClicked: ratesSheet.open()
        }

        PlainButton {
            iconName: "bottle"
            objectName: "packsButton"
            text: qsTr("Packs")
            onClicked: packsSheet.open()
        }
    }

    Flow {
        id: beside
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: header.bottom
        spacing: Theme.space3

        PlainButton {
            iconName: "order"
            objectName: "keptButton"
            text: qsTr("Order lists")
            onClicked: keptSheet.open()
        }

        PlainButton {
            iconName: "piece"
            objectName: "plannedButton"
            text: qsTr("Planned work")
            onClicked: plannedSheet.open()
        }

        PlainButton {
            iconName: "more"
            objectName: "whatIfButton"
            text: controller.whatIf.length > 0 ? qsTr("What if: %1").arg(controller.whatIf) : qsTr("What if")
            width: Math.min(implicitWidth, beside.width)
            onClicked: whatIfSheet.open()
        }

        PlainButton {
            iconName: "undo"
            objectName: "supposeNothing"
            text: qsTr("As it is")
            visible: controller.whatIf.length > 0
            onClicked: controller.supposeNothing()
        }

        PlainButton {
            iconName: "retire"
            objectName: "wasteButton"
            text: qsTr("Going off and waste")
            onClicked: wasteSheet.open()
        }
    }

    OrderAsked {
        id: asked
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: beside.bottom
        anchors.topMargin: Theme.space3
        controller: controller
    }

    OrderList {
        anchors.bottom: foot.top
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: asked.bottom
        anchors.topMargin: Theme.space2
        model: controller.lines
        notes: controller.notes
        objectName: "orderList"
    }

    EmptyState {
        anchors.bottom: foot.top
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: asked.bottom
        actionIcon: "calendar"
        actionText: qsTr("Work a month")
        hint: controller.workExpected ? qsTr("What is on the shelf covers the work expected and what else is used. Say how much work comes in a month if that has changed.") : qsTr("The list is worked out from how much work of each kind comes in a month, and from what is used. Nobody has said yet how much comes.")
        iconName: "order"
        text: controller.workExpected ? qsTr("Nothing wants buying for %1").arg(controller.month) : qsTr("What is needed is not known yet")
        visible: controller.loaded && controller.lines.count === 0 && controller.notes.length === 0 && controller.errorText.length === 0
        onActed: ratesSheet.open()
    }

    Banner {
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: asked.bottom
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    OrderFoot {
        id: foot
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.right: parent.right
        controller: controller
        onPagesWanted: {
            pagesFile.selectedFile = controller.suggestedPages;
            pagesFile.open();
        }
        onSaveWanted: {
            csvFile.selectedFile = controller.suggestedFile;
            csvFile.open();
        }
    }
}
