import QtQuick
import Gluewright.Ui

// A whole screen: the head stays, the column below it scrolls. Lists that scroll by themselves do without it.
Item {
    id: root

    property alias title: header.title
    property alias subtitle: header.subtitle
    property alias canGoBack: header.canGoBack
    property alias actions: header.actions
    property alias spacing: column.spacing
    property alias footRoom: column.footRoom
    readonly property bool portrait: root.height > root.width

    default property alias content: column.content

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

    ScrollColumn {
        id: column
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: header.bottom
    }
}
