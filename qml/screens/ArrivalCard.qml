import QtQuick
import QtQuick.Layouts
import Gluewright.Backend
import Gluewright.Ui

// One arrival before it is booked in: what is known of it, only the questions that are left, and the one button.
Item {
    id: root

    required property ArrivalController controller
    readonly property ArrivalForm form: root.controller.form
    readonly property real footHeight: foot.height

    function chooseWhat() {
        what.chooseMaterial();
    }

    ScrollColumn {
        id: scroll
        anchors.bottom: foot.top
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.top: parent.top
        footRoom: Theme.space5
        spacing: Theme.space5

        Banner {
            objectName: "error"
            Layout.fillWidth: true
            hint: qsTr("Nothing was booked in.")
            kind: "error"
            text: root.controller.errorText
            visible: root.controller.errorText.length > 0
            onDismissed: root.controller.clearError()
        }

        Banner {
            objectName: "otherWaiting"
            Layout.fillWidth: true
            actionText: qsTr("Take that one")
            hint: qsTr("This one is not booked in yet.")
            kind: "warning"
            text: qsTr("Also scanned: %1.").arg(root.controller.other)
            visible: root.controller.other.length > 0
            onActed: root.controller.takeOther()
            onDismissed: root.controller.leaveOther()
        }

        ArrivalHead {
            Layout.fillWidth: true
            controller: root.controller
        }

        ArrivalWhat {
            id: what
            Layout.fillWidth: true
            controller: root.controller
            visible: root.form.isNew
        }

        PartnerChoice {
            Layout.fillWidth: true
            says: root.form.says
            visible: root.form.isNew && root.form.says.partners.length > 0
        }

        ChoiceRow {
            objectName: "packs"
            Layout.fillWidth: true
            currentIndex: root.form.packAt
            label: qsTr("Which size?")
            options: root.form.packs
            visible: root.form.packs.length > 1
            onPicked: index => root.form.packAt = index
        }

        AmountField {
            objectName: "amount"
            Layout.fillWidth: true
            errorText: root.form.amountError
            label: root.form.packs.length > 1 ? qsTr("Or another amount") : qsTr("How much is in one?")
            text: root.form.amount
            unit: root.form.amountUnit
            units: root.form.amountUnits
            visible: root.form.asksAmount
            onEdited: text => root.form.amount = text
            onUnitPicked: unit => root.form.amountUnit = unit
        }

        ArrivalLot {
            Layout.fillWidth: true
            form: root.form
            visible: root.form.asksDate || root.form.lotDates.length > 0
        }

        ArrivalDate {
            Layout.fillWidth: true
            form: root.form
            visible: root.form.asksDate
        }

        ChoiceRow {
            objectName: "places"
            Layout.fillWidth: true
            currentIndex: root.form.placeAt
            label: qsTr("Where will it stand?")
            options: root.form.places
            onPicked: index => root.form.placeAt = index
        }

        Field {
            objectName: "otherPlace"
            Layout.fillWidth: true
            label: qsTr("Name of the place")
            text: root.form.place
            visible: root.form.otherPlace
            onEdited: text => root.form.place = text
        }

        Stepper {
            objectName: "count"
            Layout.fillWidth: true
            from: root.form.isCase ? 0 : 1
            label: root.form.isCase ? qsTr("How many are in the case?") : qsTr("How many of the same?")
            to: 200
            value: root.form.count
            onChanged: value => root.form.count = value
        }

        ArrivalMore {
            Layout.fillWidth: true
            form: root.form
            visible: root.form.changing
        }

        ArrivalPhoto {
            Layout.fillWidth: true
            controller: root.controller
            visible: root.form.isNew || root.form.changing
        }

        PlainButton {
            objectName: "more"
            iconName: "edit"
            text: qsTr("Hazards, how long it keeps, price")
            visible: root.form.isNew && !root.form.changing
            onClicked: root.form.changing = true
        }
    }

    Rectangle {
        id: foot
        anchors.bottom: parent.bottom
        anchors.left: parent.left
        anchors.right: parent.right
        color: Theme.paper
        height: footColumn.implicitHeight + 2 * Theme.space4

        Rectangle {
            color: Theme.line
            height: 1
            width: parent.width
        }

        ColumnLayout {
            id: footColumn
            anchors.left: parent.left
            anchors.leftMargin: Theme.space6
            anchors.right: parent.right
            anchors.rightMargin: Theme.space6
            anchors.verticalCenter: parent.verticalCenter
            spacing: Theme.space3

            PlainText {
                objectName: "lacking"
                Layout.fillWidth: true
                quiet: true
                text: root.form.lacking
                visible: text.length > 0
            }

            RowLayout {
                Layout.fillWidth: true
                spacing: Theme.space4

                PlainButton {
                    objectName: "putAside"
                    Layout.preferredHeight: Theme.touchMain
                    text: qsTr("Put it aside")
                    onClicked: root.controller.putAside()
                }

                BigButton {
                    objectName: "bookIn"
                    Layout.fillWidth: true
                    busy: root.controller.busy
                    enabled: root.form.complete && !root.controller.busy
                    iconName: "arrivals"
                    text: root.form.count > 1 ? qsTr("Book in all %1").arg(root.form.count) : qsTr("Book in")
                    onClicked: root.controller.bookIn()
                }
            }
        }
    }
}
