pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What became of the last code, and what arrived lately.
ScrollColumn {
    id: root

    required property ArrivalController controller

    signal byHand

    footRoom: Theme.space7 * 2

    LabelSheet {
        id: labelSheet
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    Banner {
        objectName: "other"
        Layout.fillWidth: true
        actionText: qsTr("Go on with it")
        kind: "info"
        text: qsTr("Scanned meanwhile: %1.").arg(root.controller.other)
        visible: root.controller.other.length > 0
        onActed: root.controller.takeOther()
        onDismissed: root.controller.leaveOther()
    }

    Banner {
        objectName: "summary"
        Layout.fillWidth: true
        actionText: root.controller.summed.length > 0 ? qsTr("Print their labels") : ""
        hint: qsTr("Whose age nobody knows is not known to be good until it was tested.")
        kind: "info"
        text: root.controller.summary
        visible: root.controller.summary.length > 0
        onActed: labelSheet.show(root.controller.summed)
        onDismissed: root.controller.clearSummary()
    }

    Card {
        objectName: "unusable"
        Layout.fillWidth: true
        edge: root.controller.faulty ? Theme.doNotUse : Theme.line
        visible: root.controller.state === ArrivalController.Unusable
        wash: root.controller.faulty ? Theme.doNotUseWash : Theme.notKnownWash

        PlainText {
            Layout.fillWidth: true
            size: Theme.textTitle
            strong: true
            text: root.controller.faulty ? qsTr("That code cannot be right") : qsTr("Nothing to book in from that")
        }

        PlainText {
            Layout.fillWidth: true
            text: root.controller.say
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("Read: %1. Nothing was booked in.").arg(root.controller.codeText)
            wrapMode: Text.Wrap
        }

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.space3

            PlainButton {
                iconName: "edit"
                text: qsTr("Book in by hand")
                onClicked: root.byHand()
            }

            PlainButton {
                flat: true
                text: qsTr("Put it aside")
                onClicked: root.controller.putAside()
            }
        }
    }

    BookedCard {
        objectName: "booked"
        Layout.fillWidth: true
        controller: root.controller
        visible: root.controller.state === ArrivalController.Booked
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Latest arrivals")
        visible: root.controller.latest.count > 0
    }

    Repeater {
        model: root.controller.latest

        ArrivalLine {
            Layout.fillWidth: true
        }
    }

    EmptyState {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space6
        hint: qsTr("Hold its code before the camera, or book it in by hand where it carries none.")
        iconName: "arrivals"
        text: qsTr("Nothing has arrived yet")
        visible: root.controller.loaded && root.controller.latest.count === 0 && root.controller.state === ArrivalController.Waiting
    }
}
