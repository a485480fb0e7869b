import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// Where there is nothing yet: what would be here, and how to begin.
Item {
    id: root

    property string iconName
    property string text
    property string hint
    property string actionText
    property string actionIcon

    signal acted

    implicitHeight: column.implicitHeight
    implicitWidth: 520

    ColumnLayout {
        id: column
        anchors.centerIn: parent
        spacing: Theme.space4
        width: Math.min(520, root.width)

        Icon {
            Layout.alignment: Qt.AlignHCenter
            color: Theme.edge
            name: root.iconName
            size: 88
            visible: root.iconName.length > 0
        }

        PlainText {
            Layout.fillWidth: true
            horizontalAlignment: Text.AlignHCenter
            size: Theme.textTitle
            strong: true
            text: root.text
        }

        PlainText {
            Layout.fillWidth: true
            horizontalAlignment: Text.AlignHCenter
            quiet: true
            text: root.hint
            visible: root.hint.length > 0
        }

        BigButton {
            Layout.alignment: Qt.AlignHCenter
            Layout.topMargin: Theme.space2
            iconName: root.actionIcon
            text: root.actionText
            visible: root.actionText.length > 0
            onClicked: root.acted()
        }
    }
}
