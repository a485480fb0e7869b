import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The first label dot by dot as the printer puts it, on white paper in any light, and how many there are.
ColumnLayout {
    id: root

    required property LabelController controller

    spacing: Theme.space2

    Rectangle {
        Layout.fillWidth: true
        Layout.preferredHeight: Math.min(240, width * 0.55)
        border.color: Theme.line
        border.width: 1
        color: Theme.paper
        radius: Theme.radius

        Rectangle {
            anchors.centerIn: parent
            border.color: Theme.edge
            border.width: 1
            color: "white"
            height: picture.paintedHeight + 2
            visible: picture.paintedWidth > 0
            width: picture.paintedWidth + 2
        }

        LabelPicture {
            id: picture
            Accessible.name: qsTr("Label: %1").arg(root.controller.previewWords)
            Accessible.role: Accessible.Graphic
            anchors.fill: parent
            anchors.margins: Theme.space4
            image: root.controller.preview
            objectName: "labelPreview"
        }
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "labelSummary"
        quiet: true
        text: root.controller.summary
    }
}
