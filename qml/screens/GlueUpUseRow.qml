import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One container to take from the shelf, how much of it and why this one. It leads to the container's page.
T.AbstractButton {
    id: root

    required property string label
    required property string name
    required property string amount
    required property string note
    required property string shape
    required property string contents
    required property real level

    Accessible.description: root.note
    Accessible.name: qsTr("%1, %2").arg(root.name).arg(root.amount)
    Accessible.role: Accessible.ListItem
    focusPolicy: Qt.StrongFocus
    implicitHeight: Math.max(Theme.touchMain, implicitContentHeight + topPadding + bottomPadding)
    implicitWidth: 320
    padding: Theme.space1

    Keys.onReturnPressed: root.clicked()

    background: Rectangle {
        color: root.down ? Theme.testFirstWash : "transparent"
        radius: Theme.radiusSmall

        FocusRing {
            anchors.margins: 0
            shown: root.visualFocus
        }
    }

    contentItem: RowLayout {
        spacing: Theme.space4

        Vessel {
            Accessible.ignored: true
            Layout.preferredHeight: 84
            Layout.preferredWidth: 56
            contents: Theme.contentsColor(root.contents)
            level: root.level
            shape: root.shape
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 2

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                strong: true
                text: root.name
            }

            Figures {
                Accessible.ignored: true
                size: Theme.textTitle
                strong: true
                text: root.amount
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: root.note
            }
        }

        Icon {
            color: Theme.inkQuiet
            name: "next"
            size: 20
        }
    }
}
