import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// Something the person has to know on this screen: what is wrong, what to do about it, and the way to do it.
Rectangle {
    id: root

    property string kind: "info"
    property string text
    property string hint
    property string actionText
    property bool dismissable: true

    readonly property string verdict: root.kind === "error" ? "do_not_use" : root.kind === "warning" ? "test_first" : "not_known"
    readonly property color ink: Theme.verdictColor(root.verdict)

    signal acted
    signal dismissed

    Accessible.name: root.hint.length > 0 ? qsTr("%1 %2").arg(root.text).arg(root.hint) : root.text
    Accessible.role: root.kind === "info" ? Accessible.StaticText : Accessible.AlertMessage
    border.color: root.ink
    border.width: 1
    color: Theme.verdictWash(root.verdict)
    implicitHeight: Math.max(Theme.touchMain, row.implicitHeight + 2 * Theme.space3)
    implicitWidth: 480
    radius: Theme.radius

    RowLayout {
        id: row
        anchors.fill: parent
        anchors.leftMargin: Theme.space4
        anchors.rightMargin: Theme.space2
        spacing: Theme.space3

        Icon {
            color: root.ink
            name: root.kind === "info" ? "info" : "warning"
            size: 32
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 2

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                strong: true
                text: root.text
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                text: root.hint
                visible: root.hint.length > 0
            }
        }

        PlainButton {
            text: root.actionText
            visible: root.actionText.length > 0
            onClicked: root.acted()
        }

        IconButton {
            iconName: "close"
            label: qsTr("Put this message away")
            visible: root.dismissable
            onClicked: root.dismissed()
        }
    }
}
