pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

Item {
    id: root

    ListModel {
        id: containers
        ListElement { name: "White PVA"; amount: "310 of 500 g"; where: "Lean-to shelf"; verdict: "do_not_use"; why: "Froze through on 14 Jan"; shape: "bottle"; level: 0.62; kind: "pva" }
        ListElement { name: "Liquid hide glue"; amount: "85 of 237 ml"; where: "Bench"; verdict: "test_first"; why: "Opened 11 months ago; the label gives 12 from the made date"; shape: "bottle"; level: 0.36; kind: "liquid_hide" }
        ListElement { name: "Hide granules 192 g"; amount: "405 of 500 g"; where: "Dry cupboard"; verdict: "good"; why: "Good until Nov 2029"; shape: "bag"; level: 0.81; kind: "hide" }
        ListElement { name: "Hide glue, mixed Tuesday from granules"; amount: "44 of 90 g"; where: "Fridge"; verdict: "good"; why: "Chilled, 6 warm hours"; shape: "jar"; level: 0.49; kind: "hide" }
        ListElement { name: "Epoxy resin, thin"; amount: "0.9 of 1 kg"; where: "Bench"; verdict: "good"; why: "Good until Mar 2027"; shape: "tin"; level: 0.9; kind: "resin" }
        ListElement { name: "Slow hardener"; amount: "62 of 400 g"; where: "Bench"; verdict: "test_first"; why: "Runs out before its resin"; shape: "bottle"; level: 0.15; kind: "hardener" }
        ListElement { name: "Colloidal silica"; amount: "28 of 40 g"; where: "Dry cupboard"; verdict: "good"; why: "Keeps while dry"; shape: "jar"; level: 0.7; kind: "silica" }
        ListElement { name: "Dye powder, walnut"; amount: "Not counted"; where: "Dry cupboard"; verdict: "not_known"; why: "No date, no lot"; shape: "box"; level: -1; kind: "dye" }
    }

    ScreenHeader {
        id: header
        anchors.left: parent.left
        anchors.margins: Theme.space6
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.topMargin: Theme.space3
        subtitle: qsTr("31 containers, 4 want attention")
        title: qsTr("Shelf")

        SearchField { Layout.preferredWidth: 220 }
        BigButton { iconName: "scan"; text: qsTr("Scan") }
    }

    Flow {
        id: chips
        anchors.left: parent.left
        anchors.margins: Theme.space6
        anchors.right: parent.right
        anchors.top: header.bottom
        anchors.topMargin: Theme.space2
        spacing: Theme.space2

        FilterChip { checked: true; count: 31; text: qsTr("All") }
        FilterChip { count: 4; text: qsTr("Test first"); verdict: "test_first" }
        FilterChip { count: 1; text: qsTr("Do not use"); verdict: "do_not_use" }
        FilterChip { count: 2; text: qsTr("Not known"); verdict: "not_known" }
        FilterChip { count: 9; text: qsTr("Bench") }
    }

    GridView {
        id: grid
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.leftMargin: Theme.space6
        anchors.right: parent.right
        anchors.rightMargin: Theme.space6 - Theme.space4
        anchors.top: chips.bottom
        anchors.topMargin: Theme.space4
        cellHeight: 302 + Theme.space4
        cellWidth: Math.floor(width / Math.max(1, Math.floor(width / 260)))
        clip: true
        model: containers

        delegate: Item {
            id: cell

            required property string name
            required property string amount
            required property string where
            required property string verdict
            required property string why
            required property string shape
            required property real level
            required property string kind

            height: grid.cellHeight
            width: grid.cellWidth

            ContainerCard {
                amountText: cell.amount
                anchors.fill: parent
                anchors.bottomMargin: Theme.space4
                anchors.rightMargin: Theme.space4
                contents: Theme.contentsColor(cell.kind)
                level: cell.level
                name: cell.name
                place: cell.where
                reason: cell.why
                shape: cell.shape
                verdict: cell.verdict
            }
        }
    }
}
