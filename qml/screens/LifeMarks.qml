pragma ComponentBehavior: Bound

import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// What happened to a container, each a drawing over the moment it happened; what would stand on another goes up a line.
Item {
    id: root

    required property RowsModel marks
    required property TimeBand band

    readonly property int cell: 30
    readonly property int lines: 3

    implicitHeight: root.cell * root.lines

    // The line each drawing stands in: the lowest on which it has room; the last ones share the top.
    function lineOf(index: int): int {
        const ends = Array(root.lines).fill(-root.cell);
        let line = 0;
        for (let i = 0; i <= index; ++i) {
            const mark = drawings.itemAt(i);
            if (!mark)
                return 0;
            line = ends.findIndex(end => mark.x >= end);
            if (line < 0)
                line = root.lines - 1;
            ends[line] = mark.x + root.cell;
        }
        return line;
    }

    Repeater {
        id: drawings
        model: root.marks

        Item {
            id: mark

            required property int index
            required property real at
            required property string icon
            required property string verdict

            readonly property color ink: mark.verdict.length > 0 ? Theme.verdictColor(mark.verdict) : Theme.ink
            readonly property int line: root.band.plot.width > 0 ? root.lineOf(mark.index) : 0

            height: root.height
            width: root.cell
            x: root.band.xOf(mark.at) - root.cell / 2

            Rectangle {
                anchors.horizontalCenter: parent.horizontalCenter
                color: mark.ink
                height: root.height - y + root.band.plot.y + root.band.plot.height
                opacity: 0.5
                width: 1
                y: drawing.y + root.cell
            }

            Icon {
                id: drawing
                anchors.horizontalCenter: parent.horizontalCenter
                color: mark.ink
                name: mark.icon
                size: root.cell - 4
                y: root.height - (mark.line + 1) * root.cell
            }
        }
    }
}
