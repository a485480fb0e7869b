pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What a place is taken to be where nobody watched: a range for the year or for each quarter, and a place it follows.
Sheet {
    id: root

    required property string place

    function begin() {
        climate.draftOf(root.place);
        root.open();
    }

    objectName: "climateSheet"
    title: qsTr("What is assumed here")

    PlaceClimateController {
        id: climate
        objectName: "placeClimateController"
        services: AppServices
        onSaved: root.close()
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: climate.errorText
        visible: climate.errorText.length > 0
        onDismissed: climate.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        quiet: true
        text: qsTr("It counts only for times nobody watched, and what it allows counts as though it may have happened. If the place can freeze at all, let the lowest say so.")
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: climate.follows
        hint: qsTr("A place with a logger that gets warm and cold together with this one.")
        label: qsTr("It follows")
        objectName: "followsPicker"
        options: climate.places
        onPicked: index => climate.follows = index
    }

    Stepper {
        Layout.fillWidth: true
        from: -40
        hint: qsTr("Below zero when it is colder here than there.")
        label: qsTr("Warmer here by")
        suffix: climate.unit
        to: 40
        value: climate.warmer
        visible: climate.follows > 0
        onChanged: value => climate.warmer = value
    }

    Stepper {
        Layout.fillWidth: true
        from: 0
        hint: qsTr("How much of the swing from day to night does not come through: 0 % outside, more behind thick walls.")
        label: qsTr("Damped by")
        step: 10
        suffix: "%"
        to: 100
        value: climate.damped
        visible: climate.follows > 0
        onChanged: value => climate.damped = value
    }

    Repeater {
        model: climate.spans

        ColumnLayout {
            id: span

            required property int index
            required property string modelData
            readonly property bool known: climate.known[span.index] ?? false

            Layout.fillWidth: true
            spacing: Theme.space2

            ToggleRow {
                Layout.fillWidth: true
                checked: span.known
                note: span.index > 0 && !span.known ? qsTr("As the whole year") : ""
                objectName: "spanToggle" + span.index
                text: span.modelData
                onToggled: climate.setKnown(span.index, !span.known)
            }

            GridLayout {
                Layout.fillWidth: true
                columnSpacing: Theme.space3
                columns: root.over && root.over.width < 600 ? 1 : 2
                visible: span.known

                Stepper {
                    Layout.fillWidth: true
                    from: climate.coldest
                    label: qsTr("Lowest")
                    objectName: "spanLow" + span.index
                    suffix: climate.unit
                    to: climate.warmest
                    value: climate.lows[span.index] ?? 0
                    onChanged: value => climate.setLow(span.index, value)
                }

                Stepper {
                    Layout.fillWidth: true
                    from: climate.coldest
                    label: qsTr("Highest")
                    objectName: "spanHigh" + span.index
                    suffix: climate.unit
                    to: climate.warmest
                    value: climate.highs[span.index] ?? 0
                    onChanged: value => climate.setHigh(span.index, value)
                }
            }
        }
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: climate.busy
        enabled: !climate.busy
        iconName: "check"
        objectName: "keepClimate"
        text: qsTr("Keep it")
        onClicked: climate.save()
    }
}
