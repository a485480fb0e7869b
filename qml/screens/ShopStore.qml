import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The store: where it is, and whether everything in it holds.
Card {
    id: root

    required property ShopSettingsController controller

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Store")
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "storeWhere"
        text: root.controller.storeWhere
        wrapMode: Text.WrapAnywhere
    }

    NumberLine {
        Layout.fillWidth: true
        label: root.controller.storeEngine
        value: root.controller.storeSize
    }

    VerdictBadge {
        Layout.fillWidth: true
        note: root.controller.verifyText
        objectName: "verifyResult"
        verdict: root.controller.verifyVerdict
        visible: root.controller.verifyVerdict.length > 0
    }

    ReasonList {
        Layout.fillWidth: true
        reasons: root.controller.problems
        visible: root.controller.problems.length > 0
    }

    PlainButton {
        enabled: !root.controller.verifying
        iconName: "check"
        objectName: "verifyButton"
        text: root.controller.verifying ? qsTr("Looking…") : qsTr("Verify the store")
        onClicked: root.controller.verify()
    }
}
