import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// For which month the list is, and how often it should be enough.
GridLayout {
    id: root

    required property OrderController controller

    columnSpacing: Theme.space5
    columns: root.width > 900 ? 2 : 1
    rowSpacing: Theme.space2

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space2

        IconButton {
            Layout.preferredHeight: Theme.touchMain
            Layout.preferredWidth: Theme.touchMain
            enabled: root.controller.canGoBack
            iconName: "back"
            label: qsTr("A month earlier")
            objectName: "monthBack"
            outlined: true
            onClicked: root.controller.stepMonth(-1)
        }

        PlainText {
            Accessible.name: qsTr("Month: %1").arg(text)
            Accessible.role: Accessible.StaticText
            Layout.fillWidth: true
            Layout.maximumWidth: 320
            horizontalAlignment: Text.AlignHCenter
            objectName: "monthText"
            size: Theme.textTitle
            strong: true
            text: root.controller.month
        }

        IconButton {
            Layout.preferredHeight: Theme.touchMain
            Layout.preferredWidth: Theme.touchMain
            enabled: root.controller.canGoOn
            iconName: "next"
            label: qsTr("A month later")
            objectName: "monthOn"
            outlined: true
            onClicked: root.controller.stepMonth(1)
        }
    }

    RowLayout {
        Layout.alignment: Qt.AlignRight
        Layout.fillWidth: root.columns === 1
        spacing: Theme.space3

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: root.columns === 1
            quiet: true
            text: qsTr("How sure to have enough")
        }

        Segmented {
            Layout.preferredHeight: Theme.touchMain
            currentIndex: root.controller.service
            label: qsTr("How sure to have enough")
            objectName: "serviceChoice"
            options: root.controller.serviceLevels
            onPicked: index => root.controller.service = index
        }
    }
}
