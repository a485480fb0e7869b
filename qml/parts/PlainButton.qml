import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// Any act beside the main one. `danger` marks what takes stock out of use; `flat` drops the outline inside a card.
T.Button {
    id: root

    property string iconName
    property bool danger: false

    readonly property color ink: root.danger ? Theme.doNotUse : root.flat ? Theme.accentInk : Theme.ink

    Accessible.name: root.text
    font.family: Theme.fontFamily
    font.pixelSize: Theme.textBody
    implicitHeight: Math.max(Theme.touch, contentItem.implicitHeight + 2 * Theme.space2)
    implicitWidth: contentItem.implicitWidth + leftPadding + rightPadding
    leftPadding: root.flat ? Theme.space3 : Theme.space4
    opacity: root.enabled ? 1 : 0.45
    padding: Theme.space2
    rightPadding: leftPadding

    background: Rectangle {
        border.color: root.danger ? Theme.doNotUse : Theme.edge
        border.width: root.flat ? 0 : 1
        color: root.down ? Theme.testFirstWash : root.flat ? "transparent" : Theme.card
        radius: Theme.radius

        FocusRing {
            shown: root.visualFocus
        }
    }

    contentItem: IconLine {
        iconName: root.iconName
        ink: root.ink
        text: root.text
    }
}
