pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// An empty store: start with one's own places, or look round the invented shop.
ScreenPage {
    id: root

    subtitle: qsTr("Nothing is in this shop yet.")
    title: qsTr("Welcome to Gluewright")

    FirstStartController {
        id: controller
        services: AppServices
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0
        onDismissed: controller.clearError()
    }

    Card {
        Layout.fillWidth: true
        wash: Theme.testFirstWash

        PlainText {
            Layout.fillWidth: true
            size: Theme.textTitle
            strong: true
            text: qsTr("Look round first?")
        }

        PlainText {
            Layout.fillWidth: true
            text: qsTr("The demonstration shop is invented: a restorer's shelf with a year of work behind it. Start your own in another store whenever you like.")
        }

        PlainButton {
            enabled: !controller.busy
            iconName: "shelf"
            text: qsTr("Look round the demonstration shop")
            onClicked: controller.lookRound()
        }
    }

    SectionTitle {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space4
        text: qsTr("Start with an empty shop")
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Where does stock stand? The temperatures are assumptions until somebody measures: they say how cold and how warm each place is taken to get over a year, and what nobody measured counts as though it had happened. Change them to what you know.")
    }

    Repeater {
        model: controller.count

        PlaceRow {
            id: row

            required property int index

            Layout.fillWidth: true
            chosen: controller.chosen[row.index]
            degreeUnit: controller.degreeUnit
            high: controller.highs[row.index]
            low: controller.lows[row.index]
            name: controller.names[row.index]
            wide: !root.portrait
            onChosenEdited: chosen => controller.setChosen(row.index, chosen)
            onHighEdited: degrees => controller.setHigh(row.index, degrees)
            onLowEdited: degrees => controller.setLow(row.index, degrees)
            onNameEdited: name => controller.setName(row.index, name)
        }
    }

    RowLayout {
        Layout.fillWidth: true
        Layout.topMargin: Theme.space3
        spacing: Theme.space4

        PlainButton {
            iconName: "add"
            text: qsTr("Another place")
            onClicked: controller.addPlace()
        }

        Item {
            Layout.fillWidth: true
        }

        BigButton {
            busy: controller.busy
            enabled: controller.canStart && !controller.busy
            iconName: "check"
            text: qsTr("Start the shop")
            onClicked: controller.startEmpty()
        }
    }
}
