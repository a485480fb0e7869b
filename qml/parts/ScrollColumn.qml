import QtQuick
import QtQuick.Controls.Basic as Basic
import QtQuick.Layouts
import Gluewright.Ui

// A column that scrolls when it is longer than its room, and that keeps what has the keyboard in sight.
Flickable {
    id: root

    property int margin: Theme.space6
    property int footRoom: Theme.space6
    property alias spacing: column.spacing
    readonly property real needed: column.implicitHeight + Theme.space3 + root.footRoom
    readonly property Item focused: Window.activeFocusItem

    default property alias content: column.data

    function follow(item: Item) {
        let up = item;
        while (up && up !== column)
            up = up.parent;
        if (!up)
            return;
        const top = item.mapToItem(column, 0, 0).y + column.y - Theme.space6;
        const foot = top + item.height + 2 * Theme.space6;
        if (top < root.contentY)
            root.contentY = Math.max(0, top);
        else if (foot > root.contentY + root.height)
            root.contentY = Math.min(Math.max(0, root.contentHeight - root.height), foot - root.height);
    }

    boundsBehavior: Flickable.StopAtBounds
    clip: true
    contentHeight: root.needed

    Basic.ScrollBar.vertical: SlimScrollBar {}
    onFocusedChanged: if (root.focused) root.follow(root.focused)

    ColumnLayout {
        id: column
        spacing: Theme.space4
        width: root.width - 2 * root.margin
        x: root.margin
        y: Theme.space3
    }
}
