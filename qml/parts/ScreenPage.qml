import QtQuick
import QtQuick.Controls.Basic as Basic
import QtQuick.Layouts
import Gluewright.Ui

// A whole screen: the head stays, the column below it scrolls. Lists that scroll by themselves do without it.
Item {
    id: root

    property alias title: header.title
    property alias subtitle: header.subtitle
    property alias canGoBack: header.canGoBack
    property alias actions: header.actions
    property alias spacing: column.spacing
    readonly property bool portrait: root.height > root.width

    default property alias content: column.data

    signal back

    ScreenHeader {
        id: header
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        onBack: root.back()
    }

    Flickable {
        id: flick
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: header.bottom
        boundsBehavior: Flickable.StopAtBounds
        clip: true
        contentHeight: column.implicitHeight + Theme.space3 + Theme.space6

        Basic.ScrollBar.vertical: SlimScrollBar {}

        ColumnLayout {
            id: column
            spacing: Theme.space4
            width: flick.width - 2 * Theme.space6
            x: Theme.space6
            y: Theme.space3
        }
    }
}
