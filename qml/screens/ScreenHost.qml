import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// Shows the screen that is asked for. Each is made when it is first wanted and kept, so that a person finds it as they
// left it; a container's page is made anew for each container.
Item {
    id: root

    required property WindowController window
    readonly property Navigation navigation: AppServices.navigation
    readonly property bool ready: root.window.state === WindowController.Ready
    readonly property bool onContainer: root.navigation.container.length > 0

    component Destination: Loader {
        required property int index
        readonly property bool wanted: root.ready && root.navigation.destination === index && !root.onContainer

        anchors.fill: parent
        visible: wanted
        onWantedChanged: if (wanted) active = true
        Component.onCompleted: active = wanted
    }

    Destination {
        index: Navigation.Today
        sourceComponent: TodayScreen {}
    }

    Destination {
        index: Navigation.Shelf
        sourceComponent: ShelfScreen {}
    }

    Destination {
        index: Navigation.Arrivals
        sourceComponent: ArrivalsScreen {}
    }

    Destination {
        index: Navigation.GlueUp
        sourceComponent: GlueUpScreen {}
    }

    Destination {
        index: Navigation.Order
        sourceComponent: OrderScreen {}
    }

    Destination {
        index: Navigation.Shop
        sourceComponent: ShopScreen {}
    }

    Loader {
        active: root.window.state === WindowController.FirstStart
        anchors.fill: parent
        sourceComponent: FirstStartScreen {
            onStarted: root.window.started()
        }
    }

    Loader {
        active: root.window.state === WindowController.Trouble
        anchors.fill: parent
        sourceComponent: TroubleScreen {
            window: root.window
        }
    }
}
