pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The order lists that are kept: ordered, part arrived, arrived, late; and last month's against what happened.
Sheet {
    id: root

    objectName: "keptSheet"
    title: qsTr("Order lists")

    OrderKeptController {
        id: controller
        objectName: "orderKeptController"
        services: AppServices
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: controller.rows.count > 0 ? qsTr("What you book in under Arrivals closes the line it was ordered on.") : qsTr("No list is kept yet. Keep one from the foot of the Order screen, then say here what was ordered.")
        visible: controller.loaded
    }

    Repeater {
        model: controller.rows

        OrderKeptRow {
            id: row

            required property string key

            Layout.fillWidth: true
            objectName: "kept_" + row.kind
            onClosedRest: controller.close(row.key)
            onCounted: direction => controller.count(row.key, direction)
            onOrdered: controller.ordered(row.key)
            onRecalled: controller.recall(row.key)
        }
    }
}
