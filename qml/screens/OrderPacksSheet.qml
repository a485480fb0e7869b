pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The packs suppliers sell: all of them, or one of them to fill in.
Sheet {
    id: root

    property bool editing: false

    objectName: "packsSheet"
    title: !root.editing ? qsTr("Packs") : controller.isNew ? qsTr("Add a pack") : qsTr("Change a pack")

    onClosed: root.editing = false

    OrderPacksController {
        id: controller
        services: AppServices
        onSaved: root.editing = false
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: controller.packs.count > 0 ? qsTr("What suppliers sell, in which sizes. The list chooses among these.") : qsTr("No pack is known yet. The list can only offer what it knows: enter the sizes your suppliers sell.")
        visible: !root.editing
    }

    Repeater {
        model: controller.packs

        ListRow {
            id: pack

            required property string key
            required note
            required title
            required value

            Layout.fillWidth: true
            visible: !root.editing
            onClicked: {
                controller.draftOf(pack.key);
                root.editing = true;
            }
        }
    }

    OrderPackForm {
        Layout.fillWidth: true
        controller: controller
        visible: root.editing
    }

    footer: [
        PlainButton {
            Layout.fillWidth: true
            Layout.preferredHeight: Theme.touchMain
            text: qsTr("Back to the packs")
            visible: root.editing
            onClicked: root.editing = false
        },
        BigButton {
            Layout.fillWidth: true
            busy: controller.busy && root.editing
            enabled: controller.canSave && !controller.busy
            iconName: "check"
            objectName: "savePack"
            text: qsTr("Keep it")
            visible: root.editing
            onClicked: controller.save()
        },
        BigButton {
            Layout.fillWidth: true
            enabled: controller.materials.length > 0
            iconName: "add"
            objectName: "addPack"
            text: qsTr("Add a pack")
            visible: !root.editing
            onClicked: {
                controller.draftNew();
                root.editing = true;
            }
        }
    ]
}
