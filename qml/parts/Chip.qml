import QtQuick
import Gluewright.Ui

// A short fact beside a name (opened, on hold, 2 left). It is read, not pressed.
Rectangle {
    id: root

    property string text
    property string iconName
    property string verdict

    readonly property color ink: root.verdict.length > 0 ? Theme.verdictColor(root.verdict) : Theme.inkQuiet

    Accessible.role: Accessible.StaticText
    Accessible.name: root.text
    color: root.verdict.length > 0 ? Theme.verdictWash(root.verdict) : Theme.notKnownWash
    implicitHeight: 32
    implicitWidth: line.implicitWidth + 2 * Theme.space3
    radius: Theme.radiusSmall

    IconLine {
        id: line
        anchors.fill: parent
        anchors.leftMargin: Theme.space3
        anchors.rightMargin: Theme.space3
        iconName: root.iconName
        ink: root.ink
        text: root.text
        textSize: Theme.textSmall
    }
}
