import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// The settings under the thumb: places, looks, units, the store and its backups, and what the answers rest on.
Item {
    id: root

    height: 800
    width: 1172

    SignalSpy {
        id: said
        signalName: "said"
        target: AppServices
    }

    ScreenCase {
        id: test

        name: "Shop"
        screen: ShopScreen {}

        function test_place_isAdded_asAnAssumption() {
            test.show(1172, 800);
            test.waitFor(() => test.says("Each range is an assumption"), "that ranges are assumed");
            test.waitFor(() => test.says("Unheated lean-to"), "a place");
            test.press(test.named("addPlaceButton"));
            const save = test.waitFor(() => test.named("savePlace"), "the way to keep it");
            verify(!save.enabled);
            test.named("placeName").edited("Attic");
            test.named("placeLow").changed(-10);
            tryCompare(save, "enabled", true, test.patience);
            test.press(save);
            tryVerify(() => test.named("savePlace") === null, test.patience);
            test.waitFor(() => test.says("Attic"), "the place");
            test.waitFor(() => test.says("\u221210 °C to 25 °C, assumed"), "its range");
        }

        function test_place_withATakenName_isRefusedInTheForm() {
            test.show(1172, 800);
            test.waitFor(() => test.says("Unheated lean-to"), "a place");
            test.press(test.named("addPlaceButton"));
            test.waitFor(() => test.named("placeName"), "the form").edited("Bench shelf");
            const save = test.named("savePlace");
            tryCompare(save, "enabled", true, test.patience);
            test.press(save);
            const form = test.named("placeName");
            tryVerify(() => test.find(item => item.kind === "error" && item.text.length > 0) !== null, test.patience);
            verify(form.visible);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("savePlace") === null, test.patience);
        }

        function test_looksAndUnits_areTaken() {
            test.show(1172, 800);
            const theme = test.waitFor(() => test.named("themeChoice"), "light or dark");
            theme.picked(2);
            compare(AppServices.settings.theme, "dark");
            compare(theme.currentIndex, 2);
            theme.picked(0);
            compare(AppServices.settings.theme, "system");
            const units = test.named("unitsChoice");
            units.picked(1);
            compare(AppServices.settings.units, "us");
            tryVerify(() => test.says("°F, assumed") !== null, test.patience);
            units.picked(0);
            tryVerify(() => test.says("°C, assumed") !== null, test.patience);
        }

        function test_store_isVerified() {
            test.show(1172, 800);
            tryVerify(() => test.named("storeWhere").text.indexOf("shop.gluewright") > 0, test.patience);
            compare(test.named("verifyResult"), null);
            test.press(test.named("verifyButton"));
            const result = test.waitFor(() => test.named("verifyResult"), "the result");
            compare(result.verdict, "good");
            verify(result.note.length > 0);
        }

        function test_backup_isMade_andSaysWhere() {
            test.show(1172, 800);
            tryVerify(() => test.named("backupFolder") !== null && test.named("backupFolder").text.length > 0, test.patience);
            said.clear();
            test.press(test.named("backupButton"));
            tryCompare(said, "count", 1, test.patience);
            verify(said.signalArguments[0][0].indexOf(test.named("backupFolder").text) >= 0);
            tryVerify(() => test.named("lastBackup").value.length > 0, test.patience);
        }

        function test_labels_ofTheShelf_areShownAsTheyPrint() {
            test.show(1172, 800);
            const button = test.waitFor(() => test.named("shelfLabels"), "the way to the labels");
            button.clicked();
            test.waitFor(() => test.says(" label"), "how many");
            tryVerify(() => test.named("labelPreview").paintedWidth > 100, test.patience);
            compare(test.named("labelLeftOut"), null);
            test.named("labelSize").picked(0);
            test.waitFor(() => test.named("labelLeftOut"), "what finds no room on the smallest");
            test.named("labelSize").picked(1);
            tryVerify(() => test.named("labelLeftOut") === null, test.patience);
            test.named("labelPage").picked(1);
            test.waitFor(() => test.says(" sheet"), "how many sheets");
            test.named("labelColumns").changed(9);
            test.waitFor(() => test.named("labelError"), "that nine do not fit");
            verify(!test.named("saveLabels").enabled);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("labelPreview") === null, test.patience);
        }

        function test_stockTable_saysItsColumnsBeforeAFileIsChosen() {
            test.show(1172, 800);
            test.waitFor(() => test.named("bringInStock"), "the way in").clicked();
            test.waitFor(() => test.says("capacity: what it holds"), "the columns");
            verify(test.named("stockNext").enabled);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("stockNext") === null, test.patience);
        }

        function test_about_saysLicenceAndSources() {
            test.show(1172, 800);
            test.waitFor(() => test.says("GPL-3.0-or-later"), "the licence");
            const row = test.named("sourcesRow");
            tryVerify(() => row.note.indexOf("of high confidence") > 0, test.patience);
            row.clicked();
            test.waitFor(() => test.says("Common practice, no source"), "what has no source");
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.says("Common practice, no source") === null, test.patience);
            test.named("cautionsRow").clicked();
            test.waitFor(() => test.says("They replace nothing"), "that they defer");
            test.waitFor(() => test.says("Storing"), "the moment");
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.says("They replace nothing") === null, test.patience);
        }

        function test_bothWaysUp_nothingStandsOut_data() {
            return [
                { tag: "landscape", width: 1172, height: 800 },
                { tag: "portrait", width: 800, height: 1188 },
            ];
        }

        function test_bothWaysUp_nothingStandsOut(row) {
            test.show(row.width, row.height);
            test.waitFor(() => test.says("of high confidence"), "the figures");
            test.nothingStandsOut();
        }
    }
}
