import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// A form over the screen: from the right in landscape, from below in portrait. What it asks scrolls, its acts stay put.
// It takes no room where it is declared.
Item {
    id: root

    property string title
    property bool portrait: root.over ? root.over.height > root.over.width : false
    readonly property bool opened: drawer.opened
    readonly property Item over: T.Overlay.overlay

    default property alias content: scroll.content
    property alias footer: footerRow.data

    signal closed

    function open() {
        scroll.contentY = 0;
        drawer.open();
    }

    function close() {
        drawer.close();
    }

    visible: false

    T.Drawer {
        id: drawer

        readonly property real needed: head.implicitHeight + Theme.space3 + scroll.needed
                                       + (foot.visible ? foot.implicitHeight : 0)

        dim: true
        dragMargin: 0
        edge: root.portrait ? Qt.BottomEdge : Qt.RightEdge
        focus: true
        height: !root.over ? 600 : root.portrait ? Math.min(root.over.height * 0.85, drawer.needed) : root.over.height
        modal: true
        parent: root.over
        width: !root.over ? 560 : root.portrait ? root.over.width : Math.min(600, root.over.width * 0.6)

        onClosed: root.closed()

        enter: Transition {
            SmoothedAnimation {
                duration: Theme.move
            }
        }

        exit: Transition {
            SmoothedAnimation {
                duration: Theme.move
            }
        }

        T.Overlay.modal: Rectangle {
            color: Theme.scrim
        }

        background: Rectangle {
            color: Theme.raised

            Rectangle {
                color: Theme.edge
                height: root.portrait ? 2 : parent.height
                width: root.portrait ? parent.width : 2
            }
        }

        ColumnLayout {
            anchors.fill: parent
            spacing: 0

            RowLayout {
                id: head
                Layout.fillWidth: true
                Layout.leftMargin: Theme.space5
                Layout.rightMargin: Theme.space3
                Layout.topMargin: Theme.space3
                spacing: Theme.space3

                PlainText {
                    Accessible.role: Accessible.Heading
                    Accessible.name: text
                    Layout.fillWidth: true
                    size: Theme.textTitle
                    strong: true
                    text: root.title
                }

                IconButton {
                    iconName: "close"
                    label: qsTr("Close")
                    onClicked: root.close()
                }
            }

            ScrollColumn {
                id: scroll
                Layout.fillHeight: true
                Layout.fillWidth: true
                footRoom: Theme.space5
                margin: Theme.space5
                spacing: Theme.space5
            }

            Item {
                id: foot
                Layout.fillWidth: true
                implicitHeight: footerRow.implicitHeight + 2 * Theme.space4
                visible: footerRow.children.length > 0

                Rectangle {
                    color: Theme.line
                    height: 1
                    width: parent.width
                }

                RowLayout {
                    id: footerRow
                    anchors.fill: parent
                    anchors.leftMargin: Theme.space5
                    anchors.margins: Theme.space4
                    anchors.rightMargin: Theme.space5
                    spacing: Theme.space3
                }
            }
        }
    }
}
