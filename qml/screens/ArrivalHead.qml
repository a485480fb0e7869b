pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What the code and the shop say of it already.
Card {
    id: root

    required property ArrivalController controller
    readonly property ArrivalForm form: root.controller.form

    PlainButton {
        id: changeButton
        parent: root
        objectName: "change"
        anchors.right: parent.right
        anchors.rightMargin: Theme.space3
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        flat: true
        iconName: "edit"
        text: qsTr("Change")
        visible: !root.form.isNew && !root.form.changing
        onClicked: root.form.changing = true
    }

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space5

        Vessel {
            Accessible.ignored: true
            Layout.alignment: Qt.AlignTop
            Layout.preferredHeight: 126
            Layout.preferredWidth: 84
            contents: Theme.contentsColor(root.form.contents)
            level: root.form.className.length > 0 ? 1 : -1
            shape: root.form.shape
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: Theme.space1

            PlainText {
                objectName: "headName"
                Accessible.name: text
                Accessible.role: Accessible.Heading
                Layout.fillWidth: true
                size: Theme.textTitle
                strong: true
                rightPadding: root.form.isNew || root.form.changing ? 0 : changeButton.width
                text: root.form.name.length > 0 ? root.form.name : root.controller.codeText.length > 0 ? qsTr("A product that is new here") : qsTr("What is it?")
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                text: root.form.className
                visible: text.length > 0 && text !== root.form.name
            }

            Figures {
                objectName: "headAmount"
                Layout.topMargin: Theme.space1
                size: Theme.textTitle
                strong: true
                text: root.form.amountWords
                visible: text.length > 0
            }

            Repeater {
                model: root.form.facts

                PlainText {
                    required property string modelData

                    Layout.fillWidth: true
                    size: Theme.textStrong
                    text: modelData
                }
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: qsTr("Number %1").arg(root.controller.codeText)
                visible: root.controller.codeText.length > 0
                wrapMode: Text.Wrap
            }
        }
    }

    Repeater {
        model: root.controller.warnings

        PlainText {
            required property string modelData

            Layout.fillWidth: true
            quiet: true
            text: modelData
        }
    }

    VerdictBadge {
        objectName: "caution"
        Layout.fillWidth: true
        note: root.form.caution
        verdict: "do_not_use"
        visible: root.form.caution.length > 0
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: root.controller.say
        visible: root.form.isNew || root.controller.say !== qsTr("%1: book it in?").arg(root.form.name)
    }
}
