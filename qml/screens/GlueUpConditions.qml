import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// What a person can say about the glue-up to come: how many pieces, and each condition, which may stay unsaid.
Column {
    id: root

    required property GlueUpController controller
    property alias columns: grid.columns

    signal moreWanted
    signal gluesWanted

    // Puts the keyboard on what a gate asks for.
    function focusOn(gate: string) {
        switch (gate) {
        case "air": air.focusBox(); break;
        case "wood": wood.focusBox(); break;
        case "humidity": humidity.focusBox(); break;
        case "moisture": moisture.focusBox(); break;
        case "gap": gap.focusBox(); break;
        }
    }

    spacing: Theme.space2

    GridLayout {
        id: grid
        columnSpacing: Theme.space3
        rowSpacing: Theme.space1
        width: root.width

        Stepper {
            id: pieces
            Layout.alignment: Qt.AlignBottom
            Layout.fillWidth: true
            Layout.preferredWidth: 170
            from: 1
            label: qsTr("Pieces")
            objectName: "piecesStepper"
            to: 1000
            value: root.controller.pieces
            onChanged: value => root.controller.pieces = value
        }

        GlueUpTile {
            id: air
            Layout.fillWidth: true
            condition: root.controller.air
            objectName: "airTile"
        }

        GlueUpTile {
            id: wood
            Layout.fillWidth: true
            condition: root.controller.wood
            objectName: "woodTile"
        }

        GlueUpTile {
            id: humidity
            Layout.fillWidth: true
            condition: root.controller.humidity
            objectName: "humidityTile"
        }

        GlueUpTile {
            id: moisture
            Layout.fillWidth: true
            condition: root.controller.woodMoisture
            objectName: "moistureTile"
        }

        GlueUpTile {
            id: gap
            Layout.fillWidth: true
            condition: root.controller.gap
            objectName: "gapTile"
        }
    }

    Flow {
        spacing: Theme.space3
        width: root.width

        PlainButton {
            iconName: "edit"
            objectName: "moreButton"
            text: root.controller.more.count > 0 ? qsTr("Joint and piece: %1 said").arg(root.controller.more.count) : qsTr("Joint and piece")
            onClicked: root.moreWanted()
        }

        PlainButton {
            iconName: "glue-up"
            objectName: "gluesButton"
            text: qsTr("Which glue?")
            onClicked: root.gluesWanted()
        }
    }

    PlainText {
        Accessible.name: text
        Accessible.role: Accessible.AlertMessage
        color: Theme.doNotUse
        size: Theme.textSmall
        text: root.controller.typingError
        visible: text.length > 0
        width: root.width
    }
}
