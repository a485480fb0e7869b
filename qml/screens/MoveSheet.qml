pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Where a container goes: one press on the place is the act.
Sheet {
    id: root

    required property ContainerActs acts
    required property list<string> places
    required property string standsIn

    title: qsTr("Move it")

    PlainText {
        Layout.fillWidth: true
        text: root.standsIn.length > 0 ? qsTr("It stands in %1. What it lived through there stays with it.").arg(root.standsIn) : qsTr("Where it stands is not known.")
    }

    Banner {
        Layout.fillWidth: true
        dismissable: false
        kind: "error"
        text: root.acts.errorText
        visible: root.acts.errorText.length > 0
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: Theme.space2

        Repeater {
            model: root.places

            ListRow {
                required property string modelData

                Layout.fillWidth: true
                enabled: !root.acts.busy
                iconName: "shelf"
                title: modelData
                onClicked: root.acts.move(modelData)
            }
        }
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("Other places are made under Shop.")
    }
}
