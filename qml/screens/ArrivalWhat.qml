import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What a product is that the shop does not know by its number: something it buys already, or a new material of a class.
ColumnLayout {
    id: root

    required property ArrivalController controller
    readonly property ArrivalForm form: root.controller.form

    function chooseMaterial() {
        if (root.controller.materials.count > 0 || root.controller.materials.sought.length > 0)
            materialList.open();
    }

    spacing: Theme.space5

    ChoiceList {
        id: materialList
        objectName: "materialList"
        allowsNew: true
        choices: root.controller.materials
        title: qsTr("What is it?")
        onNewPicked: name => root.controller.chooseNew(name)
        onPicked: key => root.controller.chooseMaterial(key)
    }

    ChoiceList {
        id: classList
        objectName: "classList"
        choices: root.controller.classes
        title: qsTr("What kind of stuff is it?")
        onPicked: key => root.controller.chooseClass(key)
    }

    PlainButton {
        objectName: "chooseMaterial"
        Layout.fillWidth: true
        Layout.preferredHeight: Theme.touchMain
        iconName: "shelf"
        text: qsTr("Something the shop has bought before")
        visible: root.controller.materials.count > 0
        onClicked: materialList.open()
    }

    Field {
        objectName: "name"
        Layout.fillWidth: true
        hint: qsTr("As you speak of it in the shop.")
        label: root.controller.materials.count > 0 ? qsTr("Or a new name") : qsTr("What is it called?")
        text: root.form.name
        onEdited: text => root.form.name = text
    }

    FieldFrame {
        Layout.fillWidth: true
        hint: qsTr("The kind gives its usual lives, until the label says otherwise.")
        label: qsTr("What kind of stuff is it?")

        PlainButton {
            objectName: "chooseClass"
            height: Theme.touchMain
            iconName: root.form.className.length > 0 ? "check" : "search"
            text: root.form.className.length > 0 ? root.form.className : qsTr("Choose the kind")
            width: parent.width
            onClicked: classList.open()
        }
    }
}
