pragma ComponentBehavior: Bound

import QtQuick
import Gluewright.Ui

// The six destinations: down the left side in landscape, along the bottom in portrait. Arrow keys walk it, Ctrl+1 to
// Ctrl+6 go straight there. `attention` holds one count per destination; nought shows nothing.
Rectangle {
    id: root

    property int current: 0
    property bool portrait: false
    property list<int> attention

    readonly property list<string> names: [qsTr("Today"), qsTr("Shelf"), qsTr("Arrivals"), qsTr("Glue-up"), qsTr("Order"), qsTr("Shop")]
    readonly property list<string> drawings: ["today", "shelf", "arrivals", "glue-up", "order", "shop"]
    readonly property int thickness: 108

    signal picked(index: int)

    function focusAt(index: int) {
        const wanted = Math.max(0, Math.min(root.names.length - 1, index));
        root.buttonAt(wanted).forceActiveFocus(Qt.TabFocusReason);
    }

    function buttonAt(index: int): RailButton {
        return buttons.itemAt(index) as RailButton;
    }

    function focusCurrent() {
        root.focusAt(root.current);
    }

    Accessible.name: qsTr("Destinations")
    Accessible.role: Accessible.PageTabList
    color: Theme.walnut
    implicitHeight: root.portrait ? 92 : 600
    implicitWidth: root.portrait ? 600 : root.thickness

    Grid {
        id: grid
        columns: root.portrait ? root.names.length : 1
        columnSpacing: Theme.space1
        rowSpacing: Theme.space2
        x: root.portrait ? (root.width - width) / 2 : (root.width - width) / 2
        y: root.portrait ? (root.height - height) / 2 : Theme.space4

        Repeater {
            id: buttons
            model: root.names

            RailButton {
                id: button

                required property int index
                required property string modelData

                activeFocusOnTab: button.current
                attention: root.attention[button.index] ?? 0
                current: button.index === root.current
                height: root.portrait ? 80 : Math.min(96, (root.height - 2 * Theme.space4) / root.names.length - Theme.space2)
                iconName: root.drawings[button.index]
                text: button.modelData
                width: root.portrait ? Math.min(132, (root.width - 5 * Theme.space1 - 2 * Theme.space2) / root.names.length) : root.thickness - 16

                Keys.onPressed: event => {
                    const back = root.portrait ? Qt.Key_Left : Qt.Key_Up;
                    const forward = root.portrait ? Qt.Key_Right : Qt.Key_Down;
                    event.accepted = true;
                    if (event.key === back)
                        root.focusAt(button.index - 1);
                    else if (event.key === forward)
                        root.focusAt(button.index + 1);
                    else if (event.key === Qt.Key_Home)
                        root.focusAt(0);
                    else if (event.key === Qt.Key_End)
                        root.focusAt(root.names.length - 1);
                    else if (event.key === Qt.Key_Return || event.key === Qt.Key_Enter)
                        root.picked(button.index);
                    else
                        event.accepted = false;
                }
                onClicked: root.picked(button.index)

                Shortcut {
                    sequence: "Ctrl+" + (button.index + 1)
                    onActivated: root.picked(button.index)
                }
            }
        }
    }
}
