import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// Says what was just done and offers to take it back for a while. The while stands still as long as a finger, a
// pointer or the keyboard is on the bar. Put it at the foot of the window; it is only there when it has something to say.
Rectangle {
    id: root

    readonly property alias text: words.text
    property string key
    property bool showing: false
    property alias interval: stay.interval
    readonly property bool held: hover.hovered || tap.pressed || undoButton.activeFocus || closeButton.activeFocus

    signal undo(key: string)
    signal gone(key: string)

    // An empty key says something that cannot be taken back: the bar then carries no Undo.
    function show(text: string, key: string) {
        if (root.showing)
            root.gone(root.key);
        words.text = text;
        root.key = key;
        root.showing = true;
        stay.restart();
    }

    function hide() {
        stay.stop();
        if (!root.showing)
            return;
        root.showing = false;
        root.gone(root.key);
    }

    onHeldChanged: if (root.showing) root.held ? stay.stop() : stay.restart()

    Accessible.name: words.text
    Accessible.role: Accessible.AlertMessage
    border.color: Theme.railMark
    border.width: Theme.dark ? 1 : 0
    color: Theme.walnut
    enabled: root.showing
    implicitHeight: Math.max(Theme.touchMain + Theme.space2, row.implicitHeight + 2 * Theme.space2)
    implicitWidth: 560
    opacity: root.showing ? 1 : 0
    radius: Theme.radius
    visible: opacity > 0

    Behavior on opacity {
        NumberAnimation {
            duration: Theme.quick
        }
    }

    Timer {
        id: stay
        interval: Theme.undoStay
        onTriggered: root.hide()
    }

    HoverHandler {
        id: hover
    }

    TapHandler {
        id: tap
        gesturePolicy: TapHandler.WithinBounds
    }

    RowLayout {
        id: row
        anchors.fill: parent
        anchors.leftMargin: Theme.space5
        anchors.rightMargin: Theme.space2
        spacing: Theme.space3

        PlainText {
            id: words
            Accessible.ignored: true
            Layout.fillWidth: true
            color: Theme.walnutInk
            elide: Text.ElideRight
            maximumLineCount: 3
        }

        UndoButton {
            id: undoButton
            objectName: "undo"
            visible: root.key.length > 0
            onClicked: {
                const key = root.key;
                root.hide();
                root.undo(key);
            }
        }

        IconButton {
            id: closeButton
            iconName: "close"
            ink: Theme.walnutInkQuiet
            label: qsTr("Put this message away")
            onClicked: root.hide()
        }
    }
}
