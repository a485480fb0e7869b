import QtQuick
import Gluewright.Ui

// All parts side by side, to be looked at: run it with a view of 1280x800 and of 800x1280, in light and in dark. It is
// not shipped. Left and right keys turn the pages.
Rectangle {
    id: root

    property bool dark: false
    property int page: 0
    property bool openSheet: false
    property bool openPicker: false
    readonly property bool portrait: root.height > root.width

    Component.onCompleted: Theme.dark = root.dark
    color: Theme.paper
    focus: true

    Keys.onLeftPressed: root.page = Math.max(0, root.page - 1)
    Keys.onRightPressed: root.page = Math.min(5, root.page + 1)

    Rail {
        id: rail
        attention: [3, 0, 0, 0, 12, 0]
        current: root.page
        height: root.portrait ? implicitHeight : parent.height
        portrait: root.portrait
        width: root.portrait ? parent.width : implicitWidth
        y: root.portrait ? parent.height - height : 0
        onPicked: index => root.page = index
    }

    Item {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: root.portrait ? rail.height : 0
        anchors.left: parent.left
        anchors.leftMargin: root.portrait ? 0 : rail.width
        anchors.right: parent.right
        anchors.top: parent.top

        GallerySigns {
            anchors.fill: parent
            visible: root.page === 0
        }

        GalleryShelf {
            anchors.fill: parent
            visible: root.page === 1
        }

        GalleryGlueUp {
            anchors.fill: parent
            visible: root.page === 2
        }

        GalleryFields {
            anchors.fill: parent
            openPicker: root.openPicker
            openSheet: root.openSheet
            visible: root.page === 3
        }

        GalleryWords {
            anchors.fill: parent
            visible: root.page === 4
        }

        GalleryOrder {
            anchors.fill: parent
            visible: root.page === 5
        }
    }
}
