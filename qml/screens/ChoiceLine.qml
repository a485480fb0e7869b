import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// One line of a ChoiceList.
T.AbstractButton {
    id: root

    required property string key
    required property string name
    required property string group
    required property string note
    required property string shape
    required property string contents
    property bool current: false
    // The first of its group says which it is.
    property bool headed: false
    readonly property real headRoom: root.headed ? heading.implicitHeight : 0

    Accessible.description: root.note
    Accessible.name: root.name
    Accessible.role: Accessible.ListItem
    implicitHeight: Math.max(Theme.touchMain + Theme.space2, implicitContentHeight + 2 * Theme.space2) + root.headRoom
    leftPadding: Theme.space3
    objectName: "choice-" + root.key
    rightPadding: Theme.space4
    topPadding: root.headRoom

    PlainText {
        id: heading
        bottomPadding: Theme.space1
        color: Theme.accentInk
        leftPadding: Theme.space3
        size: Theme.textSmall
        strong: true
        text: root.group
        topPadding: Theme.space4
        visible: root.headed
        width: root.width
    }

    background: Rectangle {
        anchors.fill: parent
        anchors.topMargin: root.topPadding
        border.color: Theme.focus
        border.width: root.current ? 3 : 0
        color: root.down ? Theme.testFirstWash : "transparent"
        radius: Theme.radiusSmall

        Rectangle {
            anchors.bottom: parent.bottom
            color: Theme.line
            height: 1
            width: parent.width
        }
    }

    contentItem: RowLayout {
        spacing: Theme.space4

        Vessel {
            Accessible.ignored: true
            Layout.preferredHeight: 54
            Layout.preferredWidth: 36
            contents: Theme.contentsColor(root.contents)
            level: 0.8
            shape: root.shape
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                size: Theme.textStrong
                text: root.name
            }

            PlainText {
                Accessible.ignored: true
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: root.note
                visible: root.note.length > 0
            }
        }
    }
}
