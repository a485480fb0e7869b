import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// An amount as a person writes it, with the unit beside it. Where several units are on offer they stand as choices;
// "8 fl oz" typed whole is as good, the reading of it belongs to the controller.
FieldFrame {
    id: root

    property string text
    property string unit
    property list<string> units
    property string placeholder

    signal edited(text: string)
    signal unitPicked(unit: string)
    signal accepted

    function focusBox() {
        box.forceActiveFocus(Qt.OtherFocusReason);
    }

    RowLayout {
        spacing: Theme.space3
        width: parent.width

        TextBox {
            id: box
            Accessible.description: root.spokenHelp
            Accessible.name: root.unit.length > 0 ? qsTr("%1 in %2").arg(root.spokenName).arg(root.unit) : root.spokenName
            Layout.fillWidth: true
            Layout.minimumWidth: 100
            edgeColor: root.boxEdge
            inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
            placeholderText: root.placeholder
            suffix: choices.visible ? "" : root.unit

            onAccepted: root.accepted()
            onTextEdited: root.edited(box.text)

            Binding on text {
                value: root.text
            }
        }

        Segmented {
            id: choices
            objectName: "units"
            Layout.preferredHeight: 56
            currentIndex: root.units.indexOf(root.unit)
            label: qsTr("Unit")
            options: root.units
            visible: root.units.length > 1

            onPicked: index => root.unitPicked(root.units[index])
        }
    }
}
