import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// One condition: stepped with the thumb, typed, or plainly not said. The cross takes back what was said.
Item {
    id: root

    required property GlueUpCondition condition

    readonly property bool wrong: root.condition.errorText.length > 0
    readonly property string spokenName: qsTr("%1 in %2").arg(root.condition.label).arg(root.condition.unit)

    function focusBox() {
        box.forceActiveFocus(Qt.OtherFocusReason);
    }

    implicitHeight: forget.height + frame.height - 4
    implicitWidth: 170

    PlainText {
        Accessible.ignored: true
        anchors.bottom: frame.top
        anchors.bottomMargin: Theme.space1 + 2
        elide: Text.ElideRight
        maximumLineCount: 1
        size: Theme.textSmall
        strong: true
        text: qsTr("%1, %2").arg(root.condition.label).arg(root.condition.unit)
        width: root.width - (forget.visible ? forget.width : 0)
    }

    IconButton {
        id: forget
        anchors.right: parent.right
        iconName: "close"
        iconSize: 20
        ink: Theme.inkQuiet
        label: qsTr("%1: not said").arg(root.condition.label)
        objectName: "forget"
        visible: root.condition.text.length > 0
        onClicked: root.condition.forget()
    }

    Rectangle {
        id: frame
        anchors.bottom: parent.bottom
        border.color: root.wrong ? Theme.doNotUse : box.activeFocus ? Theme.focus : Theme.edge
        border.width: root.wrong || box.activeFocus ? 3 : 1
        color: root.condition.said ? Theme.sunken : Theme.notKnownWash
        height: Theme.touchMain
        radius: Theme.radius
        width: root.width

        IconButton {
            id: less
            anchors.left: parent.left
            autoRepeat: true
            height: parent.height
            iconName: "minus"
            label: qsTr("%1: less").arg(root.condition.label)
            objectName: "less"
            onClicked: root.condition.step(-1)
        }

        TextInput {
            id: box
            Accessible.description: root.wrong ? root.condition.errorText : root.condition.said ? "" : unsaid.text
            Accessible.name: root.spokenName
            Accessible.role: Accessible.EditableText
            activeFocusOnTab: true
            anchors.bottom: parent.bottom
            anchors.left: less.right
            anchors.right: more.left
            anchors.top: parent.top
            clip: true
            color: root.wrong ? Theme.doNotUse : Theme.ink
            font.family: Theme.fontFamily
            font.pixelSize: Theme.textTitle
            font.weight: Font.DemiBold
            horizontalAlignment: TextInput.AlignHCenter
            inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
            objectName: "box"
            selectByMouse: true
            selectedTextColor: Theme.amberInk
            selectionColor: Theme.amber
            verticalAlignment: TextInput.AlignVCenter

            Keys.onDownPressed: root.condition.step(-1)
            Keys.onUpPressed: root.condition.step(1)
            onTextEdited: root.condition.type(box.text)

            Binding on text {
                value: root.condition.text
            }
        }

        PlainText {
            id: unsaid
            Accessible.ignored: true
            anchors.fill: box
            horizontalAlignment: Text.AlignHCenter
            quiet: true
            size: Theme.textSmall
            text: qsTr("Not said")
            verticalAlignment: Text.AlignVCenter
            visible: root.condition.text.length === 0 && !box.activeFocus
            wrapMode: Text.NoWrap
        }

        IconButton {
            id: more
            anchors.right: parent.right
            autoRepeat: true
            height: parent.height
            iconName: "add"
            label: qsTr("%1: more").arg(root.condition.label)
            objectName: "more"
            onClicked: root.condition.step(1)
        }
    }
}
