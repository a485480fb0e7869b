pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Which recipe and how much; then what to weigh out of which container, the steps and the limits, and one tap to record
// that it was mixed.
Sheet {
    id: root

    objectName: "mixSheet"
    title: qsTr("Mix")

    onOpenedChanged: {
        if (root.opened)
            controller.look();
    }

    MixController {
        id: controller
        objectName: "mixController"
        services: AppServices
        onRecorded: root.close()
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: controller.recipe
        label: qsTr("Recipe")
        objectName: "mixRecipe"
        options: controller.recipes
        onPicked: index => controller.recipe = index
    }

    Field {
        Layout.fillWidth: true
        hint: qsTr("Ready to use: what the job takes and what stays in the pot.")
        inputMethodHints: Qt.ImhPreferNumbers
        label: qsTr("How much is to be ready")
        objectName: "mixNeed"
        suffix: controller.needUnit
        text: controller.need
        onEdited: text => controller.need = text
    }

    GlueUpTile {
        Layout.fillWidth: true
        condition: controller.room
        objectName: "mixRoom"
    }

    MixOptions {
        Layout.fillWidth: true
        controller: controller
    }

    MixPlanCard {
        Layout.fillWidth: true
        controller: controller
    }

    Field {
        Layout.fillWidth: true
        label: qsTr("Who mixes it")
        objectName: "mixWho"
        text: controller.who
        onEdited: text => controller.who = text
    }

    footer: [
        BigButton {
            Layout.fillWidth: true
            enabled: controller.canRecord
            iconName: "check"
            objectName: "mixedIt"
            text: qsTr("Mixed it")
            onClicked: controller.record()
        }
    ]
}
