pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Which glue for this joint: every family, best first, with its reasons.
Sheet {
    id: root

    required property GlueUpController controller

    objectName: "gluesSheet"
    title: qsTr("Which glue?")

    onOpenedChanged: {
        if (root.opened)
            root.controller.findGlues();
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "gluesNote"
        quiet: true
        text: root.controller.gluesNote
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Say the joint and the piece first: without them little can be told apart.")
        visible: root.controller.more.count === 0
    }

    Repeater {
        model: root.controller.glues

        GlueUpGlueRow {
            required property string key

            Layout.fillWidth: true
            objectName: "glue_" + key
        }
    }
}
