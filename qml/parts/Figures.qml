pragma ComponentBehavior: Bound

import QtQuick
import Gluewright.Ui

// One line of text in which every digit stands in a cell of the same width, so that columns of numbers align.
// Qt can ask a font for its tabular figures only from 6.6 on; the cells do it on every version and with every font.
Row {
    id: root

    property string text
    property int size: Theme.textBody
    property bool strong: false
    property color color: Theme.ink

    // Digits one by one, what stands between them in one piece so that kerning and joining survive there.
    readonly property list<string> pieces: root.text.match(/[0-9]|[^0-9]+/g) ?? []

    // Figures run from left to right in every script.
    layoutDirection: Qt.LeftToRight
    LayoutMirroring.enabled: false

    Accessible.role: Accessible.StaticText
    Accessible.name: root.text

    FontMetrics {
        id: metrics
        font.family: Theme.fontFamily
        font.pixelSize: root.size
        font.weight: root.strong ? Font.DemiBold : Font.Normal
    }

    Repeater {
        model: root.pieces

        Text {
            required property string modelData
            readonly property bool digit: modelData.length === 1 && modelData >= "0" && modelData <= "9"

            Accessible.ignored: true
            color: root.color
            font: metrics.font
            horizontalAlignment: Text.AlignHCenter
            text: modelData
            textFormat: Text.PlainText
            width: digit ? root.cell : implicitWidth
        }
    }

    readonly property real cell: Math.max(metrics.advanceWidth("0"), metrics.advanceWidth("4"), metrics.advanceWidth("8"))
}
