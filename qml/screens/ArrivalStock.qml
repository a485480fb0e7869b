pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The first stock-taking: the shelf that is walked along, how full the one in hand is, and all that was taken so far.
ScrollColumn {
    id: root

    required property ArrivalController controller
    readonly property ArrivalForm form: root.controller.form

    footRoom: Theme.space7 * 2
    spacing: Theme.space4

    Banner {
        objectName: "stockError"
        Layout.fillWidth: true
        kind: "error"
        text: root.controller.errorText
        visible: root.controller.errorText.length > 0
        onDismissed: root.controller.clearError()
    }

    ChoiceRow {
        objectName: "shelfPlaces"
        Layout.fillWidth: true
        currentIndex: root.controller.shelfAt
        hint: root.controller.shelfAt < 0 ? qsTr("Without one, each bottle is asked for.") : ""
        label: qsTr("Which shelf?")
        options: root.form.places.slice(0, -2)
        onPicked: index => root.controller.setShelf(index)
    }

    Card {
        objectName: "fill"
        Layout.fillWidth: true
        visible: root.controller.asksFill

        ArrivalHead {
            Layout.fillWidth: true
            controller: root.controller
            edge: "transparent"
            padding: 0
            wash: "transparent"
        }

        PlainText {
            Layout.fillWidth: true
            strong: true
            text: qsTr("How full is it?")
        }

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.space2

            Repeater {
                model: [
                    {
                        share: 1,
                        word: qsTr("Full")
                    },
                    {
                        share: 0.75,
                        word: qsTr("Three quarters")
                    },
                    {
                        share: 0.5,
                        word: qsTr("Half")
                    },
                    {
                        share: 0.25,
                        word: qsTr("A quarter")
                    }
                ]

                FillTile {
                    required property var modelData

                    Layout.fillWidth: true
                    contents: Theme.contentsColor(root.form.contents)
                    level: modelData.share
                    objectName: "fill-" + modelData.share
                    shape: root.form.shape
                    text: modelData.word
                    onClicked: root.controller.bookInFilled(modelData.share)
                }
            }
        }

        PlainButton {
            objectName: "skip"
            flat: true
            text: qsTr("Put it aside")
            onClicked: root.controller.putAside()
        }
    }

    Banner {
        objectName: "stockUnusable"
        Layout.fillWidth: true
        hint: root.controller.codeText
        kind: "warning"
        text: root.controller.say
        visible: root.controller.state === ArrivalController.Unusable
        onDismissed: root.controller.putAside()
    }

    BookedCard {
        objectName: "stockBooked"
        Layout.fillWidth: true
        controller: root.controller
        visible: root.controller.state === ArrivalController.Booked
    }

    SectionTitle {
        objectName: "taken"
        Layout.fillWidth: true
        note: root.controller.takenWords
        text: qsTr("Taken so far")
    }

    Repeater {
        model: root.controller.taken

        ArrivalLine {
            Layout.fillWidth: true
        }
    }
}
