import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// A place's page under the thumb: its picture, a day's low and high typed, and what is assumed of it.
Item {
    id: root

    height: 800
    width: 1172

    ShopSettingsPlacesController {
        id: known
        services: AppServices
    }

    ScreenCase {
        id: test

        property string wanted

        // The row of a list that shows a text, as its model has it.
        function idOf(name: string): string {
            tryVerify(() => known.loaded, test.patience);
            for (let row = 0; row < known.places.count; ++row) {
                const at = known.places.index(row, 0);
                if (known.places.data(at, Qt.UserRole + 1) === name)
                    return known.places.data(at, Qt.UserRole);
            }
            return "";
        }

        function showPlace(name: string, width: int, height: int) {
            test.wanted = test.idOf(name);
            verify(test.wanted.length > 0);
            test.show(width, height);
            tryVerify(() => test.named("placeBand") !== null, test.patience);
        }

        name: "Place"
        screen: PlaceScreen {
            place: test.wanted
        }

        function test_picture_isDrawnWithWordsForItsColours() {
            test.showPlace("Unheated lean-to", 1172, 800);
            const band = test.named("placeBand");
            tryVerify(() => band.chart.levelsAt.length > 1, test.patience);
            verify(band.plot.width > 300 && band.plot.height > 100);
            verify(band.chart.timesAt.length >= 2);
            compare(band.xOf(0), band.plot.x);
            compare(band.yOf(band.chart.high), band.plot.y);
            verify(test.says("assumed, nobody watched") !== null);
            verify(band.Accessible.name.indexOf("lean-to") >= 0);
        }

        function test_withoutReadings_saysWhatToDo() {
            test.showPlace("Dry cupboard", 1172, 800);
            test.waitFor(() => test.named("noReadings"), "that there are none");
            verify(test.says("Bring in a logger's file, or type") !== null);
            test.press(test.named("importButton"));
            const next = test.waitFor(() => test.named("importNext"), "the way to choose a file");
            compare(next.text, "Choose the file");
            verify(next.enabled);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("importNext") === null, test.patience);
        }

        function test_lowAndHigh_areTyped() {
            test.showPlace("Glue refrigerator", 1172, 800);
            test.press(test.named("lowHighButton"));
            const keep = test.waitFor(() => test.named("keepLowHigh"), "the way to keep them");
            verify(!keep.enabled);
            test.named("typedLow").edited("9");
            test.named("typedHigh").edited("4");
            tryCompare(keep, "enabled", true, test.patience);
            test.press(keep);
            tryVerify(() => test.find(item => item.kind === "error" && item.text.length > 0) !== null, test.patience);
            test.named("typedLow").edited("-1.5");
            test.press(keep);
            tryVerify(() => test.named("keepLowHigh") === null, test.patience);
            test.waitFor(() => test.says("\u22121.5 °C"), "the low");
            tryVerify(() => test.named("noReadings") === null, test.patience);
        }

        function test_assumedRange_isChanged() {
            test.showPlace("Bench shelf", 1172, 800);
            test.press(test.named("climateButton"));
            const toggle = test.waitFor(() => test.named("spanToggle1"), "a quarter");
            tryVerify(() => test.named("spanLow0") !== null, test.patience);
            verify(test.named("spanLow1") === null);
            toggle.toggled();
            const low = test.waitFor(() => test.named("spanLow1"), "its lowest");
            low.changed(-3);
            compare(low.value, -3);
            test.press(test.named("keepClimate"));
            tryVerify(() => test.named("keepClimate") === null, test.patience);
            tryVerify(() => test.named("assumedText").text.indexOf("\u22123 °C") >= 0, test.patience);
        }

        function test_bothWaysUp_nothingStandsOut_data() {
            return [
                { tag: "landscape", width: 1172, height: 800 },
                { tag: "portrait", width: 800, height: 1188 },
            ];
        }

        function test_bothWaysUp_nothingStandsOut(row) {
            test.showPlace("Unheated lean-to", row.width, row.height);
            tryVerify(() => test.named("placeBand").chart.levelsAt.length > 1, test.patience);
            test.nothingStandsOut();
        }
    }
}
