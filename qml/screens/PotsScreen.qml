pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Everything that is mixed: each pot, cup and jar with its clocks, and what happens to it under the thumb.
ScreenPage {
    id: root

    canGoBack: true
    subtitle: controller.standing > 0 ? qsTr("%n thing(s) mixed", "", controller.standing) : ""
    title: qsTr("Pots and cups")

    actions: [
        BigButton {
            iconName: "add"
            objectName: "mixButton"
            text: qsTr("Mix")
            onClicked: mixSheet.open()
        }
    ]

    onBack: AppServices.navigation.back()

    PotsController {
        id: controller
        objectName: "potsController"
        services: AppServices
        onNoted: noteSheet.close()
    }

    PotNoteSheet {
        id: noteSheet
        controller: controller
    }

    MixSheet {
        id: mixSheet
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0 && !noteSheet.opened
        onDismissed: controller.clearError()
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space4
        columns: root.portrait ? 1 : 2
        rowSpacing: Theme.space4

        Repeater {
            model: controller.pots

            PotCard {
                id: pot

                required property string key
                required property string unit

                Layout.alignment: Qt.AlignTop
                Layout.fillWidth: true
                Layout.preferredWidth: 400
                objectName: "pot_" + pot.label
                onActed: (kind, text) => {
                    if (noteSheet.asks(kind))
                        noteSheet.begin(pot.key, kind, text, pot.unit);
                    else
                        controller.note(pot.key, kind);
                }
            }
        }
    }

    EmptyState {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space7
        actionIcon: "pot"
        actionText: qsTr("Mix something")
        hint: qsTr("A pot of hot glue, a cup of epoxy, a jar of shellac: mixed here, each keeps its own clocks.")
        iconName: "pot"
        objectName: "noPots"
        text: qsTr("Nothing is mixed")
        visible: controller.loaded && controller.pots.count === 0
        onActed: mixSheet.open()
    }
}
