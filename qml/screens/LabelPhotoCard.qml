import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The label as it was photographed when the material was learned; pressed, it is shown as large as the page is wide.
Card {
    id: root

    property string container
    property bool large: false

    clickable: true
    label: root.large ? qsTr("Photo of the label, show it small") : qsTr("Photo of the label, show it large")
    visible: controller.there

    onClicked: root.large = !root.large

    LabelPhotoController {
        id: controller
        container: root.container
        services: AppServices
    }

    SectionTitle {
        Layout.fillWidth: true
        note: controller.taken
        text: qsTr("Its label")
    }

    LabelPicture {
        Layout.fillWidth: true
        Layout.preferredHeight: root.large ? width * 0.75 : 160
        image: controller.image
        objectName: "labelPhoto"
    }
}
