import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The store could not be opened: what is wrong, and what can be done.
Item {
    id: root

    TroubleController {
        id: controller
        services: AppServices
    }

    FileDialog {
        id: chooseFile
        nameFilters: [qsTr("Gluewright stores (*.gluewright)"), qsTr("All files (*)")]
        title: qsTr("Open another store")
        onAccepted: controller.openStore(chooseFile.selectedFile, false)
    }

    FileDialog {
        id: newFile
        defaultSuffix: "gluewright"
        fileMode: FileDialog.SaveFile
        nameFilters: [qsTr("Gluewright stores (*.gluewright)")]
        title: qsTr("Start a new store")
        onAccepted: controller.openStore(newFile.selectedFile, true)
    }

    ColumnLayout {
        anchors.centerIn: parent
        spacing: Theme.space4
        width: Math.min(640, root.width - 2 * Theme.space6)

        JointSign {
            Accessible.ignored: true
            Layout.alignment: Qt.AlignHCenter
            size: 128
            verdict: "do_not_use"
        }

        PlainText {
            Accessible.name: text
            Accessible.role: Accessible.Heading
            Layout.fillWidth: true
            horizontalAlignment: Text.AlignHCenter
            size: Theme.textScreen
            strong: true
            text: qsTr("The store cannot be opened")
        }

        PlainText {
            Layout.fillWidth: true
            horizontalAlignment: Text.AlignHCenter
            size: Theme.textStrong
            text: controller.trouble
        }

        PlainText {
            Layout.fillWidth: true
            horizontalAlignment: Text.AlignHCenter
            quiet: true
            text: controller.advice
        }

        BigButton {
            Layout.fillWidth: true
            Layout.topMargin: Theme.space4
            iconName: "check"
            text: qsTr("Try again")
            visible: controller.retryHelps
            onClicked: controller.retry()
        }

        PlainButton {
            Layout.fillWidth: true
            iconName: "open"
            text: qsTr("Open another store")
            onClicked: chooseFile.open()
        }

        PlainButton {
            Layout.fillWidth: true
            iconName: "add"
            text: qsTr("Start a new store")
            onClicked: newFile.open()
        }

        PlainButton {
            Layout.fillWidth: true
            flat: true
            iconName: "close"
            text: qsTr("Quit")
            onClicked: Qt.quit()
        }
    }
}
