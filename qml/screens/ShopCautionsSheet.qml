pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The usual cautions, by the moment of the work they belong to.
Sheet {
    id: root

    required property ShopSettingsSourcesController controller

    objectName: "cautionsSheet"
    title: qsTr("Cautions")

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("The usual ones, gathered from common practice. They replace nothing: the label, the safety data sheet, local rules and people licensed for the work decide.")
    }

    Repeater {
        model: root.controller.cautions

        ColumnLayout {
            id: caution

            required property string moment
            required property string text
            required property string of
            required property bool first

            Accessible.name: caution.text
            Accessible.role: Accessible.ListItem
            Layout.fillWidth: true
            spacing: Theme.space1

            SectionTitle {
                Layout.fillWidth: true
                Layout.topMargin: Theme.space3
                text: caution.moment
                visible: caution.first
            }

            PlainText {
                Layout.fillWidth: true
                text: caution.text
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: caution.of
                visible: caution.of.length > 0
            }
        }
    }
}
