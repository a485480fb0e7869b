import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// How old it is: the date on its label, or openly none.
ColumnLayout {
    id: root

    required property ArrivalForm form

    spacing: Theme.space4

    ChoiceRow {
        objectName: "dateKind"
        Layout.fillWidth: true
        currentIndex: root.form.dateKind
        hint: root.form.dateKind === ArrivalForm.NoDate ? qsTr("Then it may have stood in the trade as long as its kind usually does.") : root.form.dateKind === ArrivalForm.FoundUndated ? qsTr("Then it is not known to be good until it was tested.") : ""
        label: qsTr("What date is on the label?")
        options: [qsTr("Use by"), qsTr("Best before"), qsTr("Made on"), qsTr("No date on it"), qsTr("Found here, nobody knows how old")]
        onPicked: index => root.form.dateKind = index
    }

    DateField {
        objectName: "date"
        Layout.fillWidth: true
        errorText: root.form.dateError
        hint: qsTr("A month alone will do: year-month.")
        label: [qsTr("Use by"), qsTr("Best before"), qsTr("Made on")][root.form.dateKind] ?? ""
        text: root.form.date
        today: root.form.todayText
        unknownAllowed: false
        visible: root.form.dateWanted
        onEdited: text => root.form.date = text
    }
}
