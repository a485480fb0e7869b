import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// Shows the screen that is asked for. Each is made when it is first wanted and kept, so that a person finds it as they
// left it; a container's page is made anew for each container.
Item {
    id: root

    required property int windowState
    readonly property Navigation navigation: AppServices.navigation
    readonly property bool ready: root.windowState === WindowController.Ready
    readonly property bool onContainer: root.navigation.container.length > 0
    readonly property bool onPlace: root.navigation.place.length > 0
    readonly property bool onPots: root.navigation.pots
    readonly property int destination: root.ready && !root.onContainer && !root.onPlace && !root.onPots ? root.navigation.destination : -1
    // What stands at the foot of the screen and must not be covered.
    readonly property real footHeight: page.active && page.item ? (page.item as ContainerScreen).footHeight
                                     : arrivals.wanted && arrivals.item ? (arrivals.item as ArrivalsScreen).footHeight
                                     : glueUp.wanted && glueUp.item ? (glueUp.item as GlueUpScreen).footHeight
                                     : order.wanted && order.item ? (order.item as OrderScreen).footHeight : 0

    Destination {
        sourceComponent: TodayScreen {}
        wanted: root.destination === Navigation.Today
    }

    Destination {
        sourceComponent: ShelfScreen {}
        wanted: root.destination === Navigation.Shelf
    }

    Destination {
        id: arrivals
        sourceComponent: ArrivalsScreen {}
        wanted: root.destination === Navigation.Arrivals
    }

    Destination {
        id: glueUp
        sourceComponent: GlueUpScreen {}
        wanted: root.destination === Navigation.GlueUp
    }

    Destination {
        id: order
        sourceComponent: OrderScreen {}
        wanted: root.destination === Navigation.Order
    }

    Destination {
        sourceComponent: ShopScreen {}
        wanted: root.destination === Navigation.Shop
    }

    Loader {
        id: page
        active: root.ready && root.onContainer
        anchors.fill: parent
        sourceComponent: ContainerScreen {
            container: AppServices.navigation.container
        }
    }

    Loader {
        active: root.ready && root.onPlace
        anchors.fill: parent
        sourceComponent: PlaceScreen {
            place: AppServices.navigation.place
        }
    }

    Loader {
        active: root.ready && root.onPots
        anchors.fill: parent
        sourceComponent: PotsScreen {}
    }

    Loader {
        active: root.windowState === WindowController.FirstStart
        anchors.fill: parent
        sourceComponent: FirstStartScreen {}
    }

    Loader {
        active: root.windowState === WindowController.Trouble
        anchors.fill: parent
        sourceComponent: TroubleScreen {}
    }
}
