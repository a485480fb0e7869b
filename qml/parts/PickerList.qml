pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic as Basic
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// The list a Picker opens: rows of main-target height, a search when there are more than ten.
T.Popup {
    id: root

    property string title
    property list<string> options
    property list<string> notes
    property int currentIndex: -1

    readonly property real needed: 72 + (search.visible ? 68 : 0) + view.contentHeight + 2 * root.padding

    readonly property Item over: T.Overlay.overlay

    signal picked(index: int)

    function take(index: int) {
        root.picked(index);
        root.close();
    }

    anchors.centerIn: root.over
    dim: true
    focus: true
    height: root.over ? Math.min(root.over.height - 2 * Theme.space6, root.needed) : 400
    modal: true
    padding: Theme.space4
    width: root.over ? Math.min(560, root.over.width - 2 * Theme.space5) : 400

    onOpened: {
        search.clear();
        view.currentIndex = root.currentIndex;
        view.positionViewAtIndex(Math.max(0, root.currentIndex), ListView.Center);
        view.forceActiveFocus(Qt.PopupFocusReason);
    }

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
            property string wanted
            Layout.fillWidth: true
            visible: root.options.length > 10
            onEdited: text => search.wanted = text.toLocaleLowerCase()
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
            model: root.options

            Basic.ScrollBar.vertical: SlimScrollBar {}
            Keys.onReturnPressed: root.take(view.currentIndex)

            delegate: PickerRow {
                required property int index
                required property string modelData

                current: ListView.isCurrentItem && view.activeFocus
                note: root.notes[index] ?? ""
                shown: search.wanted.length === 0 || modelData.toLocaleLowerCase().includes(search.wanted)
                taken: index === root.currentIndex
                text: modelData
                width: ListView.view.width

                onClicked: root.take(index)
            }
        }
    }
}
