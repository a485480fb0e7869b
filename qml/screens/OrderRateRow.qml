import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One kind of work and how many come in a month: stepped by halves or typed.
RowLayout {
    id: root

    required property string name
    required property string family
    required property string rate

    signal stepped(direction: int)
    signal typed(text: string)

    spacing: Theme.space3

    ColumnLayout {
        Layout.fillWidth: true
        spacing: 0

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            strong: true
            text: root.name
        }

        PlainText {
            Accessible.ignored: true
            Layout.fillWidth: true
            quiet: true
            size: Theme.textSmall
            text: root.family
        }
    }

    IconButton {
        Layout.preferredHeight: 56
        Layout.preferredWidth: 56
        autoRepeat: true
        enabled: root.rate !== "0"
        iconName: "minus"
        label: qsTr("%1: fewer").arg(root.name)
        objectName: "fewer"
        outlined: true
        onClicked: root.stepped(-1)
    }

    TextBox {
        id: box
        Accessible.name: qsTr("%1 in a month").arg(root.name)
        Layout.preferredWidth: 84
        horizontalAlignment: TextInput.AlignHCenter
        inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
        objectName: "rate"
        startRoom: Theme.space2
        endRoom: Theme.space2

        Keys.onDownPressed: root.stepped(-1)
        Keys.onUpPressed: root.stepped(1)
        onEditingFinished: if (box.text !== root.rate) root.typed(box.text)

        Binding on text {
            value: root.rate
        }
    }

    IconButton {
        Layout.preferredHeight: 56
        Layout.preferredWidth: 56
        autoRepeat: true
        iconName: "add"
        label: qsTr("%1: more").arg(root.name)
        objectName: "more"
        outlined: true
        onClicked: root.stepped(1)
    }
}
