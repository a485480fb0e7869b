import QtQuick
import Gluewright.Ui

// A drawing and a word or two, centred together: what stands inside a button.
Item {
    id: root

    property string iconName
    property string text
    property int textSize: Theme.textBody
    property bool bold: false
    property color ink: Theme.ink

    readonly property int iconRoom: root.iconName.length > 0 ? icon.size + Theme.space2 : 0

    implicitHeight: Math.max(words.implicitHeight, root.iconName.length > 0 ? icon.size : 0)
    implicitWidth: root.iconRoom + Math.ceil(measure.advanceWidth) + 1

    TextMetrics {
        id: measure
        font: words.font
        text: root.text
    }

    Row {
        anchors.centerIn: parent
        spacing: Theme.space2

        Icon {
            id: icon
            anchors.verticalCenter: parent.verticalCenter
            color: root.ink
            name: root.iconName
            size: root.bold ? 28 : 24
            visible: root.iconName.length > 0
        }

        Text {
            id: words
            Accessible.ignored: true
            anchors.verticalCenter: parent.verticalCenter
            color: root.ink
            elide: Text.ElideRight
            font.family: Theme.fontFamily
            font.pixelSize: root.textSize
            font.weight: root.bold ? Font.Bold : Font.DemiBold
            horizontalAlignment: Text.AlignHCenter
            maximumLineCount: 2
            text: root.text
            textFormat: Text.PlainText
            width: Math.min(Math.ceil(measure.advanceWidth) + 1, Math.max(0, root.width - root.iconRoom))
            wrapMode: Text.WordWrap
        }
    }
}
