pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Controls.Basic as Basic
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Backend
import Gluewright.Ui

// Every kind of work there is, by family of glue, with a search over all of it.
T.Popup {
    id: root

    required property GlueUpController controller

    readonly property Item over: T.Overlay.overlay

    function take(key: string) {
        root.controller.jobType = key;
        root.close();
    }

    anchors.centerIn: root.over
    dim: true
    focus: true
    height: root.over ? root.over.height - 2 * Theme.space5 : 600
    modal: true
    objectName: "jobTypeList"
    padding: Theme.space4
    width: root.over ? Math.min(760, root.over.width - 2 * Theme.space5) : 600

    onClosed: root.controller.search = ""
    onOpened: {
        view.currentIndex = -1;
        view.positionViewAtBeginning();
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
                Accessible.name: text
                Accessible.role: Accessible.Heading
                Layout.fillWidth: true
                Layout.leftMargin: Theme.space3
                size: Theme.textTitle
                strong: true
                text: qsTr("Which work is it?")
            }

            IconButton {
                iconName: "close"
                label: qsTr("Close the list")
                onClicked: root.close()
            }
        }

        SearchField {
            Layout.fillWidth: true
            objectName: "jobTypeSearch"
            placeholder: qsTr("Work, glue or family")
            text: root.controller.search
            onEdited: text => root.controller.search = text
        }

        ListView {
            id: view
            Accessible.name: qsTr("Kinds of work")
            Accessible.role: Accessible.List
            Layout.fillHeight: true
            Layout.fillWidth: true
            boundsBehavior: Flickable.StopAtBounds
            clip: true
            keyNavigationEnabled: true
            model: root.controller.jobs
            objectName: "jobTypes"
            section.property: "family"

            Basic.ScrollBar.vertical: SlimScrollBar {}
            Keys.onReturnPressed: (view.currentItem as GlueUpJobRow)?.taken()

            delegate: GlueUpJobRow {
                required property string key

                current: ListView.isCurrentItem && view.activeFocus
                headed: ListView.section !== ListView.previousSection
                chosen: key === root.controller.jobType
                width: ListView.view.width
                onTaken: root.take(key)
            }
        }

        PlainText {
            Layout.fillWidth: true
            Layout.margins: Theme.space4
            horizontalAlignment: Text.AlignHCenter
            quiet: true
            text: qsTr("No kind of work is called like that.")
            visible: root.controller.jobs.count === 0
        }
    }
}
