import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// A date typed as year-month-day or stepped by day, month or year; or openly not known, which is an answer too.
// `today` is handed in: it is where stepping starts when nothing is written yet.
FieldFrame {
    id: root

    property string text
    property bool known: true
    property bool unknownAllowed: true
    property string today

    // What the buttons step: 0 day, 1 month, 2 year.
    property int stepKind: 1

    signal edited(text: string)
    signal knownPicked(known: bool)

    // A month or year step keeps the day where that month has one, and otherwise takes its last day.
    function stepped(direction: int): string {
        const start = /^(\d{4})-(\d{2})-(\d{2})$/.exec(root.text) ?? /^(\d{4})-(\d{2})-(\d{2})$/.exec(root.today);
        if (start === null)
            return root.text;
        const months = root.stepKind === 0 ? 0 : root.stepKind === 1 ? direction : 12 * direction;
        const year = Number(start[1]);
        const month = Number(start[2]) - 1 + months;
        const lastDay = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
        const day = Math.min(Number(start[3]), lastDay) + (root.stepKind === 0 ? direction : 0);
        return new Date(Date.UTC(year, month, day)).toISOString().slice(0, 10);
    }

    RowLayout {
        spacing: Theme.space2
        width: parent.width
        visible: root.known

        IconButton {
            Layout.preferredHeight: 56
            Layout.preferredWidth: 56
            iconName: "minus"
            label: [qsTr("A day earlier"), qsTr("A month earlier"), qsTr("A year earlier")][root.stepKind]
            outlined: true

            onClicked: root.edited(root.stepped(-1))
        }

        TextBox {
            id: box
            Accessible.description: root.spokenHelp
            Accessible.name: root.spokenName
            Layout.fillWidth: true
            edgeColor: root.boxEdge
            horizontalAlignment: TextInput.AlignHCenter
            inputMethodHints: Qt.ImhDate | Qt.ImhNoPredictiveText
            placeholderText: qsTr("year-month-day")

            Keys.onDownPressed: root.edited(root.stepped(-1))
            Keys.onUpPressed: root.edited(root.stepped(1))
            onTextEdited: root.edited(box.text)

            Binding on text {
                value: root.text
            }
        }

        IconButton {
            Layout.preferredHeight: 56
            Layout.preferredWidth: 56
            iconName: "add"
            label: [qsTr("A day later"), qsTr("A month later"), qsTr("A year later")][root.stepKind]
            outlined: true

            onClicked: root.edited(root.stepped(1))
        }
    }

    Item {
        implicitHeight: Theme.touch
        visible: root.known || root.unknownAllowed
        width: parent.width

        Segmented {
            currentIndex: root.stepKind
            label: qsTr("Step by")
            options: [qsTr("Day"), qsTr("Month"), qsTr("Year")]
            visible: root.known

            onPicked: index => root.stepKind = index
        }

        FilterChip {
            objectName: "notKnown"
            checked: !root.known
            text: qsTr("Not known")
            visible: root.unknownAllowed
            x: root.known ? parent.width - width : 0

            onToggled: root.knownPicked(!checked)
        }
    }
}
