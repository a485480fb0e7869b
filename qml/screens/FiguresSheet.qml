pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// The figures an answer rests on, each with where it is from and how far it can be trusted.
Sheet {
    id: root

    required property RowsModel figures

    title: qsTr("What this rests on")

    PlainText {
        Layout.fillWidth: true
        text: qsTr("A figure from the label beats one for the kind of stuff in general.")
    }

    Repeater {
        model: root.figures

        ColumnLayout {
            id: figure

            required property string name
            required property string value
            required property string source
            required property string confidence
            required property string basis

            Layout.fillWidth: true
            spacing: 2

            RowLayout {
                Layout.fillWidth: true
                spacing: Theme.space3

                PlainText {
                    Layout.alignment: Qt.AlignTop
                    Layout.fillWidth: true
                    text: figure.name
                }

                PlainText {
                    Layout.alignment: Qt.AlignTop
                    Layout.maximumWidth: 280
                    horizontalAlignment: Text.AlignRight
                    strong: true
                    text: figure.value
                }
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: figure.confidence.length > 0 ? qsTr("%1; %2").arg(figure.source).arg(figure.confidence) : figure.source
            }

            PlainText {
                Layout.fillWidth: true
                quiet: true
                size: Theme.textSmall
                text: figure.basis
                visible: figure.basis.length > 0
            }

            Rectangle {
                Layout.fillWidth: true
                Layout.topMargin: Theme.space2
                color: Theme.line
                implicitHeight: 1
            }
        }
    }
}
