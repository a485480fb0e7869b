import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What the whole list comes to, and the file it goes out in.
Rectangle {
    id: root

    required property OrderController controller
    readonly property bool narrow: width < 900 // a tablet upright

    signal pagesWanted
    signal saveWanted

    color: Theme.card
    implicitHeight: Theme.touchMain + 2 * Theme.space3
    implicitWidth: 600

    Rectangle {
        color: Theme.line
        height: 1
        width: parent.width
    }

    BusyBar {
        running: root.controller.busy
        width: parent.width
    }

    RowLayout {
        anchors.fill: parent
        anchors.leftMargin: root.narrow ? Theme.space4 : Theme.space6
        anchors.rightMargin: root.narrow ? Theme.space4 : Theme.space6
        spacing: root.narrow ? Theme.space2 : Theme.space4

        PlainText {
            Accessible.ignored: true
            quiet: true
            text: qsTr("Total")
            visible: root.controller.total.length > 0 && !root.narrow
        }

        Figures {
            Accessible.name: qsTr("Total: %1").arg(root.controller.total)
            objectName: "totalText"
            size: 28
            strong: true
            text: root.controller.total
        }

        Item {
            Layout.fillWidth: true
        }

        PlainButton {
            Layout.preferredHeight: Theme.touchMain
            enabled: root.controller.lines.count > 0
            iconName: "save"
            objectName: "saveCsvButton"
            text: qsTr("CSV")
            Accessible.name: qsTr("Save as CSV")
            onClicked: root.saveWanted()
        }

        PlainButton {
            Layout.preferredHeight: Theme.touchMain
            enabled: root.controller.lines.count > 0
            iconName: "print"
            objectName: "savePagesButton"
            text: qsTr("PDF")
            Accessible.name: qsTr("Save as PDF")
            onClicked: root.pagesWanted()
        }

        PlainButton {
            Layout.preferredHeight: Theme.touchMain
            enabled: root.controller.canKeep
            iconName: "export"
            objectName: "copyButton"
            text: qsTr("Copy")
            Accessible.name: qsTr("Copy what to order as text")
            onClicked: root.controller.copyText()
        }

        BigButton {
            enabled: root.controller.canKeep && !root.controller.busy && root.controller.whatIf.length === 0
            iconName: "check"
            objectName: "keepButton"
            text: qsTr("Keep the list")
            onClicked: root.controller.keep()
        }
    }
}
