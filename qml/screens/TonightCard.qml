pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Tonight's low, typed place by place, and the whole of what must come in before it, the most urgent first.
Card {
    id: root

    padding: Theme.space4
    visible: tonight.loaded && tonight.places.length > 0

    TonightController {
        id: tonight
        objectName: "tonightController"
        services: AppServices
    }

    Sheet {
        id: sheet

        property int low

        objectName: "tonightSheet"
        title: qsTr("Tonight's low")

        PlainText {
            Layout.fillWidth: true
            text: qsTr("How cold will it get, and where? What would not stand it is listed on Today until tomorrow.")
        }

        Banner {
            Layout.fillWidth: true
            kind: "error"
            text: tonight.errorText
            visible: tonight.errorText.length > 0
            onDismissed: tonight.clearError()
        }

        ChoiceRow {
            Layout.fillWidth: true
            currentIndex: tonight.place
            label: qsTr("Place")
            objectName: "tonightPlace"
            options: tonight.places
            onPicked: index => {
                tonight.place = index;
                sheet.low = tonight.low;
            }
        }

        Stepper {
            Layout.fillWidth: true
            enabled: tonight.place >= 0
            from: tonight.coldest
            label: qsTr("As low as")
            objectName: "tonightLow"
            suffix: tonight.unit
            to: tonight.warmest
            value: sheet.low
            onChanged: value => sheet.low = value
        }

        footer: [
            PlainButton {
                height: Theme.touchMain
                text: qsTr("Forget it")
                visible: tonight.expected
                onClicked: {
                    tonight.forget();
                    sheet.close();
                }
            },
            BigButton {
                Layout.fillWidth: true
                busy: tonight.busy
                enabled: tonight.place >= 0
                iconName: "check"
                objectName: "keepTonight"
                text: qsTr("What must come in")
                onClicked: {
                    tonight.expect(sheet.low);
                    sheet.close();
                }
            }
        ]
    }

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space4

        Icon {
            name: "frost"
            size: 40
        }

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 2

            PlainText {
                Layout.fillWidth: true
                strong: true
                text: qsTr("Tonight")
            }

            PlainText {
                Layout.fillWidth: true
                objectName: "tonightSaid"
                quiet: true
                text: tonight.said.length > 0 ? tonight.said : qsTr("Type how cold it will get, and see what must come in.")
            }
        }

        PlainButton {
            height: Theme.touchMain
            objectName: "allCold"
            text: qsTr("All %n", "", tonight.cold.count)
            visible: tonight.cold.count > 0
            onClicked: allSheet.open()
        }

        PlainButton {
            height: Theme.touchMain
            iconName: "thermometer"
            objectName: "tonightButton"
            text: qsTr("Tonight's low")
            onClicked: {
                sheet.low = tonight.low;
                sheet.open();
            }
        }
    }

    Sheet {
        id: allSheet
        title: qsTr("What must come in")

        Repeater {
            model: tonight.cold

            ColdRow {}
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("The times are for air at that low from now on: no night is colder sooner.")
        }
    }

    component ColdRow: ListRow {
        id: row

        required property string key
        required property string name
        required property string label
        required property string place
        required property string lasts
        required text

        Layout.fillWidth: true
        note: row.text
        title: qsTr("%1, %2, in %3").arg(row.name).arg(row.label).arg(row.place)
        value: row.lasts
        onClicked: {
            allSheet.close();
            AppServices.navigation.openContainer(row.key);
        }
    }
}
