import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What comes into the shop: hold it before the camera, say what is missing, book it in.
Item {
    id: root

    readonly property bool portrait: root.height > root.width
    readonly property real footHeight: root.offered && !controller.asksFill ? card.footHeight : 0
    readonly property bool offered: controller.state === ArrivalController.Offered
    readonly property bool noPicture: AppServices.scanner.camera.state === LabelCamera.Trouble
    // On a tall screen the form needs the room more than the picture, and where there is no picture nothing does.
    readonly property real pictureHeight: root.portrait && root.offered ? 150 : root.noPicture ? 200
                                        : look.width * (root.portrait ? 0.6 : 0.75)

    ArrivalController {
        id: controller
        objectName: "arrivalController"
        services: AppServices
    }

    ScreenHeader {
        id: header
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        subtitle: controller.stockTaking ? qsTr("Walk along the shelf and scan what stands there.") : qsTr("Hold a bottle's code before the camera.")
        title: controller.stockTaking ? qsTr("First stock-taking") : qsTr("Arrivals")

        PlainButton {
            objectName: "stockTaking"
            Layout.minimumWidth: implicitWidth
            iconName: controller.stockTaking ? "check" : "count"
            text: controller.stockTaking ? qsTr("Finish") : qsTr("Take stock")
            visible: !root.offered || controller.asksFill
            onClicked: controller.stockTaking ? controller.endStockTaking() : controller.beginStockTaking()
        }

        PlainButton {
            objectName: "byHand"
            iconName: "edit"
            text: qsTr("Book in by hand")
            visible: !root.offered
            onClicked: {
                controller.byHand();
                card.chooseWhat();
            }
        }
    }

    ColumnLayout {
        id: look
        anchors.left: header.left
        anchors.right: root.portrait ? header.right : undefined
        anchors.top: header.bottom
        anchors.topMargin: Theme.space2
        spacing: Theme.space4
        width: root.portrait ? header.width : Math.min(460, root.width * 0.38)

        Viewfinder {
            objectName: "viewfinder"
            Layout.fillWidth: true
            Layout.preferredHeight: root.pictureHeight
        }

        CodeEntry {
            Layout.fillWidth: true
            visible: !root.portrait || !root.offered
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            size: Theme.textSmall
            text: qsTr("A hand scanner works here and on every other screen.")
            visible: !root.portrait
        }
    }

    Item {
        id: work
        anchors.bottom: parent.bottom
        anchors.left: root.portrait ? parent.left : look.right
        anchors.right: parent.right
        anchors.top: root.portrait ? look.bottom : header.bottom
        anchors.topMargin: root.portrait ? Theme.space3 : 0

        ArrivalCard {
            id: card
            anchors.fill: parent
            controller: controller
            visible: root.offered && !controller.asksFill
        }

        ArrivalStock {
            anchors.fill: parent
            controller: controller
            visible: controller.stockTaking && (!root.offered || controller.asksFill)
        }

        ArrivalLatest {
            anchors.fill: parent
            controller: controller
            visible: !root.offered && !controller.stockTaking
            onByHand: {
                controller.byHand();
                card.chooseWhat();
            }
        }
    }
}
