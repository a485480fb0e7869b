import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// Every destination on the demonstration shop: what it shows, and the first thing a person does there.
Item {
    id: root

    height: 800
    width: 1172

    Component {
        id: today
        TodayScreen {}
    }

    Component {
        id: shelf
        ShelfScreen {}
    }

    Component {
        id: arrivals
        ArrivalsScreen {}
    }

    Component {
        id: glueUp
        GlueUpScreen {}
    }

    Component {
        id: order
        OrderScreen {}
    }

    Component {
        id: shop
        ShopScreen {}
    }

    Component {
        id: container
        ContainerScreen {
            container: AppServices.navigation.container
        }
    }

    Loader {
        id: stage
        anchors.fill: parent
    }

    TestCase {
        id: test

        readonly property int patience: 20000

        function walk(item: Item, fits): Item {
            if (!item.visible)
                return null;
            if (fits(item))
                return item;
            for (let i = 0; i < item.children.length; ++i) {
                const found = test.walk(item.children[i], fits);
                if (found)
                    return found;
            }
            return null;
        }

        // What is in sight, on the screen or in a list over it.
        function find(fits): Item {
            return test.walk(root.Window.window.contentItem, fits);
        }

        function named(name: string): Item {
            return test.find(item => item.objectName === name);
        }

        function says(text: string): Item {
            return test.find(item => typeof item.text === "string" && item.text.indexOf(text) >= 0);
        }

        function waitFor(look, what: string): Item {
            tryVerify(() => look() !== null, test.patience, what);
            return look();
        }

        function show(screen: Component) {
            stage.sourceComponent = screen;
            verify(stage.item !== null);
        }

        name: "Screens"
        visible: true
        when: windowShown

        function cleanup() {
            stage.sourceComponent = null;
        }

        function test_today_saysHowTheShelfStandsAndWhatWantsDoing() {
            test.show(today);
            test.waitFor(() => test.says("Do not use"), "the tally of what not to use");
            verify(test.says("Test first"));
            verify(test.says("Not known"));
            test.waitFor(() => test.says("Failed the bench test"), "the reason of a failed one");
        }

        function test_shelf_findsByName_andOpensThePage() {
            test.show(shelf);
            const search = test.waitFor(() => test.find(item => item.placeholder !== undefined && item.cleared !== undefined), "the search");
            search.edited("linseed");
            const card = test.waitFor(() => test.find(item => item.name === "Linseed oil, boiled" && item.clicked !== undefined), "the card");
            tryVerify(() => test.find(item => item.name === "Colloidal silica") === null, test.patience, "only what was asked for");
            card.clicked();
            tryVerify(() => AppServices.navigation.container.length > 0, test.patience);

            test.show(container);
            const verdict = test.waitFor(() => test.named("verdictWord"), "the verdict");
            tryCompare(verdict, "text", "Test first", test.patience);
            test.waitFor(() => test.says("320"), "what is left");
            test.waitFor(() => test.says("Arrived with"), "how it came");
            AppServices.navigation.back();
        }

        function test_arrivals_knowsAProductAtSight() {
            test.show(arrivals);
            test.waitFor(() => test.named("byHand"), "the way without a code");
            AppServices.scanner.typed("(01)09520001421174(10)W-77(17)280531");
            const name = test.waitFor(() => test.named("headName"), "what it is");
            tryCompare(name, "text", "White wood glue", test.patience);
            const button = test.waitFor(() => test.named("bookIn"), "the one confirmation");
            tryCompare(button, "enabled", true, test.patience);
        }

        function test_glueUp_answersForTheWorkChosen() {
            test.show(glueUp);
            const picker = test.waitFor(() => test.named("jobTypePicker"), "the work");
            mouseClick(picker);
            const list = test.waitFor(() => test.named("jobTypes"), "the list of work");
            tryVerify(() => list.count > 15, test.patience);
            const row = test.waitFor(() => test.says("Hairline crack"), "one kind of work");
            tryVerify(() => row.mapToItem(null, 0, 0).y > 0, test.patience);
            wait(400);
            mouseClick(row);
            const answer = test.waitFor(() => test.named("answerText"), "the answer");
            tryVerify(() => answer.text.length > 0, test.patience);
            test.waitFor(() => test.says("Stock"), "the gate of the stock");
            verify(test.named("firstFixText").text.length > 0, "nothing was said of the room: something is to be found out");
        }

        function test_order_listsWhatToBuyForAMonth() {
            test.show(order);
            const list = test.waitFor(() => test.named("orderList"), "the list");
            tryVerify(() => list.count > 5, test.patience);
            const month = test.named("monthText");
            verify(month.text.length > 0);
            verify(test.named("totalText").text.indexOf("EUR") > 0);
            const before = month.text;
            mouseClick(test.named("monthOn"));
            tryVerify(() => month.text !== before, test.patience);
        }

        function test_shop_saysThatRangesAreAssumed() {
            test.show(shop);
            test.waitFor(() => test.says("Unheated lean-to"), "a place");
            test.waitFor(() => test.says("assumed"), "that its range is assumed");
            verify(test.named("backupButton"));
        }
    }
}
