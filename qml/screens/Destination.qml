import QtQuick

// A place for a screen that is made when it is first wanted and kept from then on.
Loader {
    id: root

    required property bool wanted

    active: false
    anchors.fill: parent
    visible: root.wanted

    Component.onCompleted: if (root.wanted) root.active = true
    onWantedChanged: if (root.wanted) root.active = true
}
