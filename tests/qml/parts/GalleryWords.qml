pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

Item {
    id: root

    ScreenPage {
        anchors.fill: parent
        subtitle: qsTr("Messages, empty screens, very long names")
        title: qsTr("Words")

        Banner { Layout.fillWidth: true; actionText: qsTr("Try again"); hint: qsTr("Check that the tablet is on the shop's network. What you do now is kept here and sent later."); kind: "error"; text: qsTr("The store does not answer.") }
        Banner { Layout.fillWidth: true; actionText: qsTr("Look"); hint: qsTr("Four containers stood there; none is shown as good until it is tested."); kind: "warning"; text: qsTr("The lean-to went below freezing last night.") }
        Banner { Layout.fillWidth: true; kind: "info"; text: qsTr("Readings up to 07:40 today.") }
        BusyBar { Layout.fillWidth: true; running: true }
        ListRow { Layout.fillWidth: true; note: qsTr("Held since 3 March, asked by the maker; two containers on the bench, one in the lean-to, and one decanted jar with no label"); title: qsTr("Aliphatic wood glue for interior work, five-litre can, winter delivery"); value: "1 204 g"; verdict: "do_not_use" }
        ListRow { Layout.fillWidth: true; iconName: "arrivals"; title: qsTr("Arrived yesterday"); value: "7" }
        EmptyState { Layout.fillWidth: true; Layout.topMargin: Theme.space5; actionIcon: "scan"; actionText: qsTr("Scan a bottle"); hint: qsTr("Scan the bar code or the maker's label, or type it in. Every bottle gets a label of its own."); iconName: "shelf"; text: qsTr("Nothing on the shelf yet.") }
        Flow {
            Layout.fillWidth: true
            spacing: Theme.space2
            Chip { iconName: "open"; text: qsTr("Opened") }
            Chip { text: qsTr("On hold"); verdict: "do_not_use" }
            Chip { text: qsTr("2 left") }
        }
    }

    UndoBar {
        id: bar
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Theme.space5
        anchors.horizontalCenter: parent.horizontalCenter
        width: Math.min(implicitWidth, root.width - 2 * Theme.space5)
        Component.onCompleted: bar.show(qsTr("Used 12 g of White PVA for Chair, full reglue."), "entry")
    }
}
