import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// How this device shows things; another tablet on the same store may show them otherwise.
Card {
    id: root

    required property ShopSettingsController controller

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("This device")
    }

    PlainText {
        Accessible.ignored: true
        Layout.fillWidth: true
        size: Theme.textSmall
        strong: true
        text: qsTr("Light or dark")
    }

    Segmented {
        Layout.fillWidth: true
        Layout.preferredHeight: 56
        currentIndex: root.controller.theme
        label: qsTr("Light or dark")
        objectName: "themeChoice"
        options: root.controller.themes
        onPicked: index => root.controller.theme = index
    }

    PlainText {
        Accessible.ignored: true
        Layout.fillWidth: true
        Layout.topMargin: Theme.space2
        size: Theme.textSmall
        strong: true
        text: qsTr("Units")
    }

    Segmented {
        Layout.fillWidth: true
        Layout.preferredHeight: 56
        currentIndex: root.controller.unitSystem
        label: qsTr("Units")
        objectName: "unitsChoice"
        options: root.controller.unitSystems
        onPicked: index => root.controller.unitSystem = index
    }

    ToggleRow {
        Layout.fillWidth: true
        checked: AppServices.settings.sound
        note: qsTr("When the camera has read a code")
        objectName: "soundChoice"
        text: qsTr("A tick to hear")
        onToggled: AppServices.settings.sound = checked
    }

    ToggleRow {
        Layout.fillWidth: true
        checked: AppServices.settings.bell
        note: qsTr("When a pot, a cup or a joint is due")
        objectName: "bellChoice"
        text: qsTr("A bell to hear")
        onToggled: AppServices.settings.bell = checked
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: qsTr("Only what is shown changes; the store keeps grams, millilitres and degrees Celsius.")
    }
}
