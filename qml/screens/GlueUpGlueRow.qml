import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One family of glue for the joint: how it stands, and every reason.
Card {
    id: root

    required property string name
    required property string verdict
    required property string standing
    required property string reasons

    padding: Theme.space4

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space4

        JointSign {
            Accessible.ignored: true
            Layout.alignment: Qt.AlignTop
            size: 48
            verdict: root.verdict
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: Theme.space1

            PlainText {
                Layout.fillWidth: true
                size: Theme.textStrong
                strong: true
                text: qsTr("%1: %2").arg(root.name).arg(root.standing)
            }

            PlainText {
                Layout.fillWidth: true
                text: root.reasons
            }
        }
    }
}
