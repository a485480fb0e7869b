pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What a container is, and what happened to it, newest first, each with a way to take it back.
ScrollColumn {
    id: root

    required property ContainerController controller
    required property ContainerSheets sheets
    required property LifePictureController picture
    property bool withVerdict: false

    margin: Theme.space3

    ContainerJudged {
        controller: root.controller
        sheets: root.sheets
        visible: root.withVerdict
    }

    ContainerWhat {
        Layout.fillWidth: true
        controller: root.controller
    }

    LabelPhotoCard {
        Layout.fillWidth: true
        container: root.controller.container
    }

    ContainerPicture {
        Layout.fillWidth: true
        controller: root.picture
        visible: root.withVerdict
    }

    SectionTitle {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space3
        text: qsTr("What happened")
    }

    ColumnLayout {
        Accessible.name: qsTr("What happened")
        Accessible.role: Accessible.List
        Layout.fillWidth: true
        spacing: 0

        Repeater {
            model: root.controller.entries

            EntryRow {
                Layout.fillWidth: true
                onUndoWanted: key => AppServices.undo(key)
            }
        }
    }

    PlainButton {
        flat: true
        iconName: "down"
        text: qsTr("Show everything that happened")
        visible: root.controller.moreEntries
        onClicked: root.controller.showAllEntries()
    }
}
