pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Where the reference figures come from, source by source.
Sheet {
    id: root

    required property ShopSettingsSourcesController controller

    objectName: "sourcesSheet"
    title: qsTr("Where the figures come from")

    PlainText {
        Layout.fillWidth: true
        text: root.controller.summary
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("A figure on a label beats one from here. A container's page shows the figures it was judged by.")
    }

    Repeater {
        model: root.controller.sources

        ColumnLayout {
            id: source

            required property string title
            required property string note
            required property string figures

            Accessible.name: source.title
            Accessible.role: Accessible.ListItem
            Layout.fillWidth: true
            spacing: 2

            PlainText {
                Layout.fillWidth: true
                strong: true
                text: source.title
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: source.note
            }

            PlainText {
                Layout.fillWidth: true
                size: Theme.textSmall
                text: source.figures
                visible: source.figures.length > 0
            }
        }
    }
}
