import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// On Today and under Glue-up: how much is mixed and what is due next. It leads to the pots.
ListRow {
    id: root

    readonly property int standing: controller.standing

    Accessible.name: qsTr("%1. %2").arg(root.title).arg(root.note)
    iconName: "pot"
    note: controller.next
    title: controller.standing > 0 ? qsTr("%n thing(s) mixed", "", controller.standing) : qsTr("Nothing is mixed")
    onClicked: AppServices.navigation.openPots()

    PotsController {
        id: controller
        services: AppServices
    }
}
