import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// Everything that can be done with a container, under the thumb; the first is what the verdict asks for.
Rectangle {
    id: root

    required property ContainerController controller
    required property ContainerSheets sheets

    readonly property string main: root.controller.mainAct
    readonly property bool live: !root.controller.retired

    color: Theme.card
    implicitHeight: flow.implicitHeight + 2 * Theme.space3
    height: implicitHeight

    Rectangle {
        color: Theme.line
        height: 1
        width: parent.width
    }

    Flow {
        id: flow
        spacing: Theme.space2
        width: parent.width - 2 * Theme.space6
        x: Theme.space6
        y: Theme.space3

        BigButton {
            iconName: root.main === "test" ? "bench-test" : root.main === "retire" ? "retire" : "use"
            objectName: "mainAct"
            text: root.main === "test" ? qsTr("Bench test") : root.main === "retire" ? qsTr("Retire it") : qsTr("Use some")
            visible: root.live
            onClicked: root.main === "test" ? root.sheets.test() : root.main === "retire" ? root.sheets.retire() : root.sheets.use()
        }

        BarButton {
            iconName: "use"
            text: qsTr("Use")
            visible: root.live && root.main !== "use"
            onClicked: root.sheets.use()
        }

        BarButton {
            iconName: "open"
            text: qsTr("Open")
            visible: root.live && !root.controller.opened
            onClicked: root.sheets.openContainer()
        }

        BarButton {
            iconName: "move"
            text: qsTr("Move")
            visible: root.live
            onClicked: root.sheets.move()
        }

        BarButton {
            iconName: "count"
            text: qsTr("Count")
            visible: root.live
            onClicked: root.sheets.count()
        }

        BarButton {
            iconName: "decant"
            text: qsTr("Pour over")
            visible: root.live
            onClicked: root.sheets.decant()
        }

        BarButton {
            iconName: "bench-test"
            text: qsTr("Test")
            visible: root.live && root.main !== "test"
            onClicked: root.sheets.test()
        }

        BarButton {
            iconName: "release"
            text: qsTr("Release lot")
            visible: root.controller.onHold
            onClicked: root.sheets.release()
        }

        BarButton {
            iconName: "hold"
            text: qsTr("Hold lot")
            visible: !root.controller.onHold && root.controller.lot.length > 0
            onClicked: root.sheets.hold()
        }

        BarButton {
            danger: true
            iconName: "retire"
            text: qsTr("Retire")
            visible: root.live && root.main !== "retire"
            onClicked: root.sheets.retire()
        }
    }

    component BarButton: PlainButton {
        height: Theme.touchMain
    }
}
