import QtQuick
import Gluewright.Ui

Item {
    id: root

    ScreenHeader {
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        title: qsTr("Arrivals")
    }
}
