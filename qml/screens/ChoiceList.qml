pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic as Basic
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Backend
import Gluewright.Ui

// A long list over the screen to choose a kind of stuff from, by its picture and its words, in groups and with a search.
// Where something new may be meant, what was typed can be taken as its name.
T.Popup {
    id: root

    required property ChoiceModel choices
    property string title
    property bool allowsNew: false

    readonly property Item over: T.Overlay.overlay

    signal picked(key: string)
    signal newPicked(name: string)

    function take(key: string) {
        root.picked(key);
        root.close();
    }

    anchors.centerIn: root.over
    dim: true
    focus: true
    height: root.over ? root.over.height - 2 * Theme.space5 : 600
    modal: true
    padding: Theme.space4
    width: root.over ? Math.min(640, root.over.width - 2 * Theme.space5) : 400

    onAboutToShow: {
        search.clear();
        root.choices.sought = "";
        view.positionViewAtBeginning();
    }
    onOpened: search.forceActiveFocus(Qt.PopupFocusReason)

    background: Rectangle {
        border.color: Theme.line
        color: Theme.raised
        radius: Theme.radiusLarge
    }

    T.Overlay.modal: Rectangle {
        color: Theme.scrim
    }

    ColumnLayout {
        anchors.fill: parent
        spacing: Theme.space3

        RowLayout {
            Layout.fillWidth: true

            PlainText {
                Accessible.name: text
                Accessible.role: Accessible.Heading
                Layout.fillWidth: true
                size: Theme.textTitle
                strong: true
                text: root.title
            }

            IconButton {
                iconName: "close"
                label: qsTr("Close the list")
                onClicked: root.close()
            }
        }

        SearchField {
            id: search
            objectName: "search"
            Layout.fillWidth: true
            placeholder: root.allowsNew ? qsTr("Search, or type a new name") : qsTr("Search")
            text: root.choices.sought
            onAccepted: if (root.choices.count > 0) view.forceActiveFocus(Qt.TabFocusReason)
            onEdited: text => root.choices.sought = text
        }

        ListView {
            id: view
            Accessible.name: root.title
            Accessible.role: Accessible.List
            Layout.fillHeight: true
            Layout.fillWidth: true
            boundsBehavior: Flickable.StopAtBounds
            clip: true
            keyNavigationEnabled: true
            model: root.choices
            section.property: "group"

            Basic.ScrollBar.vertical: SlimScrollBar {}
            Keys.onReturnPressed: (view.currentItem as ChoiceLine)?.clicked()

            delegate: ChoiceLine {
                current: ListView.isCurrentItem && ListView.view.activeFocus
                headed: ListView.section !== ListView.previousSection
                width: ListView.view.width
                onClicked: root.take(key)
            }
        }

        PlainText {
            Layout.fillWidth: true
            horizontalAlignment: Text.AlignHCenter
            quiet: true
            text: root.allowsNew && root.choices.sought.length === 0 ? qsTr("The shop has not bought anything yet. Type a name to begin.") : qsTr("Nothing here is called that.")
            visible: root.choices.count === 0
        }

        BigButton {
            objectName: "takeNew"
            Layout.fillWidth: true
            iconName: "add"
            text: root.choices.sought.trim().length > 0 ? qsTr("New here: %1").arg(root.choices.sought.trim()) : qsTr("Something new")
            visible: root.allowsNew
            onClicked: {
                root.newPicked(root.choices.sought.trim());
                root.close();
            }
        }
    }
}
