import QtQuick
import QtQuick.Dialogs
import Gluewright.Backend
import Gluewright.Ui

// A photograph of the label, kept with the material: what it says can be read again when the bottle is smeared.
FieldFrame {
    id: root

    required property ArrivalController controller

    hint: qsTr("Kept with the material, to read when the bottle itself is smeared.")
    label: qsTr("Photo of the label")

    FileDialog {
        id: file
        nameFilters: [qsTr("Pictures (*.png *.jpg *.jpeg *.webp *.bmp *.tif *.tiff)"), qsTr("All files (*)")]
        title: qsTr("Choose a picture of the label")
        onAccepted: root.controller.readPhoto(file.selectedFile)
    }

    Flow {
        spacing: Theme.space3
        width: parent.width

        LabelPicture {
            Accessible.name: qsTr("The photo that will be kept")
            Accessible.role: Accessible.Graphic
            height: 120
            image: root.controller.photo
            objectName: "photo"
            visible: root.controller.hasPhoto
            width: 160
        }

        PlainButton {
            objectName: "takePhoto"
            height: Theme.touchMain
            iconName: "camera"
            text: qsTr("Keep the camera's picture")
            visible: AppServices.scanner.camera.state === LabelCamera.Looking || AppServices.scanner.camera.state === LabelCamera.Held
            onClicked: root.controller.takePhoto()
        }

        PlainButton {
            objectName: "choosePhoto"
            height: Theme.touchMain
            iconName: "import"
            text: qsTr("Choose a picture")
            onClicked: file.open()
        }

        PlainButton {
            objectName: "dropPhoto"
            flat: true
            height: Theme.touchMain
            text: qsTr("Leave it out")
            visible: root.controller.hasPhoto
            onClicked: root.controller.dropPhoto()
        }
    }
}
