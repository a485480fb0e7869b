import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// What a resin or a hardener is mixed with; nothing where it needs no other half, or none is here yet.
ChoiceRow {
    required property LabelSays says

    currentIndex: says.partnerAt
    label: says.partnerAsked
    objectName: "partner"
    options: says.partners
    visible: says.partners.length > 0

    onPicked: index => says.partnerAt = index
}
