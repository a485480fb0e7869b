pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// Two to five short choices side by side, one of them taken.
Rectangle {
    id: root

    property list<string> options
    property int currentIndex: 0
    property string label

    signal picked(index: int)

    Accessible.name: root.label
    Accessible.role: Accessible.Grouping
    border.color: Theme.edge
    border.width: 1
    color: Theme.card
    implicitHeight: Theme.touch
    implicitWidth: row.implicitWidth
    radius: Theme.radius

    RowLayout {
        id: row
        anchors.fill: parent
        spacing: 0

        Repeater {
            model: root.options

            T.AbstractButton {
                id: option

                required property int index
                required property string modelData
                readonly property bool taken: option.index === root.currentIndex

                Accessible.checkable: true
                Accessible.checked: option.taken
                Accessible.name: option.modelData
                Accessible.role: Accessible.RadioButton
                focusPolicy: Qt.StrongFocus
                Layout.fillHeight: true
                Layout.fillWidth: true
                implicitWidth: Math.max(Theme.touch, implicitContentWidth + 2 * Theme.space4)

                Keys.onLeftPressed: nextItemInFocusChain(false).forceActiveFocus(Qt.BacktabFocusReason)
                Keys.onReturnPressed: root.picked(option.index)
                Keys.onRightPressed: nextItemInFocusChain(true).forceActiveFocus(Qt.TabFocusReason)
                onClicked: root.picked(option.index)

                background: Rectangle {
                    anchors.fill: parent
                    anchors.margins: 4
                    border.color: Theme.amberEdge
                    border.width: option.taken ? 2 : 0
                    color: option.taken || option.down ? Theme.testFirstWash : "transparent"
                    radius: Theme.radius - 4

                    FocusRing {
                        anchors.margins: -3
                        around: Theme.radius - 6
                        shown: option.visualFocus
                    }
                }

                contentItem: PlainText {
                    Accessible.ignored: true
                    horizontalAlignment: Text.AlignHCenter
                    strong: option.taken
                    text: option.modelData
                    verticalAlignment: Text.AlignVCenter
                    wrapMode: Text.NoWrap
                }
            }
        }
    }
}
