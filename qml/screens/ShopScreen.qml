pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The shop itself: its places, how this device shows things, the store and its backups, and what the answers rest on.
ScreenPage {
    id: root

    subtitle: settings.shopName
    title: qsTr("Shop")

    ShopSettingsController {
        id: settings
        objectName: "shopSettingsController"
        services: AppServices
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space4
        columns: root.portrait ? 1 : 2
        rowSpacing: Theme.space4

        ColumnLayout {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            Layout.preferredWidth: 500
            spacing: Theme.space4

            ShopPlaces {
                Layout.fillWidth: true
            }

            ShopLooks {
                Layout.fillWidth: true
                controller: settings
            }

            ShopLabels {
                Layout.fillWidth: true
            }
        }

        ColumnLayout {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            Layout.preferredWidth: 500
            spacing: Theme.space4

            ShopStore {
                Layout.fillWidth: true
                controller: settings
            }

            ShopBackups {
                Layout.fillWidth: true
            }

            ShopStock {
                Layout.fillWidth: true
            }

            ShopAbout {
                Layout.fillWidth: true
                engines: settings.engines
                version: settings.version
            }
        }
    }
}
