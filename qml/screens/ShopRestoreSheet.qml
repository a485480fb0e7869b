import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What restoring will do, before it does it.
Sheet {
    id: root

    required property ShopSettingsBackupController controller

    objectName: "restoreSheet"
    title: qsTr("Restore a backup")

    Connections {
        function onRestored() {
            root.close();
        }

        target: root.controller
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        strong: true
        text: root.controller.candidate
        wrapMode: Text.WrapAnywhere
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Everything in the store is replaced by what is in this file, on every tablet that uses the store.")
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("What is there now is first written to a file of its own in %1, and can be put back from here.").arg(root.controller.folder)
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: root.controller.busy
        enabled: root.controller.candidate.length > 0 && !root.controller.busy
        iconName: "import"
        objectName: "restoreConfirm"
        text: qsTr("Restore it")
        onClicked: root.controller.restore()
    }
}
