import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What else a label tells. All of it may be left out; what the label says of its own life goes before the usual lives
// of its kind.
ColumnLayout {
    id: root

    required property ArrivalForm form

    spacing: Theme.space5

    SectionTitle {
        Layout.fillWidth: true
        note: qsTr("Leave out what it does not say")
        text: qsTr("More from the label")
    }

    GridLayout {
        Layout.fillWidth: true
        columnSpacing: Theme.space4
        columns: root.width > 520 ? 2 : 1
        rowSpacing: Theme.space5

        Field {
            objectName: "price"
            Layout.fillWidth: true
            Layout.preferredWidth: 200
            errorText: root.form.priceError
            inputMethodHints: Qt.ImhPreferNumbers
            label: qsTr("Price of one")
            suffix: root.form.currency
            text: root.form.price
            onEdited: text => root.form.price = text
        }

        Field {
            objectName: "articleCode"
            Layout.fillWidth: true
            Layout.preferredWidth: 200
            label: qsTr("Maker's article code")
            text: root.form.articleCode
            visible: root.form.isNew
            onEdited: text => root.form.articleCode = text
        }
    }

    LabelSaysForm {
        Layout.fillWidth: true
        says: root.form.says
        visible: root.form.isNew
    }
}
