pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// How much work of each kind comes in a month: what the list plans for.
Sheet {
    id: root

    objectName: "ratesSheet"
    title: qsTr("Work a month")

    onClosed: controller.keep()

    OrderRatesController {
        id: controller
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
        text: qsTr("How many you expect in a usual month; a half is one every other month. Work of other kinds still counts by what it used.")
    }

    Repeater {
        model: controller.rates

        OrderRateRow {
            required property string key

            Layout.fillWidth: true
            objectName: "rate_" + key
            onStepped: direction => controller.step(key, direction)
            onTyped: text => controller.type(key, text)
        }
    }
}
