pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What the answers rest on, the usual cautions, and the program itself.
Card {
    id: root

    property string engines
    property string version

    ShopSettingsSourcesController {
        id: controller
        services: AppServices
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("What the answers rest on")
    }

    ListRow {
        Layout.fillWidth: true
        iconName: "info"
        note: controller.summary.length > 0 ? controller.summary : qsTr("Counting…")
        objectName: "sourcesRow"
        title: qsTr("Where the figures come from")
        onClicked: sources.open()
    }

    ListRow {
        Layout.fillWidth: true
        iconName: "warning"
        note: qsTr("The label, the safety data sheet and local rules come first.")
        objectName: "cautionsRow"
        title: qsTr("Cautions")
        onClicked: cautions.open()
    }

    PlainText {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space2
        objectName: "aboutText"
        text: qsTr("Gluewright %1").arg(root.version)
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "enginesText"
        quiet: true
        size: Theme.textSmall
        text: qsTr("Reads symbols with %1.").arg(root.engines)
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: qsTr("Free software under the GNU General Public License, version 3 or any later one (GPL-3.0-or-later). It comes without any warranty.")
    }

    ShopSourcesSheet {
        id: sources
        controller: controller
    }

    ShopCautionsSheet {
        id: cautions
        controller: controller
    }
}
