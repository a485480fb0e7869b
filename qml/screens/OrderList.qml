import QtQuick
import QtQuick.Controls.Basic as Basic
import Gluewright.Ui

// The lines of the list by supplier, and under the last of them what else is to be known.
ListView {
    id: root

    property list<string> notes

    Accessible.name: qsTr("What to buy")
    Accessible.role: Accessible.List
    boundsBehavior: Flickable.StopAtBounds
    clip: true
    footer: OrderNotes {}
    section.property: "supplier"
    spacing: Theme.space2

    Basic.ScrollBar.vertical: SlimScrollBar {}

    // From outside: a footer that reaches for its list's ids is not made by Qt 6.4 in bound components.
    Binding {
        property: "notes"
        target: root.footerItem
        value: root.notes
    }

    delegate: OrderLineRow {
        headed: ListView.section !== ListView.previousSection
        width: ListView.view.width
    }
}
