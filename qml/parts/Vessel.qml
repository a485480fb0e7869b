import QtQuick
import QtQuick.Shapes
import Gluewright.Ui

// A container as it looks on the shelf, filled to what is left. A negative level says that nobody knows how much is in
// it: then the whole body is hatched.
Item {
    id: root

    property string shape: "bottle"
    property real level: -1
    property color contents: Theme.contentsColor("unknown")
    property bool dimmed: false

    readonly property bool levelKnown: root.level >= 0
    // A sixty-fourth is finer than the eye reads here, and keeps the number of different gradients small.
    readonly property real drawn: Math.round(Math.max(0, Math.min(1, root.level)) * 64) / 64
    readonly property real unit: Math.min(root.width / 72, root.height / 108)

    Accessible.role: Accessible.Graphic
    Accessible.name: root.levelKnown ? qsTr("%1 percent left").arg(Math.round(root.drawn * 100)) : qsTr("Amount not known")
    implicitHeight: 108
    implicitWidth: 72
    opacity: root.dimmed ? 0.5 : 1

    // Shapes have no smooth edges of their own before Qt 6.6; the layer gives them.
    // The software renderer smooths by itself and knows no layers.
    layer.enabled: GraphicsInfo.api !== GraphicsInfo.Software
    layer.samples: 4
    layer.smooth: true

    VesselPaths {
        id: paths
        shape: root.shape
    }

    Shape {
        id: drawing

        property LinearGradient filling: LinearGradient {
            x1: 0
            x2: 0
            y1: paths.top
            y2: paths.foot

            GradientStop { position: 0; color: Theme.glass }
            GradientStop { position: Math.max(0, 1 - root.drawn - 0.02); color: Theme.glass }
            GradientStop { position: Math.max(0, 1 - root.drawn - 0.019); color: root.drawn > 0 ? Theme.vesselEdge : Theme.glass }
            GradientStop { position: 1 - root.drawn; color: root.drawn > 0 ? Theme.vesselEdge : Theme.glass }
            GradientStop { position: Math.min(1, 1 - root.drawn + 0.001); color: root.drawn > 0 ? root.contents : Theme.glass }
            GradientStop { position: 1; color: root.drawn > 0 ? root.contents : Theme.glass }
        }

        property LinearGradient hatching: LinearGradient {
            spread: ShapeGradient.RepeatSpread
            x1: 0
            x2: 7
            y1: 0
            y2: 7

            GradientStop { position: 0; color: Theme.glass }
            GradientStop { position: 0.78; color: Theme.glass }
            GradientStop { position: 0.8; color: Theme.inkQuiet }
            GradientStop { position: 1; color: Theme.inkQuiet }
        }

        height: 108
        width: 72
        transform: [
            Scale { xScale: root.unit; yScale: root.unit },
            Translate { x: (root.width - 72 * root.unit) / 2; y: (root.height - 108 * root.unit) / 2 }
        ]

        ShapePath {
            fillColor: Theme.glass
            fillGradient: root.levelKnown ? drawing.filling : drawing.hatching
            joinStyle: ShapePath.RoundJoin
            strokeColor: Theme.vesselEdge
            strokeWidth: 2.5

            PathSvg { path: paths.body }
        }

        ShapePath {
            fillColor: Theme.card
            joinStyle: ShapePath.RoundJoin
            strokeColor: Theme.vesselEdge
            strokeWidth: 2.5

            PathSvg { path: paths.lid }
        }

        ShapePath {
            capStyle: ShapePath.RoundCap
            fillColor: "transparent"
            strokeColor: Theme.vesselEdge
            strokeWidth: 1.6

            PathSvg { path: paths.lines }
        }
    }
}
