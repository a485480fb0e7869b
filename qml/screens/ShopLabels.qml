import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// Labels for many containers at once, such as after the first stock-taking.
Card {
    id: root

    LabelSheet {
        id: labelSheet
    }

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Labels")
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("Every container carries a label of its own; scanned anywhere, it opens it.")
    }

    PlainButton {
        iconName: "label"
        objectName: "shelfLabels"
        text: qsTr("Print labels")
        onClicked: labelSheet.show([])
    }
}
