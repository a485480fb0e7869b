import QtQuick
import QtQuick.Shapes
import Gluewright.Ui

// How much of something is left or used, as a bar; a mark may show where it is needed to be. A negative level is not
// known and is hatched, never drawn as empty.
Item {
    id: root

    property real level: -1
    property real mark: -1
    property string label
    property string verdict

    readonly property bool levelKnown: root.level >= 0
    readonly property color fill: root.verdict.length > 0 ? Theme.verdictColor(root.verdict) : Theme.edge

    Accessible.name: root.levelKnown ? qsTr("%1: %2 percent").arg(root.label).arg(Math.round(root.level * 100))
                                     : qsTr("%1: not known").arg(root.label)
    Accessible.role: Accessible.ProgressBar
    implicitHeight: 16
    implicitWidth: 200

    Rectangle {
        anchors.fill: parent
        border.color: Theme.edge
        border.width: 1
        color: Theme.sunken
        radius: height / 2
    }

    Rectangle {
        color: root.fill
        height: parent.height - 6
        radius: height / 2
        visible: root.levelKnown && root.level > 0
        width: Math.max(height, (root.width - 6) * Math.min(1, root.level))
        x: root.LayoutMirroring.enabled ? root.width - width - 3 : 3
        y: 3
    }

    Shape {
        id: hatch
        anchors.fill: parent
        anchors.margins: 3
        layer.enabled: GraphicsInfo.api !== GraphicsInfo.Software
        layer.samples: 4
        visible: !root.levelKnown

        ShapePath {
            fillGradient: LinearGradient {
                spread: ShapeGradient.RepeatSpread
                x1: 0
                x2: 6
                y1: 0
                y2: 6

                GradientStop { position: 0; color: Theme.sunken }
                GradientStop { position: 0.7; color: Theme.sunken }
                GradientStop { position: 0.72; color: Theme.inkQuiet }
                GradientStop { position: 1; color: Theme.inkQuiet }
            }
            strokeColor: "transparent"

            startX: hatch.height / 2
            startY: 0

            PathLine { x: hatch.width - hatch.height / 2; y: 0 }
            PathArc { radiusX: hatch.height / 2; radiusY: radiusX; x: hatch.width - hatch.height / 2; y: hatch.height }
            PathLine { x: hatch.height / 2; y: hatch.height }
            PathArc { radiusX: hatch.height / 2; radiusY: radiusX; x: hatch.height / 2; y: 0 }
        }
    }

    Rectangle {
        color: Theme.ink
        height: parent.height + 8
        radius: 1.5
        visible: root.mark >= 0
        width: 3
        x: (root.width - width) * Math.min(1, root.LayoutMirroring.enabled ? 1 - root.mark : root.mark)
        y: -4
    }
}
