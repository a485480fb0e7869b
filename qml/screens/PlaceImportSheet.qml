pragma ComponentBehavior: Bound

import QtCore
import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A logger's file on its way into a place: choose it, see what was found, answer what it leaves open, watch it come in,
// and read what was kept.
Sheet {
    id: root

    required property string place
    required property string placeName

    readonly property bool running: readings.stage === ReadingsImportController.Running

    function begin() {
        if (!root.running)
            readings.reset();
        root.open();
    }

    objectName: "importSheet"
    title: qsTr("A logger's file for %1").arg(root.placeName)

    ReadingsImportController {
        id: readings
        objectName: "readingsImportController"
        place: root.place
        services: AppServices
    }

    FileDialog {
        id: dialog
        currentFolder: StandardPaths.writableLocation(StandardPaths.HomeLocation)
        nameFilters: [qsTr("Readings (*.csv *.txt *.tsv)"), qsTr("All files (*)")]
        title: qsTr("A logger's file")
        onAccepted: readings.look(dialog.selectedFile)
    }

    Banner {
        Layout.fillWidth: true
        kind: "error"
        objectName: "importError"
        text: readings.errorText
        visible: readings.errorText.length > 0
        onDismissed: readings.clearError()
    }

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Any file with a column of times and one of temperatures will do, or one with the low and high of each day. How it is written is found out; nothing is kept before you say so.")
        visible: readings.stage === ReadingsImportController.Choosing
    }

    SectionTitle {
        Layout.fillWidth: true
        text: readings.fileName
        visible: readings.fileName.length > 0
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: Theme.space2
        visible: readings.stage === ReadingsImportController.Looked || root.running

        PlainText {
            Layout.fillWidth: true
            strong: true
            text: qsTr("What was found in it")
        }

        Repeater {
            model: readings.found

            PlainText {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
            }
        }
    }

    Repeater {
        model: readings.doubts

        ChoiceRow {
            id: doubt

            required property int index
            required property string question
            required property list<string> choices
            required property int taken

            Layout.fillWidth: true
            currentIndex: doubt.taken
            enabled: !root.running && !readings.busy
            hint: doubt.taken < 0 ? qsTr("The file does not say; this has to be answered.") : qsTr("Taken so, unless you say otherwise.")
            label: doubt.question
            options: doubt.choices
            visible: readings.stage === ReadingsImportController.Looked
            onPicked: choice => readings.answer(doubt.index, choice)
        }
    }

    PlainButton {
        flat: true
        iconName: "undo"
        objectName: "askAgain"
        text: qsTr("Answer again")
        visible: readings.answered && readings.stage === ReadingsImportController.Looked
        onClicked: readings.askAgain()
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: Theme.space3
        visible: root.running

        LevelBar {
            Layout.fillWidth: true
            label: qsTr("Read so far")
            level: readings.progress
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("%1 % read. Leaving this page does not stop it.").arg(Math.floor(readings.progress * 100))
        }
    }

    ColumnLayout {
        Layout.fillWidth: true
        spacing: Theme.space3
        visible: readings.stage === ReadingsImportController.Done

        PlainText {
            Layout.fillWidth: true
            objectName: "importReport"
            strong: true
            text: readings.report
        }

        Repeater {
            model: readings.reportNames

            NumberLine {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                label: modelData
                value: readings.reportValues[index] ?? ""
            }
        }

        SectionTitle {
            Layout.fillWidth: true
            text: qsTr("Set aside")
            visible: readings.setAside.count > 0
        }

        Repeater {
            model: readings.setAside

            ColumnLayout {
                id: aside

                required property string line
                required property string text
                required property string why

                Layout.fillWidth: true
                spacing: 0

                PlainText {
                    Layout.fillWidth: true
                    text: qsTr("%1: %2").arg(aside.line).arg(aside.why)
                }

                PlainText {
                    Layout.fillWidth: true
                    elide: Text.ElideRight
                    maximumLineCount: 1
                    quiet: true
                    size: Theme.textSmall
                    text: aside.text
                    wrapMode: Text.NoWrap
                }
            }
        }

        PlainText {
            Layout.fillWidth: true
            quiet: true
            text: qsTr("And %n more.", "", readings.notListed)
            visible: readings.notListed > 0
        }
    }

    footer: BigButton {
        Layout.fillWidth: true
        busy: readings.busy && !root.running
        enabled: readings.stage !== ReadingsImportController.Looked || readings.canStart
        iconName: root.running ? "close" : readings.stage === ReadingsImportController.Looked ? "import" : readings.stage === ReadingsImportController.Done ? "check" : "open"
        objectName: "importNext"
        text: root.running ? qsTr("Stop and keep nothing") : readings.stage === ReadingsImportController.Looked ? qsTr("Bring it in") : readings.stage === ReadingsImportController.Done ? qsTr("Done") : qsTr("Choose the file")
        onClicked: {
            switch (readings.stage) {
            case ReadingsImportController.Choosing:
                dialog.open();
                break;
            case ReadingsImportController.Looked:
                readings.start();
                break;
            case ReadingsImportController.Running:
                readings.cancel();
                break;
            default:
                root.close();
            }
        }
    }
}
