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

        // Placed by hand: a layout in a layout takes the height of the words before they wrap.
        Item {
            Layout.fillWidth: true
            implicitHeight: Math.max(words.height, figures.height)

            Column {
                id: words
                anchors.left: parent.left
                anchors.right: figures.left
                anchors.rightMargin: Theme.space5
                spacing: Theme.space1

                PlainText {
                    size: Theme.textStrong
                    strong: true
                    text: root.name
                    width: words.width
                }

                PlainText {
                    color: root.wanting ? Theme.doNotUse : Theme.accentInk
                    size: Theme.textStrong
                    strong: true
                    text: root.wanting ? qsTr("Needed, but not to be had") : root.packs
                    width: words.width
                }

                PlainText {
                    quiet: true
                    size: Theme.textSmall
                    text: root.why
                    width: words.width
                }
            }

            Column {
                id: figures
                anchors.right: parent.right
                spacing: Theme.space2
                width: 264

                Figures {
                    anchors.right: parent.right
                    size: Theme.textTitle
                    strong: true
                    text: root.price
                    visible: root.price.length > 0
                }

                LevelBar {
                    label: root.figuresText
                    level: root.usableLevel
                    mark: root.needMark
                    width: figures.width
                }

                PlainText {
                    Accessible.ignored: true
                    size: Theme.textSmall
                    text: root.figuresText
                    width: figures.width
                }

                PlainText {
                    quiet: true
                    size: Theme.textSmall
                    text: root.latestUse
                    visible: root.latestUse.length > 0
                    width: figures.width
                }
            }
        }
    }
}
