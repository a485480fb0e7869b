import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What else can be said of the glue-up: the joint and what is left in it, the piece, its wood and its place.
Sheet {
    id: root

    required property GlueUpController controller

    objectName: "moreSheet"
    title: qsTr("Joint and piece")

    Picker {
        Layout.fillWidth: true
        currentIndex: root.controller.more.joint
        label: qsTr("Joint")
        objectName: "jointPicker"
        options: root.controller.more.joints
        onPicked: index => root.controller.more.joint = index
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: root.controller.more.residue
        label: qsTr("Left in the joint")
        objectName: "residuePicker"
        options: root.controller.more.residues
        onPicked: index => root.controller.more.residue = index
    }

    GlueUpTile {
        Layout.fillWidth: true
        condition: root.controller.more.surfaceAge
        objectName: "surfaceTile"
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: root.controller.more.stood
        hint: qsTr("Where the wood has stood for weeks: its moisture is estimated from the air there.")
        label: qsTr("Wood stood in")
        objectName: "stoodPicker"
        options: root.controller.more.places
        onPicked: index => root.controller.more.stood = index
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("The piece")
    }

    Segmented {
        Layout.fillWidth: true
        currentIndex: root.controller.more.period
        label: qsTr("The piece")
        objectName: "periodChoice"
        options: [qsTr("Not said"), qsTr("Old"), qsTr("Modern")]
        onPicked: index => root.controller.more.period = index
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Where it will stand")
    }

    Segmented {
        Layout.fillWidth: true
        currentIndex: root.controller.more.place
        label: qsTr("Where it will stand")
        objectName: "placeChoice"
        options: [qsTr("Not said"), qsTr("Dry"), qsTr("Damp"), qsTr("Outdoors"), qsTr("Hot")]
        onPicked: index => root.controller.more.place = index
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("What the joint carries")
    }

    Segmented {
        Layout.fillWidth: true
        currentIndex: root.controller.more.load
        label: qsTr("What the joint carries")
        objectName: "loadChoice"
        options: [qsTr("Not said"), qsTr("Little"), qsTr("Lasting"), qsTr("Knocks")]
        onPicked: index => root.controller.more.load = index
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Room aired, with no flame or hot pot")
    }

    Segmented {
        Layout.fillWidth: true
        currentIndex: root.controller.more.aired
        label: qsTr("Room aired, with no flame or hot pot")
        objectName: "airedChoice"
        options: [qsTr("Not said"), qsTr("Yes"), qsTr("No")]
        onPicked: index => root.controller.more.aired = index
    }

    PlainButton {
        Layout.fillWidth: true
        iconName: "close"
        text: qsTr("Take all of it back")
        visible: root.controller.more.count > 0
        onClicked: root.controller.more.forget()
    }
}
