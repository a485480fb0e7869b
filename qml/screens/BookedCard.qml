pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// It is on the shelf: the code to write on the bottle, as large as it can be read across the bench.
Card {
    id: root

    required property ArrivalController controller

    edge: Theme.good
    wash: Theme.goodWash

    LabelSheet {
        id: labelSheet
    }

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space3

        Icon {
            color: Theme.good
            name: "check"
            size: 36
        }

        PlainText {
            Layout.fillWidth: true
            size: Theme.textStrong
            strong: true
            text: root.controller.booked
        }
    }

    PlainText {
        Layout.fillWidth: true
        text: root.controller.labels.length > 1 ? qsTr("Write one of these on each, or print labels:") : qsTr("Write this on it, or print its label:")
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space3

        Repeater {
            model: root.controller.labels

            Rectangle {
                id: tag

                required property string modelData

                border.color: Theme.edge
                border.width: 2
                color: Theme.sunken
                implicitHeight: code.implicitHeight + 2 * Theme.space2
                implicitWidth: code.implicitWidth + 2 * Theme.space4
                radius: Theme.radiusSmall

                Figures {
                    id: code
                    anchors.centerIn: parent
                    objectName: "newLabel"
                    size: root.controller.labels.length > 1 ? Theme.textTitle : Theme.textBig
                    strong: true
                    text: tag.modelData
                }
            }
        }
    }

    VerdictBadge {
        Layout.fillWidth: true
        note: root.controller.reason
        verdict: root.controller.verdict
        visible: root.controller.verdict.length > 0
    }

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space3

        PlainButton {
            objectName: "labelBooked"
            iconName: "label"
            text: root.controller.labels.length > 1 ? qsTr("Print labels") : qsTr("Print its label")
            onClicked: labelSheet.show(root.controller.labels)
        }

        PlainButton {
            objectName: "openBooked"
            iconName: "open"
            text: qsTr("Open it")
            visible: root.controller.labels.length === 1
            onClicked: AppServices.navigation.openContainer(root.controller.labels[0])
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("Ready for the next one.")
        }
    }
}
