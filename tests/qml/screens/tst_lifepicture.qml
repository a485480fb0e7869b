import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// The picture of a container's life, its bench test sheet, and tonight's low on Today.
Item {
    id: root

    height: 800
    width: 1172

    ScreenCase {
        id: test

        property string container

        // A container that is open and known: the first that Today calls by name.
        function showContainer(name: string, width: int, height: int) {
            shelf.text = name;
            tryVerify(() => shelf.model.count > 0 && String(shelf.model.data(shelf.model.index(0, 0), Qt.UserRole + 2)).indexOf(name) >= 0, test.patience);
            test.container = shelf.model.data(shelf.model.index(0, 0), Qt.UserRole);
            test.show(width, height);
            tryVerify(() => test.named("mainAct") !== null, test.patience);
        }

        name: "LifePicture"
        screen: ContainerScreen {
            container: test.container
        }

        ShelfController {
            id: shelf
            services: AppServices
        }

        function test_life_isDrawn_forEachClock() {
            test.showContainer("Hide glue 192 g", 800, 1188);
            const band = test.waitFor(() => test.named("lifeBand"), "the picture");
            tryVerify(() => band.chart.solid.length > 30, test.patience);
            compare(band.chart.limit, 100);
            verify(band.Accessible.name.indexOf("is used on") > 0);
            verify(test.says("all of its life") !== null);
            verify(test.says("Arrived") !== null);
            const air = test.named("airBand");
            compare(air.chart.span, band.chart.span);
            compare(air.plot.x, band.plot.x); // the two stand one over the other
            compare(air.plot.width, band.plot.width);
        }

        function test_bothWaysUp_nothingStandsOut_data() {
            return [
                { tag: "landscape", width: 1172, height: 800 },
                { tag: "portrait", width: 800, height: 1188 },
            ];
        }

        function test_bothWaysUp_nothingStandsOut(row) {
            test.showContainer("White wood glue", row.width, row.height);
            const band = test.waitFor(() => test.named("airBand"), "the picture");
            tryVerify(() => band.chart.levelsAt.length > 1, test.patience);
            test.nothingStandsOut();
        }

        function test_benchTest_asksOnlyWhatApplies() {
            test.showContainer("White wood glue", 1172, 800);
            sheetOf("Test");
            verify(test.waitFor(() => test.named("testStep"), "the steps").text.length > 10);
            verify(test.named("grainyToggle") !== null); // an emulsion
            verify(test.named("woodFailure") === null);
            test.named("brokeToggle").toggled();
            test.waitFor(() => test.named("woodFailure"), "wood failure, once a joint was broken");
            verify(!test.named("writeTest").enabled);
            test.named("testOutcome").picked(0);
            tryVerify(() => test.named("writeTest").enabled, test.patience);
            keyClick(Qt.Key_Escape);
        }

        function test_benchTest_ofGranules_doesNotAskForFrost() {
            test.showContainer("Hide glue 192 g", 1172, 800);
            sheetOf("Test");
            test.waitFor(() => test.named("testStep"), "the steps");
            verify(test.named("grainyToggle") === null);
            keyClick(Qt.Key_Escape);
        }

        function sheetOf(word: string) {
            const button = test.find(item => item.text !== undefined && String(item.text).indexOf(word) >= 0 && item.clicked !== undefined && (item.text === word || item.objectName === "mainAct"));
            verify(button !== null);
            button.clicked();
        }
    }

    ScreenCase {
        id: today

        name: "Tonight"
        screen: TodayScreen {}

        function test_low_isTyped_andTakenBack() {
            today.show(1172, 800);
            const button = today.waitFor(() => today.named("tonightButton"), "the way to type it");
            today.press(button);
            const low = today.waitFor(() => today.named("tonightLow"), "the low");
            const place = today.named("tonightPlace");
            compare(place.options[place.currentIndex], "Unheated lean-to");
            low.changed(-8);
            compare(low.value, -8);
            today.press(today.named("keepTonight"));
            tryVerify(() => today.named("keepTonight") === null, today.patience);
            today.waitFor(() => today.says("\u22128 °C") ?? today.says("-8 °C"), "that it is expected");
            today.press(today.named("tonightButton"));
            const forget = today.waitFor(() => today.find(item => item.text === "Forget it"), "the way to take it back");
            today.press(forget);
            tryVerify(() => today.says("Type how cold it will get") !== null, today.patience);
        }
    }
}
