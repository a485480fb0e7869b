import QtQuick
import QtQuick.Dialogs
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// A code the camera cannot have: typed in, or out of a picture that was taken before.
ColumnLayout {
    id: root

    readonly property Scanner scanner: AppServices.scanner

    function take() {
        root.scanner.typed(code.text);
        code.text = "";
    }

    function clear() {
        code.text = "";
        root.scanner.clearTrouble();
    }

    spacing: Theme.space3

    FileDialog {
        id: pictureFile
        nameFilters: [qsTr("Pictures (*.png *.jpg *.jpeg *.webp *.bmp *.tif *.tiff)"), qsTr("All files (*)")]
        title: qsTr("Choose a picture of the label")
        onAccepted: root.scanner.readPicture(pictureFile.selectedFile)
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space2
        columns: root.width > 620 ? 3 : 2
        rowSpacing: Theme.space3

        Field {
            id: code
            objectName: "codeField"
            Layout.fillWidth: true
            inputMethodHints: Qt.ImhNoPredictiveText | Qt.ImhPreferUppercase
            label: qsTr("Or type the number")
            placeholder: qsTr("Number, label code")
            onAccepted: root.take()
            onEdited: text => code.text = text
        }

        IconButton {
            objectName: "takeCode"
            Layout.alignment: Qt.AlignBottom
            Layout.preferredHeight: 56
            Layout.preferredWidth: 64
            enabled: code.text.trim().length > 0
            iconName: "check"
            label: qsTr("Take this code")
            outlined: true
            onClicked: root.take()
        }

        PlainButton {
            objectName: "choosePicture"
            Layout.alignment: Qt.AlignBottom
            Layout.columnSpan: root.width > 620 ? 1 : 2
            Layout.fillWidth: root.width <= 620
            Layout.preferredHeight: 56
            enabled: !root.scanner.reading
            iconName: "camera"
            text: qsTr("Choose a picture of the label")
            onClicked: pictureFile.open()
        }
    }

    BusyBar {
        Layout.fillWidth: true
        running: root.scanner.reading
    }

    Banner {
        objectName: "pictureTrouble"
        Layout.fillWidth: true
        hint: qsTr("Nothing was booked in.")
        kind: "warning"
        text: root.scanner.trouble
        visible: root.scanner.trouble.length > 0
        onDismissed: root.scanner.clearTrouble()
    }
}
