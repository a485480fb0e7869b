import QtQuick
import Gluewright.Ui

// Running text: wraps, never elides, reads in the theme's ink.
Text {
    id: root

    property bool quiet: false
    property bool strong: false
    property int size: Theme.textBody

    color: root.quiet ? Theme.inkQuiet : Theme.ink
    font.family: Theme.fontFamily
    font.pixelSize: root.size
    font.weight: root.strong ? Font.DemiBold : Font.Normal
    textFormat: Text.PlainText
    wrapMode: Text.WordWrap
}
