import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// One container: is it still good and why, what it is, what happened to it, and everything that can be done with it.
Item {
    id: root

    required property string container

    readonly property bool portrait: root.height > root.width
    readonly property real footHeight: bar.height

    ContainerController {
        id: controller
        container: root.container
        objectName: "containerController"
        services: AppServices
    }

    LifePictureController {
        id: picture
        container: root.container
        objectName: "lifePictureController"
        services: AppServices
    }

    ContainerSheets {
        id: sheets
        controller: controller
    }

    ScreenHeader {
        id: header
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        canGoBack: true
        subtitle: controller.subtitle
        title: controller.name
        onBack: AppServices.navigation.back()

        PlainButton {
            iconName: "label"
            objectName: "labelAct"
            text: qsTr("Label")
            visible: controller.loaded && !controller.retired
            onClicked: sheets.printLabel()
        }
    }

    Item {
        id: body
        anchors.bottom: bar.top
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: header.bottom
        visible: controller.loaded

        ScrollColumn {
            id: judged
            height: body.height
            margin: Theme.space3
            visible: !root.portrait
            width: Math.floor(body.width * 0.54)
            x: Theme.space6 - margin

            ContainerJudged {
                controller: controller
                sheets: sheets
            }

            ContainerPicture {
                Layout.fillWidth: true
                controller: picture
                visible: !root.portrait
            }
        }

        ContainerStory {
            controller: controller
            height: body.height
            picture: picture
            sheets: sheets
            width: body.width - x - Theme.space6 + margin
            withVerdict: root.portrait
            x: root.portrait ? Theme.space6 - margin : judged.x + judged.width - Theme.space2
        }
    }

    Banner {
        actionText: qsTr("Back")
        anchors.left: header.left
        anchors.right: header.right
        anchors.top: header.bottom
        dismissable: false
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onActed: AppServices.navigation.back()
    }

    ContainerBar {
        id: bar
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.right: parent.right
        controller: controller
        sheets: sheets
        visible: controller.loaded
    }
}
