pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// One place: how warm and cold it was, what nobody watched, and what stands there with what it asks for.
ScreenPage {
    id: root

    required property string place

    canGoBack: true
    subtitle: controller.note
    title: controller.name
    onBack: AppServices.navigation.back()

    PlaceController {
        id: controller
        objectName: "placeController"
        place: root.place
        services: AppServices
    }

    ShopSettingsPlacesController {
        id: names
        services: AppServices
    }

    ShopPlaceSheet {
        id: nameSheet
        controller: names
    }

    PlaceLowHighSheet {
        id: lowHighSheet
        controller: controller
    }

    PlaceImportSheet {
        id: importSheet
        place: root.place
        placeName: controller.name
    }

    PlaceClimateSheet {
        id: climateSheet
        place: root.place
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        text: controller.errorText
        visible: controller.errorText.length > 0 && !lowHighSheet.opened
        onDismissed: controller.clearError()
    }

    Flow {
        Layout.fillWidth: true
        spacing: Theme.space3
        visible: controller.loaded

        BigButton {
            iconName: "import"
            objectName: "importButton"
            text: qsTr("Bring in a logger's file")
            onClicked: importSheet.begin()
        }

        PlainButton {
            height: Theme.touchMain
            iconName: "thermometer"
            objectName: "lowHighButton"
            text: qsTr("Type a day's low and high")
            onClicked: lowHighSheet.begin()
        }

        PlainButton {
            height: Theme.touchMain
            iconName: "edit"
            objectName: "climateButton"
            text: qsTr("What is assumed")
            onClicked: climateSheet.begin()
        }

        PlainButton {
            height: Theme.touchMain
            iconName: "label"
            objectName: "nameButton"
            text: qsTr("Rename")
            onClicked: {
                names.draftOf(root.place);
                nameSheet.open();
            }
        }
    }

    Card {
        Layout.fillWidth: true
        visible: controller.loaded

        SectionTitle {
            Layout.fillWidth: true
            text: qsTr("Temperature")
        }

        EmptyState {
            Layout.fillWidth: true
            hint: qsTr("Bring in a logger's file, or type what a min/max thermometer shows. Until then what is assumed of it counts.")
            iconName: "thermometer"
            objectName: "noReadings"
            text: qsTr("No readings here yet")
            visible: !controller.watched && controller.span === 0
        }

        Segmented {
            currentIndex: controller.span
            label: qsTr("How far back")
            objectName: "spanChoice"
            options: controller.spans
            visible: controller.watched || controller.span > 0
            onPicked: index => controller.span = index
        }

        TimeBand {
            Layout.fillWidth: true
            chart: controller.trace
            implicitHeight: 320
            ink: Theme.notKnown
            objectName: "placeBand"
            visible: controller.trace.levelsAt.length > 0
        }

        ChartLegend {
            Layout.fillWidth: true
            inks: [Theme.notKnown, Qt.alpha(Theme.notKnown, 0.3), Theme.goodWash]
            lines: [false, false, false]
            texts: controller.trace.zone.length > 0 ? [qsTr("read, lowest to highest"), qsTr("assumed, nobody watched"), qsTr("what all that stands here asks for")] : [qsTr("read, lowest to highest"), qsTr("assumed, nobody watched")]
            visible: controller.trace.levelsAt.length > 0
        }

        PlainText {
            Layout.fillWidth: true
            objectName: "assumedText"
            quiet: true
            text: controller.assumed
        }
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space4
        columns: root.portrait ? 1 : 2
        rowSpacing: Theme.space4
        visible: controller.loaded

        Card {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            Layout.preferredWidth: 400

            SectionTitle {
                Layout.fillWidth: true
                text: qsTr("In figures")
            }

            Repeater {
                model: controller.figures

                NumberLine {
                    required label
                    required note
                    required value

                    Layout.fillWidth: true
                }
            }
        }

        Card {
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            Layout.preferredWidth: 600

            SectionTitle {
                Layout.fillWidth: true
                text: qsTr("What stands here")
            }

            PlainText {
                Layout.fillWidth: true
                text: qsTr("Nothing stands here now.")
                visible: controller.stands.count === 0
            }

            Repeater {
                model: controller.stands

                ListRow {
                    id: row

                    required property string key
                    required property string name
                    required property string label
                    required property bool wrong
                    required note

                    Layout.fillWidth: true
                    iconName: row.wrong ? "warning" : "bottle"
                    title: qsTr("%1, %2").arg(row.name).arg(row.label)
                    onClicked: AppServices.navigation.openContainer(row.key)
                }
            }
        }
    }
}
