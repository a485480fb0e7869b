import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// Our labels on their way out: what they will look like, on what paper, and to a printer or a file.
Sheet {
    id: root

    // Of these containers; of none: of everything that stands on the shelf.
    function show(containers: list<string>) {
        controller.take(containers);
        root.open();
    }

    objectName: "labelSheet"
    title: controller.containers.length > 0 ? qsTr("Print its label") : qsTr("Print labels")

    LabelController {
        id: controller
        objectName: "labelController"
        services: AppServices
        onDone: root.close()
    }

    FileDialog {
        id: pdfFile
        currentFolder: controller.folder
        defaultSuffix: "pdf"
        fileMode: FileDialog.SaveFile
        nameFilters: [qsTr("PDF (*.pdf)")]
        title: qsTr("Save the labels")
        onAccepted: controller.savePdf(pdfFile.selectedFile)
    }

    LabelPreview {
        Layout.fillWidth: true
        controller: controller
    }

    Banner {
        Layout.fillWidth: true
        dismissable: false
        kind: "error"
        objectName: "labelError"
        text: controller.errorText
        visible: controller.errorText.length > 0
    }

    Banner {
        Layout.fillWidth: true
        dismissable: false
        hint: qsTr("A larger label has it.")
        kind: "warning"
        objectName: "labelLeftOut"
        text: controller.leftOut
        visible: controller.leftOut.length > 0
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: controller.place
        label: qsTr("Labels for what stands in")
        objectName: "labelPlace"
        options: controller.places
        visible: controller.containers.length === 0
        onPicked: index => controller.place = index
    }

    LabelPaperForm {
        Layout.fillWidth: true
        controller: controller
    }

    LabelSheetForm {
        Layout.fillWidth: true
        controller: controller
    }

    Picker {
        Layout.fillWidth: true
        currentIndex: controller.printer
        hint: controller.printersKnown && controller.printers.length === 0 ? qsTr("This machine knows no printer. Save a PDF and print it elsewhere at its true size, without fitting it to the page.") : ""
        label: qsTr("Printer")
        objectName: "labelPrinter"
        options: controller.printers
        placeholder: controller.printersKnown ? qsTr("None") : qsTr("Looking…")
        onPicked: index => controller.printer = index
    }

    footer: [
        PlainButton {
            Layout.fillWidth: true
            Layout.preferredHeight: Theme.touchMain
            enabled: controller.ready && !controller.busy
            iconName: "save"
            objectName: "saveLabels"
            text: qsTr("Save as PDF")
            onClicked: {
                pdfFile.selectedFile = controller.suggestedFile;
                pdfFile.open();
            }
        },
        BigButton {
            Layout.fillWidth: true
            busy: controller.busy && controller.printersKnown
            enabled: controller.ready && controller.printer >= 0 && !controller.busy
            iconName: "print"
            objectName: "printLabels"
            text: qsTr("Print")
            onClicked: controller.sendToPrinter()
        }
    ]
}
