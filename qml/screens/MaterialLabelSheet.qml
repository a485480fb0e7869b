import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What the label says of a material the shop buys, read again: it counts for every container of it from now on.
Sheet {
    id: root

    required property string container

    function begin() {
        controller.read();
        root.open();
    }

    objectName: "materialLabelSheet"
    title: qsTr("What its label says")

    MaterialLabelController {
        id: controller
        container: root.container
        objectName: "materialLabelController"
        services: AppServices
        onSaved: root.close()
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        objectName: "materialLabelError"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("It counts for every container of %1. What you leave out, the figures usual for its kind of stuff stand for.").arg(controller.name)
        visible: controller.loaded
    }

    PartnerChoice {
        Layout.fillWidth: true
        says: controller.says
    }

    LabelSaysForm {
        Layout.fillWidth: true
        says: controller.says
        visible: controller.loaded
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: controller.busy
        enabled: controller.loaded && !controller.busy
        iconName: "check"
        objectName: "saveMaterialLabel"
        text: qsTr("Keep it")
        onClicked: controller.save()
    }
}
