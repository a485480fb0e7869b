import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What the list would be if more work came, or a supplier were late. Nothing of it is kept.
Sheet {
    id: root

    required property OrderController controller

    objectName: "whatIfSheet"
    title: qsTr("What if")

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("The list then shows what it would be; nothing of this is kept.")
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: root.controller.moreOf
        label: qsTr("One more a week of")
        objectName: "moreOf"
        options: root.controller.kindsOfWork
        onPicked: index => root.controller.moreOf = index
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: root.controller.lateSupplier
        label: qsTr("Two weeks late")
        objectName: "lateSupplier"
        options: root.controller.suppliers
        onPicked: index => root.controller.lateSupplier = index
    }
}
