import QtQuick
import QtQuick.Templates as T
import Gluewright.Ui

// A count with minus and plus under the thumb; it can be typed as well, and holding a button runs on.
FieldFrame {
    id: root

    property alias value: spin.value
    property alias from: spin.from
    property alias to: spin.to
    property alias step: spin.stepSize
    property string suffix

    signal changed(value: int)

    T.SpinBox {
        id: spin
        objectName: "spin"

        Accessible.description: root.spokenHelp
        Accessible.name: root.spokenName
        editable: true
        font.family: Theme.fontFamily
        font.pixelSize: Theme.textTitle
        font.weight: Font.DemiBold
        from: 0
        implicitHeight: Theme.touchMain
        implicitWidth: 240
        leftPadding: Theme.touchMain
        opacity: enabled ? 1 : 0.45
        rightPadding: Theme.touchMain
        to: 9999
        width: Math.min(360, parent.width)

        onValueModified: root.changed(spin.value)

        validator: IntValidator {
            bottom: Math.min(spin.from, spin.to)
            top: Math.max(spin.from, spin.to)
        }

        background: Rectangle {
            border.color: root.boxEdge
            border.width: 1
            color: Theme.sunken
            radius: Theme.radius

            PlainText {
                Accessible.ignored: true
                anchors.right: parent.right
                anchors.rightMargin: Theme.touchMain
                anchors.verticalCenter: parent.verticalCenter
                quiet: true
                text: root.suffix
                wrapMode: Text.NoWrap
            }

            FocusRing {
                shown: spin.activeFocus
            }
        }

        // The control reads what was typed from this item's text, so it has to be the input itself.
        contentItem: TextInput {
            color: Theme.ink
            font: spin.font
            horizontalAlignment: TextInput.AlignHCenter
            inputMethodHints: Qt.ImhDigitsOnly
            readOnly: !spin.editable
            selectByMouse: true
            selectedTextColor: Theme.amberInk
            selectionColor: Theme.amber
            text: spin.displayText
            validator: spin.validator
            verticalAlignment: TextInput.AlignVCenter
        }

        down.indicator: StepEnd {
            enabled: spin.value > spin.from
            height: spin.height
            iconName: "minus"
            pressed: spin.down.pressed
            x: spin.mirrored ? spin.width - width : 0
        }

        up.indicator: StepEnd {
            enabled: spin.value < spin.to
            height: spin.height
            iconName: "add"
            pressed: spin.up.pressed
            x: spin.mirrored ? 0 : spin.width - width
        }
    }

    component StepEnd: Item {
        id: end

        property string iconName
        property bool pressed: false

        implicitHeight: Theme.touchMain
        implicitWidth: Theme.touchMain

        Rectangle {
            anchors.fill: parent
            anchors.margins: 5
            color: end.pressed ? Theme.testFirstWash : "transparent"
            radius: Theme.radius - 5
        }

        Icon {
            anchors.centerIn: parent
            name: end.iconName
            opacity: end.enabled ? 1 : 0.35
        }
    }
}
