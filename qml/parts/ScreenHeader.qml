import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// The head of a screen: where one is, a line about it, and at the right what can be done here.
Item {
    id: root

    property string title
    property string subtitle
    property bool canGoBack: false

    default property alias actions: slot.data

    signal back

    implicitHeight: Math.max(80, words.implicitHeight + Theme.space3, slot.implicitHeight + Theme.space2)
    implicitWidth: 600

    IconButton {
        id: backButton
        anchors.left: parent.left
        anchors.leftMargin: -Theme.space2
        anchors.verticalCenter: parent.verticalCenter
        iconName: "back"
        label: qsTr("Back")
        visible: root.canGoBack
        onClicked: root.back()
    }

    Column {
        id: words
        anchors.left: root.canGoBack ? backButton.right : parent.left
        anchors.leftMargin: root.canGoBack ? Theme.space2 : 0
        anchors.right: slot.left
        anchors.rightMargin: Theme.space4
        anchors.verticalCenter: parent.verticalCenter

        PlainText {
            Accessible.role: Accessible.Heading
            Accessible.name: text
            elide: Text.ElideRight
            font.weight: Font.Bold
            maximumLineCount: 2
            size: Theme.textScreen
            text: root.title
            width: parent.width
        }

        PlainText {
            elide: Text.ElideRight
            maximumLineCount: 2
            quiet: true
            text: root.subtitle
            visible: root.subtitle.length > 0
            width: parent.width
        }
    }

    RowLayout {
        id: slot
        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        spacing: Theme.space3
    }
}
