import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Stock as a table for other programs: taken out whole, or brought in after a look.
Card {
    id: root

    StockFileController {
        id: controller
        objectName: "stockFileController"
        services: AppServices
    }

    FileDialog {
        id: outFile
        currentFolder: controller.folder
        defaultSuffix: "csv"
        fileMode: FileDialog.SaveFile
        nameFilters: [qsTr("Tables (*.csv)"), qsTr("All files (*)")]
        title: qsTr("Take out the stock")
        onAccepted: controller.takeOut(outFile.selectedFile)
    }

    ShopStockSheet {
        id: inSheet
        controller: controller
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Stock as a table")
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0 && !inSheet.opened
        onDismissed: controller.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("A CSV file with one line for each container on the shelf. It is no backup: readings, jobs and what happened to each container are not in it.")
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space2

        PlainButton {
            enabled: !controller.busy
            iconName: "export"
            objectName: "takeOutStock"
            text: qsTr("Take it out")
            onClicked: {
                outFile.selectedFile = controller.suggestedFile;
                outFile.open();
            }
        }

        PlainButton {
            iconName: "import"
            objectName: "bringInStock"
            text: qsTr("Bring one in")
            onClicked: inSheet.begin()
        }
    }
}
