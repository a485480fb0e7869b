pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// How much of its life is used, against time; below it the temperature where it stood; and what happened to it.
Card {
    id: root

    required property LifePictureController controller

    spacing: Theme.space3

    SectionTitle {
        Layout.fillWidth: true
        text: qsTr("Life used against time")
    }

    Segmented {
        currentIndex: root.controller.clock
        label: qsTr("Which life")
        options: root.controller.clocks
        visible: root.controller.clocks.length > 1
        onPicked: index => root.controller.clock = index
    }

    PlainText {
        Layout.fillWidth: true
        objectName: "pictureMissing"
        text: root.controller.clock < 0 ? qsTr("Time does not use it up, so there is no life to follow.") : root.controller.missing
        visible: root.controller.loaded && text.length > 0
    }

    Item {
        Layout.fillWidth: true
        implicitHeight: marks.implicitHeight + band.implicitHeight
        visible: root.controller.clock >= 0 && root.controller.life.solid.length > 0

        TimeBand {
            id: band
            chart: root.controller.life
            height: implicitHeight
            objectName: "lifeBand"
            width: parent.width
            y: marks.height
        }

        LifeMarks {
            id: marks
            band: band
            height: implicitHeight
            marks: root.controller.marks
            width: parent.width
        }
    }

    ChartLegend {
        Layout.fillWidth: true
        inks: [Theme.accentInk, Qt.alpha(Theme.accentInk, 0.3), Theme.doNotUse, Theme.inkQuiet]
        lines: [false, false, true, true]
        texts: [qsTr("used, between the least and the most it can be"), qsTr("to come, if it stays where it is"), qsTr("all of its life"), qsTr("today")]
        visible: band.visible
    }

    PlainText {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space2
        strong: true
        text: qsTr("The air where it stood")
        visible: root.controller.loaded
    }

    TimeBand {
        Layout.fillWidth: true
        chart: root.controller.air
        implicitHeight: 190
        ink: Theme.notKnown
        objectName: "airBand"
        visible: root.controller.air.levelsAt.length > 0
    }

    ChartLegend {
        Layout.fillWidth: true
        inks: [Theme.notKnown, Qt.alpha(Theme.notKnown, 0.3), Theme.goodWash]
        lines: [false, false, false]
        texts: root.controller.air.zone.length > 0 ? [qsTr("read"), qsTr("assumed"), qsTr("keep between")] : [qsTr("read"), qsTr("assumed")]
        visible: root.controller.air.levelsAt.length > 0
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        size: Theme.textSmall
        text: root.controller.airNote
        visible: root.controller.loaded
    }

    Banner {
        Layout.fillWidth: true
        actionText: qsTr("Go to the place")
        dismissable: false
        hint: qsTr("Bring in a logger's file, or type what a min/max thermometer shows.")
        objectName: "noReadings"
        text: qsTr("No readings for %1 yet").arg(root.controller.placeName)
        visible: root.controller.loaded && !root.controller.anyWatched && root.controller.place.length > 0
        onActed: AppServices.navigation.openPlace(root.controller.place)
    }

    PlainButton {
        flat: true
        iconName: "thermometer"
        objectName: "placeButton"
        text: qsTr("More of %1").arg(root.controller.placeName)
        visible: root.controller.anyWatched && root.controller.place.length > 0
        onClicked: AppServices.navigation.openPlace(root.controller.place)
    }

    ColumnLayout {
        Accessible.name: qsTr("Marks in the picture")
        Accessible.role: Accessible.List
        Layout.fillWidth: true
        spacing: Theme.space2

        Repeater {
            model: root.controller.marks

            RowLayout {
                id: line

                required property string icon
                required property string text
                required property string when
                required property string verdict

                Accessible.name: qsTr("%1: %2").arg(line.when).arg(line.text)
                Accessible.role: Accessible.ListItem
                Layout.fillWidth: true
                spacing: Theme.space3

                Icon {
                    color: line.verdict.length > 0 ? Theme.verdictColor(line.verdict) : Theme.ink
                    name: line.icon
                    size: 24
                }

                PlainText {
                    Accessible.ignored: true
                    Layout.fillWidth: true
                    text: line.text
                }

                PlainText {
                    Accessible.ignored: true
                    quiet: true
                    size: Theme.textSmall
                    text: line.when
                    wrapMode: Text.NoWrap
                }
            }
        }
    }
}
