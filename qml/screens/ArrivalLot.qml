import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The lot code, and the days it may name as the day it was made: to pick from, never taken unseen.
ColumnLayout {
    id: root

    required property ArrivalForm form

    spacing: Theme.space4

    Field {
        objectName: "lot"
        Layout.fillWidth: true
        inputMethodHints: Qt.ImhNoPredictiveText | Qt.ImhPreferUppercase
        hint: root.form.lot.length > 0 ? "" : qsTr("The lot code on the bottle often holds the day it was made.")
        label: qsTr("Lot")
        text: root.form.lot
        onEdited: text => root.form.lot = text
    }

    ChoiceRow {
        objectName: "lotDates"
        Layout.fillWidth: true
        currentIndex: root.form.lotDateAt
        hint: root.form.lotDateNote
        label: qsTr("Does the lot code say when it was made?")
        options: root.form.lotDates
        visible: root.form.lotDates.length > 0
        onPicked: index => root.form.chooseLotDate(index)
    }
}
