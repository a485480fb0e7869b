pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

ScreenPage {
    id: root

    property int month: 0

    subtitle: qsTr("December, delivered by the 9th")
    title: qsTr("Order")

    actions: [
        Segmented { currentIndex: root.month; label: qsTr("Month"); options: [qsTr("December"), qsTr("January")]; onPicked: index => root.month = index },
        BigButton { iconName: "print"; text: qsTr("Print") }
    ]

    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.space4

        Card { Layout.fillHeight: true; Layout.fillWidth: true; FigureTile { label: qsTr("To order"); note: qsTr("9 packs"); unit: "EUR"; value: "184.60" } }
        Card { Layout.fillHeight: true; Layout.fillWidth: true; FigureTile { label: qsTr("Enough, with chance"); unit: "%"; value: "95" } }
        Card { Layout.fillHeight: true; Layout.fillWidth: true; FigureTile { label: qsTr("Will go past its date"); note: qsTr("1 bottle"); unit: "g"; value: "111" } }
    }

    SectionTitle { Layout.fillWidth: true; note: qsTr("From the first to run out"); text: qsTr("Lines") }

    Card {
        Layout.fillWidth: true
        clickable: true
        label: qsTr("White PVA")
        NumberLine { Layout.fillWidth: true; label: qsTr("White PVA, 500 g"); note: qsTr("5 jobs planned, 2 or 3 more likely; 310 g here froze and does not count"); strong: true; value: qsTr("2 × 11.40") }
    }
    Card {
        Layout.fillWidth: true
        NumberLine { Layout.fillWidth: true; label: qsTr("Epoxy resin, thin, 1 kg"); note: qsTr("With its hardener, in the ratio 100 : 30"); strong: true; value: qsTr("1 × 38.00") }
    }
}
