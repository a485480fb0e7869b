import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// A card in its cell of the grid.
Item {
    id: root

    required property string key
    required property string name
    required property string amount
    required property string place
    required property string verdict
    required property string reason
    required property string shape
    required property string contents
    required property real level

    function open() {
        AppServices.navigation.openContainer(root.key);
    }

    ContainerCard {
        amountText: root.amount
        anchors.fill: parent
        anchors.margins: Theme.space2
        contents: Theme.contentsColor(root.contents)
        level: root.level
        name: root.name
        place: root.place
        reason: root.reason
        shape: root.shape
        verdict: root.verdict
        onClicked: root.open()
    }
}
