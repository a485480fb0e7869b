import QtQuick
import Gluewright.Ui

// A line of text to fill in. `text` comes from the draft; what is typed goes out by `edited`.
FieldFrame {
    id: root

    property string text
    property string suffix
    property string placeholder
    property int inputMethodHints: Qt.ImhNone
    property bool readOnly: false

    signal edited(text: string)
    signal accepted

    function focusBox() {
        box.forceActiveFocus(Qt.OtherFocusReason);
    }

    TextBox {
        id: box
        objectName: "box"
        Accessible.description: root.spokenHelp
        Accessible.name: root.spokenName
        width: parent.width
        edgeColor: root.boxEdge
        inputMethodHints: root.inputMethodHints
        placeholderText: root.placeholder
        readOnly: root.readOnly
        suffix: root.suffix

        onAccepted: root.accepted()
        onTextEdited: root.edited(box.text)

        Binding on text {
            value: root.text
        }
    }
}
