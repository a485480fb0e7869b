import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Where backups go, when the last one was, one now, and putting one back.
Card {
    id: root

    ShopSettingsBackupController {
        id: controller
        objectName: "shopBackupController"
        services: AppServices
    }

    FolderDialog {
        id: folderDialog
        currentFolder: controller.folderUrl
        title: qsTr("Folder for backups")
        onAccepted: controller.chooseFolder(folderDialog.selectedFolder)
    }

    FileDialog {
        id: fileDialog
        currentFolder: controller.folderUrl
        nameFilters: [qsTr("Backups (*.backup)"), qsTr("All files (*)")]
        title: qsTr("Restore a backup")
        onAccepted: {
            controller.propose(fileDialog.selectedFile);
            restoreSheet.open();
        }
    }

    ShopRestoreSheet {
        id: restoreSheet
        controller: controller
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Backups")
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0 && !restoreSheet.opened
        onDismissed: controller.clearError()
    }

    Banner {
        Layout.fillWidth: true
        actionText: qsTr("Put it back")
        dismissable: false
        hint: qsTr("What was there before is in %1").arg(controller.kept)
        kind: "info"
        objectName: "restoredBanner"
        text: controller.restoredText
        visible: controller.kept.length > 0
        onActed: controller.putBack()
    }

    NumberLine {
        Layout.fillWidth: true
        label: qsTr("Last backup")
        objectName: "lastBackup"
        value: controller.last.length > 0 ? controller.last : qsTr("None yet")
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "backupFolder"
        text: controller.folder
        wrapMode: Text.WrapAnywhere
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: qsTr("One is written on every day the shop is used; the last fourteen are kept. Choose a folder on another disk or a stick: a copy beside the store goes with it when the machine does.")
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space2

        PlainButton {
            enabled: !controller.busy
            iconName: "save"
            objectName: "backupButton"
            text: qsTr("Back up now")
            onClicked: controller.backUpNow()
        }

        PlainButton {
            iconName: "open"
            objectName: "folderButton"
            text: qsTr("Choose the folder")
            onClicked: folderDialog.open()
        }

        PlainButton {
            iconName: "undo"
            text: qsTr("Usual folder")
            visible: controller.chosen
            onClicked: controller.useUsualFolder()
        }

        PlainButton {
            iconName: "import"
            objectName: "restoreButton"
            text: qsTr("Restore a backup")
            onClicked: fileDialog.open()
        }
    }
}
