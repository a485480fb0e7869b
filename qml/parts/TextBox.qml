import QtQuick
import QtQuick.Controls.Basic as Basic
import Gluewright.Ui

// The box one types into: 56 high, 20 px text, the caret in the accent.
Basic.TextField {
    id: root

    property color edgeColor: Theme.edge
    property string suffix
    property int startRoom: Theme.space4
    property int endRoom: Theme.space4

    color: Theme.ink
    font.family: Theme.fontFamily
    font.pixelSize: Theme.textStrong
    implicitHeight: 56
    implicitWidth: 200
    leftPadding: root.startRoom
    opacity: root.enabled ? 1 : 0.5
    placeholderTextColor: Theme.inkQuiet
    rightPadding: root.endRoom + (unit.visible ? unit.implicitWidth + Theme.space2 : 0)
    selectByMouse: true
    selectedTextColor: Theme.amberInk
    selectionColor: Theme.amber
    verticalAlignment: TextInput.AlignVCenter

    background: Rectangle {
        border.color: root.activeFocus ? Theme.focus : root.edgeColor
        border.width: root.activeFocus ? 3 : 1
        color: root.readOnly ? Theme.card : Theme.sunken
        radius: Theme.radiusSmall
    }

    PlainText {
        id: unit
        Accessible.ignored: true
        anchors.right: parent.right
        anchors.rightMargin: root.endRoom
        anchors.verticalCenter: parent.verticalCenter
        quiet: true
        text: root.suffix
        visible: root.suffix.length > 0
        wrapMode: Text.NoWrap
    }
}
