import QtQuick
import Gluewright.Ui

// Our sign: two boards and a glue line. Closed tight is good, a gap showing is test first, split apart is do not use,
// outlines only is not known. Shown with its word beside it wherever there is room for one.
Item {
    id: root

    property string verdict
    property int size: 48

    readonly property string drawing: {
        switch (root.verdict) {
        case "good": return "good";
        case "test_first": return "test-first";
        case "do_not_use": return "do-not-use";
        default: return "not-known";
        }
    }

    Accessible.role: Accessible.Graphic
    Accessible.name: Theme.verdictWord(root.verdict)
    implicitHeight: root.size
    implicitWidth: root.size

    Image {
        objectName: "drawing"
        anchors.centerIn: parent
        height: root.size
        source: Qt.resolvedUrl("../icons/" + root.drawing + (Theme.dark ? "-dark.svg" : ".svg"))
        sourceSize.height: root.size
        sourceSize.width: root.size
        width: root.size
    }
}
