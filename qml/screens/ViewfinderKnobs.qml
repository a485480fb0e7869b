import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// What the camera in use can do besides looking: its lamp, and whether there is another one to look with.
Row {
    id: root

    required property LabelCamera camera

    spacing: Theme.space2

    component Knob: Rectangle {
        id: knob

        property string iconName
        property string label
        property bool lit: false

        signal clicked

        color: knob.lit ? Theme.amber : Theme.walnutLit
        height: Theme.touchMain
        opacity: 0.92
        radius: width / 2
        width: Theme.touchMain

        IconButton {
            anchors.fill: parent
            iconName: knob.iconName
            ink: knob.lit ? Theme.amberInk : Theme.walnutInk
            label: knob.label
            onClicked: knob.clicked()
        }
    }

    Knob {
        objectName: "torch"
        iconName: "torch"
        label: root.camera.torch ? qsTr("Lamp off") : qsTr("Lamp on")
        lit: root.camera.torch
        visible: root.camera.hasTorch
        onClicked: root.camera.torch = !root.camera.torch
    }

    Knob {
        objectName: "nextCamera"
        iconName: "camera"
        label: qsTr("Look with another camera")
        visible: root.camera.cameras.length > 1
        onClicked: root.camera.nextCamera()
    }
}
