import QtQuick
import Gluewright.Ui

// Looking something up in a list, with one press to start afresh.
FocusScope {
    id: root

    property string text
    property string placeholder: qsTr("Search")

    signal edited(text: string)
    signal accepted
    signal cleared

    implicitHeight: 56
    implicitWidth: 320

    TextBox {
        id: box
        Accessible.name: root.placeholder
        anchors.fill: parent
        endRoom: clearButton.visible ? Theme.touch + Theme.space2 : Theme.space4
        focus: true
        inputMethodHints: Qt.ImhNoPredictiveText
        placeholderText: root.placeholder
        startRoom: 52

        Keys.onEscapePressed: event => {
            event.accepted = box.text.length > 0;
            root.clear();
        }
        onAccepted: root.accepted()
        onTextEdited: root.edited(box.text)

        Binding on text {
            value: root.text
        }
    }

    function clear() {
        if (box.text.length === 0)
            return;
        box.clear();
        root.edited("");
        root.cleared();
    }

    Icon {
        anchors.left: parent.left
        anchors.leftMargin: Theme.space4
        anchors.verticalCenter: parent.verticalCenter
        color: Theme.inkQuiet
        name: "search"
        size: 24
    }

    IconButton {
        id: clearButton
        anchors.right: parent.right
        anchors.rightMargin: 4
        anchors.verticalCenter: parent.verticalCenter
        iconName: "close"
        iconSize: 22
        label: qsTr("Clear the search")
        visible: box.text.length > 0

        onClicked: {
            root.clear();
            box.forceActiveFocus(Qt.OtherFocusReason);
        }
    }
}
