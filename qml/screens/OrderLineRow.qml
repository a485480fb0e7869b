import QtQuick
import QtQuick.Layouts
import Gluewright.Ui

// One material to buy: which packs, why, and how what is usable stands against what is needed. The first line of a
// supplier carries the supplier's name above it.
Column {
    id: root

    required property string supplier
    required property string name
    required property string packs
    required property string price
    required property string need
    required property string usable
    required property string ordered
    required property real usableLevel
    required property real needMark
    required property string why
    required property string latestUse

    property bool headed: false
    readonly property bool wanting: root.packs.length === 0
    readonly property string figuresText: qsTr("%1 usable of %2 needed").arg(root.usable).arg(root.need)

    Accessible.name: qsTr("%1, %2, %3").arg(root.name).arg(root.packs).arg(root.price)
    Accessible.role: Accessible.ListItem
    spacing: Theme.space2

    Item {
        height: Theme.space2
        visible: root.headed
        width: 1
    }

    SectionTitle {
        text: root.supplier
        visible: root.headed
        width: root.width
    }

    Card {
        width: root.width
        edge: root.wanting ? Theme.doNotUse : Theme.line
        padding: Theme.space4
        wash: root.wanting ? Theme.doNotUseWash : Theme.card

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.space5

            ColumnLayout {
                Layout.alignment: Qt.AlignTop
                Layout.fillWidth: true
                spacing: Theme.space1

                PlainText {
                    Layout.fillWidth: true
                    size: Theme.textStrong
                    strong: true
                    text: root.name
                }

                PlainText {
                    Layout.fillWidth: true
                    color: root.wanting ? Theme.doNotUse : Theme.accentInk
                    size: Theme.textStrong
                    strong: true
                    text: root.wanting ? qsTr("Needed, but not to be had") : root.packs
                }

                PlainText {
                    Layout.fillWidth: true
                    quiet: true
                    size: Theme.textSmall
                    text: root.why
                }
            }

            ColumnLayout {
                Layout.alignment: Qt.AlignTop
                Layout.fillWidth: false
                Layout.maximumWidth: 264
                Layout.minimumWidth: 264
                spacing: Theme.space2

                Figures {
                    Layout.alignment: Qt.AlignRight
                    size: Theme.textTitle
                    strong: true
                    text: root.price
                    visible: root.price.length > 0
                }

                LevelBar {
                    Layout.fillWidth: true
                    label: root.figuresText
                    level: root.usableLevel
                    mark: root.needMark
                }

                PlainText {
                    Accessible.ignored: true
                    Layout.fillWidth: true
                    size: Theme.textSmall
                    text: root.figuresText
                }

                PlainText {
                    Layout.fillWidth: true
                    quiet: true
                    size: Theme.textSmall
                    text: root.latestUse
                    visible: root.latestUse.length > 0
                }
            }
        }
    }
}
