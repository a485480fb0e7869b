import QtQuick
import QtQuick.Shapes
import QtMultimedia
import Gluewright.Backend
import Gluewright.Ui

// What the camera sees. The symbol it reads is outlined where it stands; when a code was read the picture holds still
// for a moment under a tick. The camera runs only while one of these is in sight.
Rectangle {
    id: root

    property bool wanted: true
    readonly property LabelCamera camera: AppServices.scanner.camera
    readonly property bool inSight: root.wanted && root.visible
    readonly property bool looking: root.camera.state === LabelCamera.Looking || root.camera.state === LabelCamera.Held
    readonly property bool asleep: root.camera.state === LabelCamera.Resting || root.camera.state === LabelCamera.Trouble

    function follow() {
        if (root.inSight)
            root.camera.show(picture.videoSink);
        else
            root.camera.leave(picture.videoSink);
    }

    // A corner of the symbol, from its share of the picture to its place here.
    function corner(index: int): point {
        const shown = picture.contentRect;
        const share = root.camera.outline[index];
        return Qt.point(shown.x + share.x * shown.width, shown.y + share.y * shown.height);
    }

    Accessible.name: qsTr("Camera picture")
    Accessible.role: Accessible.Graphic
    clip: true
    color: Theme.walnut
    implicitHeight: 330
    implicitWidth: 440
    radius: Theme.radius

    Component.onCompleted: root.follow()
    Component.onDestruction: root.camera.leave(picture.videoSink)
    onInSightChanged: root.follow()

    VideoOutput {
        id: picture
        anchors.fill: parent
        anchors.margins: 2
        fillMode: VideoOutput.PreserveAspectFit
        visible: root.looking
    }

    Shape {
        anchors.fill: picture
        visible: root.looking && root.camera.outline.length > 3

        ShapePath {
            fillColor: "transparent"
            joinStyle: ShapePath.RoundJoin
            strokeColor: Theme.amber
            strokeWidth: 5

            PathPolyline {
                path: root.camera.outline.length > 3 ? [root.corner(0), root.corner(1), root.corner(2), root.corner(3), root.corner(0)] : []
            }
        }
    }

    // Where to hold the label, until there is one.
    Shape {
        id: frame

        readonly property real side: Math.min(root.width, root.height) * 0.62
        readonly property real arm: 28

        anchors.centerIn: parent
        height: frame.side
        opacity: 0.75
        visible: root.camera.state === LabelCamera.Looking && root.camera.outline.length === 0
        width: frame.side

        ShapePath {
            capStyle: ShapePath.RoundCap
            fillColor: "transparent"
            joinStyle: ShapePath.RoundJoin
            strokeColor: Theme.walnutInk
            strokeWidth: 4

            PathMultiline {
                paths: [
                    [Qt.point(0, frame.arm), Qt.point(0, 0), Qt.point(frame.arm, 0)],
                    [Qt.point(frame.side - frame.arm, 0), Qt.point(frame.side, 0), Qt.point(frame.side, frame.arm)],
                    [Qt.point(frame.side, frame.side - frame.arm), Qt.point(frame.side, frame.side), Qt.point(frame.side - frame.arm, frame.side)],
                    [Qt.point(frame.arm, frame.side), Qt.point(0, frame.side), Qt.point(0, frame.side - frame.arm)]
                ]
            }
        }
    }

    Rectangle {
        id: tick
        objectName: "tick"
        anchors.centerIn: parent
        color: Theme.goodWash
        height: 104
        opacity: root.camera.state === LabelCamera.Held ? 1 : 0
        radius: width / 2
        scale: root.camera.state === LabelCamera.Held ? 1 : 0.6
        visible: opacity > 0
        width: 104

        Behavior on opacity {
            NumberAnimation {
                duration: Theme.quick
            }
        }

        Behavior on scale {
            NumberAnimation {
                duration: Theme.move
                easing.type: Easing.OutBack
            }
        }

        Icon {
            anchors.centerIn: parent
            color: Theme.good
            name: "check"
            size: 72
        }
    }

    Column {
        anchors.centerIn: parent
        spacing: Theme.space3
        visible: !root.looking
        width: parent.width - 2 * Theme.space5

        Icon {
            anchors.horizontalCenter: parent.horizontalCenter
            color: Theme.walnutInkQuiet
            name: "camera"
            size: 56
            visible: root.height > 150
        }

        PlainText {
            objectName: "words"
            Accessible.name: text
            Accessible.role: Accessible.StaticText
            color: Theme.walnutInk
            horizontalAlignment: Text.AlignHCenter
            text: root.camera.state === LabelCamera.Trouble ? root.camera.trouble : root.camera.state === LabelCamera.Resting ? qsTr("The camera is resting. Tap here to look again.") : qsTr("Starting the camera…")
            width: parent.width
        }
    }

    TapHandler {
        enabled: root.asleep || root.camera.canFocus
        onTapped: {
            if (root.asleep)
                root.camera.wake();
            else
                root.camera.focus();
        }
    }

    ViewfinderKnobs {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Theme.space3
        anchors.right: parent.right
        anchors.rightMargin: Theme.space3
        camera: root.camera
        visible: root.inSight
    }
}
