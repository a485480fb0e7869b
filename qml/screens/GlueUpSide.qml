pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Beside the answer: what to take from the shelf, what to weigh, how long it takes, and how it comes apart again.
ColumnLayout {
    id: root

    required property GlueUpController controller

    spacing: Theme.space3

    Card {
        Layout.fillWidth: true
        padding: Theme.space4
        visible: root.controller.uses.count > 0

        SectionTitle {
            Layout.fillWidth: true
            text: qsTr("Use")
        }

        ColumnLayout {
            Accessible.name: qsTr("Containers to use")
            Accessible.role: Accessible.List
            Layout.fillWidth: true
            objectName: "useList"
            spacing: Theme.space1

            Repeater {
                model: root.controller.uses

                GlueUpUseRow {
                    required property string key
                    required property bool mixed

                    Layout.fillWidth: true
                    onClicked: mixed ? AppServices.navigation.openPots() : AppServices.navigation.openContainer(key)
                }
            }
        }
    }

    GlueUpNumbers {
        Layout.fillWidth: true
        model: root.controller.weigh
        numbersName: "weighList"
        title: qsTr("Weigh out")
    }

    GlueUpNumbers {
        Layout.fillWidth: true
        model: root.controller.clocks
        note: root.controller.clockNote
        numbersName: "clockList"
        title: qsTr("Clocks")
    }

    Card {
        Layout.fillWidth: true
        padding: Theme.space4
        visible: root.controller.comesApart.length > 0

        SectionTitle {
            Layout.fillWidth: true
            text: qsTr("How it comes apart")
        }

        PlainText {
            Layout.fillWidth: true
            objectName: "comesApartText"
            text: root.controller.comesApart
        }
    }

    Card {
        Layout.fillWidth: true
        edge: Theme.testFirst
        padding: Theme.space4
        visible: root.controller.hazard.length > 0 || root.controller.cautions.length > 0

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.space3

            Icon {
                Layout.alignment: Qt.AlignTop
                color: Theme.testFirst
                name: "warning"
            }

            PlainText {
                Layout.fillWidth: true
                objectName: "hazardText"
                text: root.controller.hazard.length > 0 ? root.controller.hazard : qsTr("The label and the safety data sheet come first; there are the usual cautions too.")
            }
        }

        PlainButton {
            Layout.fillWidth: true
            iconName: "info"
            text: qsTr("Cautions")
            visible: root.controller.cautions.length > 0
            onClicked: cautions.open()
        }
    }

    Sheet {
        id: cautions
        title: qsTr("Cautions")

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("The usual ones for what is used here. Where the label, the safety data sheet or a local rule says otherwise, that holds.")
        }

        ReasonList {
            Layout.fillWidth: true
            reasons: root.controller.cautions
        }
    }
}
