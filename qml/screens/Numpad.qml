pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// Keys for a number, each a main target: a shop tablet has no keyboard, and a dusty thumb no patience.
GridLayout {
    id: root

    property string text
    readonly property string decimalMark: Qt.locale().decimalPoint
    readonly property list<string> keys: ["7", "8", "9", "4", "5", "6", "1", "2", "3", root.decimalMark, "0", "⌫"]

    signal edited(text: string)

    function press(key: string) {
        if (key === "⌫")
            root.edited(root.text.slice(0, -1));
        else if (key !== root.decimalMark)
            root.edited(root.text + key);
        else if (!root.text.includes(key))
            root.edited((root.text.length > 0 ? root.text : "0") + key);
    }

    columnSpacing: Theme.space2
    columns: 3
    rowSpacing: Theme.space2

    Repeater {
        model: root.keys

        T.AbstractButton {
            id: key

            required property string modelData
            readonly property bool wipes: key.modelData === "⌫"

            Accessible.name: key.wipes ? qsTr("Take the last digit away") : key.modelData
            Accessible.role: Accessible.Button
            autoRepeat: key.wipes
            focusPolicy: Qt.NoFocus
            Layout.fillWidth: true
            implicitHeight: Theme.touchMain
            onClicked: root.press(key.modelData)

            background: Rectangle {
                border.color: Theme.line
                border.width: 1
                color: key.down ? Theme.testFirstWash : Theme.card
                radius: Theme.radius
            }

            contentItem: Item {
                PlainText {
                    Accessible.ignored: true
                    anchors.centerIn: parent
                    size: Theme.textTitle
                    strong: true
                    text: key.modelData
                    visible: !key.wipes
                }

                Icon {
                    anchors.centerIn: parent
                    name: "erase"
                    visible: key.wipes
                }
            }
        }
    }
}
