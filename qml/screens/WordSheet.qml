import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// An act with a reason: one of the usual words by one press, or one's own.
Sheet {
    id: root

    required property ContainerActs acts
    property string label
    property string hint
    property list<string> words
    property string actText
    property string actIcon
    property string why

    signal taken(why: string)

    function begin() {
        root.why = "";
        root.open();
    }

    PlainText {
        Layout.fillWidth: true
        text: root.hint
    }

    ChoiceRow {
        Layout.fillWidth: true
        currentIndex: root.words.indexOf(root.why)
        label: root.label
        options: root.words
        onPicked: index => root.why = root.words[index]
    }

    Field {
        Layout.fillWidth: true
        label: qsTr("Or in your own words")
        text: root.words.includes(root.why) ? "" : root.why
        onEdited: text => root.why = text
    }

    Banner {
        Layout.fillWidth: true
        dismissable: false
        kind: "error"
        text: root.acts.errorText
        visible: root.acts.errorText.length > 0
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: root.acts.busy
        enabled: root.why.trim().length > 0 && !root.acts.busy
        iconName: root.actIcon
        text: root.actText
        onClicked: root.taken(root.why)
    }
}
