pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The places stock stands in, with the temperatures assumed of them.
Card {
    id: root

    ShopSettingsPlacesController {
        id: controller
        objectName: "shopPlacesController"
        services: AppServices
    }

    ShopPlaceSheet {
        id: sheet
        controller: controller
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Places")
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: qsTr("Each range is an assumption: how cold and how warm the place is taken to get over a year. It stands in wherever no reading was taken, and what it allows counts as though it may have happened.")
    }

    ColumnLayout {
        Accessible.name: qsTr("Places")
        Accessible.role: Accessible.List
        Layout.fillWidth: true
        objectName: "placeList"
        spacing: Theme.space2

        Repeater {
            model: controller.places

            ListRow {
                required property string key
                required property string name
                required property string range

                Layout.fillWidth: true
                iconName: "thermometer"
                note: range
                title: name
                onClicked: AppServices.navigation.openPlace(key)
            }
        }
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("There is no place yet. Stock without a place has an unknown past.")
        visible: controller.loaded && controller.places.count === 0
    }

    PlainButton {
        iconName: "add"
        objectName: "addPlaceButton"
        text: qsTr("Another place")
        onClicked: {
            controller.draftNew();
            sheet.open();
        }
    }
}
