import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Gluewright.Ui

// A leaf of paper on the page. Where it leads somewhere (`clickable`), the whole leaf is the target.
T.Control {
    id: root

    property bool clickable: false
    property color wash: Theme.card
    property color edge: Theme.line
    property string label
    // For content that takes whatever height it gets; otherwise the content stands at the top.
    property bool stretch: false

    default property alias content: column.data

    signal clicked

    Accessible.focusable: root.clickable
    Accessible.ignored: !root.clickable
    Accessible.name: root.label
    Accessible.role: root.clickable ? Accessible.Button : Accessible.Grouping
    Accessible.onPressAction: root.clicked()
    focusPolicy: root.clickable ? Qt.StrongFocus : Qt.NoFocus
    implicitHeight: column.implicitHeight + topPadding + bottomPadding
    implicitWidth: column.implicitWidth + leftPadding + rightPadding
    padding: Theme.space5
    spacing: Theme.space3

    Keys.onReturnPressed: event => {
        event.accepted = root.clickable;
        if (root.clickable)
            root.clicked();
    }
    Keys.onSpacePressed: event => {
        event.accepted = root.clickable;
        if (root.clickable)
            root.clicked();
    }

    background: Rectangle {
        border.color: root.edge
        border.width: 1
        color: root.clickable && tap.pressed ? Theme.testFirstWash : root.wash
        radius: Theme.radius + 4

        FocusRing {
            around: Theme.radius + 4
            shown: root.visualFocus
        }
    }

    TapHandler {
        id: tap
        enabled: root.clickable
        onTapped: root.clicked()
    }

    ColumnLayout {
        id: column
        anchors.left: parent.left
        anchors.leftMargin: root.leftPadding
        anchors.right: parent.right
        anchors.rightMargin: root.rightPadding
        anchors.top: parent.top
        anchors.topMargin: root.topPadding
        height: root.stretch ? Math.max(implicitHeight, root.availableHeight) : implicitHeight
        spacing: root.spacing
    }
}
