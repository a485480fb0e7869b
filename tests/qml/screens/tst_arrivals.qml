import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// The arrivals screen under a thumb: what it asks, what one press does, and what it says when nothing can be done.
Item {
    id: root

    height: 800
    width: 1172

    ScreenCase {
        id: test

        readonly property string whiteGlue: "(01)09520001421174(10)W-77(17)280531"

        name: "Arrivals"
        screen: ArrivalsScreen {}

        function see(name: string): Item {
            return test.waitFor(() => test.named(name), name);
        }

        function pressOn(name: string) {
            const item = test.see(name);
            tryCompare(item, "enabled", true);
            test.press(item);
        }

        // A tile of a choice, by where it stands.
        function pick(name: string, index: int) {
            test.see(name).picked(index);
        }

        function type(text: string) {
            for (const letter of text)
                keyClick(letter);
        }

        function fill(name: string, text: string) {
            const box = test.waitFor(() => test.walk(test.see(name), item => item.cursorPosition !== undefined), name);
            box.forceActiveFocus(Qt.TabFocusReason); // it may stand below the fold
            box.selectAll();
            test.type(text);
            tryCompare(box, "text", text);
        }

        function search(text: string) {
            const field = test.see("search");
            tryVerify(() => test.walk(field, item => item.activeFocus) !== null);
            test.type(text);
        }

        function searchClosed() {
            tryVerify(() => test.named("search") === null, test.patience);
        }

        function offer(code: string, width: int, height: int) {
            test.show(width, height);
            AppServices.scanner.typed(code);
            test.see("bookIn");
        }

        function bookedLabel(): string {
            test.pressOn("bookIn");
            return test.see("newLabel").text;
        }

        function cleanup() {
            while (test.named("putAside"))
                test.pressOn("putAside");
            stage.sourceComponent = null;
        }

        function test_knownProduct_isBookedInByOnePress() {
            test.offer(test.whiteGlue, 1172, 800);
            compare(test.see("headName").text, "White wood glue");
            compare(test.named("headAmount").text, "1\u00a0kg");
            verify(!test.named("amount"), "nothing is asked that is known");
            verify(!test.named("dateKind"));
            verify(!test.named("name"));
            test.pressOn("bookIn");
            const label = test.see("newLabel");
            verify(/^GW[A-Z2-9]{7}$/.test(label.text), label.text);
            verify(label.size >= 40, "to be read across the bench");
            test.pressOn("arrival-" + label.text);
            compare(AppServices.navigation.container.length > 0, true);
            AppServices.navigation.back();
        }

        function test_undoOnTheList_takesTheArrivalBack() {
            test.offer(test.whiteGlue, 1172, 800);
            const code = test.bookedLabel();
            const line = test.see("arrival-" + code);
            const undo = test.waitFor(() => test.walk(line.parent, item => item.objectName === "undoArrival"), "undo");
            test.press(undo);
            tryVerify(() => test.named("arrival-" + code) === null, test.patience);
            tryVerify(() => test.named("newLabel") === null, test.patience);
        }

        function test_severalOfTheSame_standOnTheButton() {
            test.offer(test.whiteGlue, 1172, 800);
            test.see("count").changed(3);
            tryCompare(test.named("bookIn"), "text", "Book in all 3");
        }

        function test_change_opensWhatWasRead() {
            test.offer(test.whiteGlue, 1172, 800);
            test.pressOn("change");
            test.see("amount");
            compare(test.see("date").text, "2028-05-31");
            compare(test.see("lot").text, "W-77");
            test.pick("dateKind", 2);
            tryCompare(test.named("date"), "label", "Made on");
            test.pick("dateKind", 3);
            tryVerify(() => !test.named("date"), test.patience, "no date, no day to give");
        }

        function test_newProduct_isAskedForOnce() {
            test.offer("9520123456788", 1172, 800);
            compare(test.named("bookIn").enabled, false);
            verify(test.see("lacking").text.length > 0);

            test.fill("name", "spot glue");
            test.pressOn("chooseClass");
            test.search("yellow pva");
            test.pressOn("choice-pva_yellow");
            test.searchClosed();
            tryCompare(test.see("chooseClass"), "text", "Yellow PVA");
            test.fill("amount", "250");
            tryCompare(test.named("headAmount"), "text", "250\u00a0g");
            test.pick("dateKind", 3);
            compare(test.named("bookIn").enabled, false);
            test.pick("places", 0);
            tryCompare(test.named("bookIn"), "enabled", true);
            verify(!test.named("lacking"));
            test.bookedLabel();

            AppServices.scanner.typed("9520123456788");
            compare(test.see("headName").text, "spot glue");
            verify(!test.named("chooseClass"));
        }

        function test_newHardener_isAskedForItsResin_andForTheSignsOnItsLabel() {
            test.show(1172, 800);
            test.pressOn("byHand");
            test.search("other half");
            test.pressOn("takeNew");
            test.searchClosed();
            verify(!test.named("partner"), "nothing is known of its kind yet");
            test.pressOn("chooseClass");
            test.search("hardener");
            test.pressOn("choice-epoxy_hardener_slow");
            test.searchClosed();
            const partner = test.see("partner");
            verify(partner.options.length > 1);
            partner.picked(0);
            tryCompare(partner, "currentIndex", 0);
            test.see("more").clicked();
            test.see("sign-GHS05").clicked();
            test.see("sign-GHS07").clicked();
            tryCompare(test.named("sign-GHS05"), "checked", true);
            test.see("noSigns").clicked();
            tryCompare(test.named("sign-GHS05"), "checked", false);
            test.see("sign-GHS05").clicked();
            tryCompare(test.named("noSigns"), "checked", false);
        }

        function test_label_isShownAfterBookingIn() {
            test.offer(test.whiteGlue, 1172, 800);
            const code = test.bookedLabel();
            test.pressOn("labelBooked");
            tryVerify(() => test.named("labelPreview") !== null && test.named("labelPreview").paintedWidth > 100, test.patience);
            verify(test.named("labelPreview").Accessible.name.indexOf(code) >= 0);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("labelPreview") === null, test.patience);
        }

        function test_byHand_choosesWhatTheShopHasBought() {
            test.show(1172, 800);
            test.pressOn("byHand");
            test.search("paste wax");
            test.pressOn("takeNew");
            test.searchClosed();
            compare(test.see("headName").text, "paste wax");
            test.pressOn("chooseMaterial");
            test.search("white wood");
            test.press(test.waitFor(() => test.find(item => item.objectName.startsWith("choice-") && item.name === "White wood glue"), "the glue"));
            test.searchClosed();
            test.see("packs");
            compare(test.named("headName").text, "White wood glue");
            test.pick("packs", 1);
            tryCompare(test.named("headAmount"), "text", "1\u00a0kg");
        }

        function test_lotCode_offersDaysToPick() {
            test.offer("(01)09520001421174(10)L26010A", 1172, 800);
            const tiles = test.see("lotDates");
            verify(tiles.options[0].startsWith("day 10 of 2026"), tiles.options[0]);
            compare(tiles.currentIndex, -1);
            compare(test.named("bookIn").enabled, false);
            test.pick("lotDates", 0);
            tryCompare(tiles, "currentIndex", 0);
            tryCompare(test.named("bookIn"), "enabled", true);
            test.see("headName");
            test.pick("lotDates", tiles.options.length - 1);
            tryCompare(test.named("bookIn"), "enabled", false);
        }

        function test_stockTaking_isOneThumbForEachBottle() {
            test.show(1172, 800);
            test.pressOn("stockTaking");
            test.pick("shelfPlaces", 0);
            AppServices.scanner.typed("9520001421174");
            test.pressOn("fill-0.5");
            const code = test.see("newLabel").text;
            test.see("arrival-" + code);
            tryVerify(() => test.named("taken").note.startsWith("1 "), test.patience);
            test.pressOn("stockTaking");
            const summary = test.see("summary");
            verify(summary.text.startsWith("1 "), summary.text);
            summary.dismissed();
            tryVerify(() => test.named("summary") === null, test.patience);
        }

        // What stands in a code is shown and nothing else, whatever it holds.
        function test_anyText_isOnlyShown_data() {
            return [
                { tag: "web address", text: "https://example.com/?next=javascript:alert(1)" },
                { tag: "SQL", text: "x'); DROP TABLE container; --" },
                { tag: "HTML", text: "<img src='http://example.com/x.png'><b>bold</b>" },
                { tag: "long", text: "Z".repeat(5000) },
                { tag: "a megabyte", text: "<i>".repeat(350000) }
            ];
        }

        function test_anyText_isOnlyShown(row) {
            test.show(1172, 800);
            AppServices.scanner.typed(row.text);
            const card = test.see("unusable");
            const line = test.waitFor(() => test.walk(card, item => item.textFormat !== undefined && item.text.startsWith("Read: ")), "the text");
            compare(line.textFormat, Text.PlainText);
            verify(line.text.length < 160, line.text.length);
            verify(row.text.length > 80 || line.text.includes(row.text), line.text);
            verify(!test.named("bookIn"));
            verify(card.width <= 1172);
        }

        function test_faultyCode_saysWhyAndBooksNothing() {
            test.show(1172, 800);
            AppServices.scanner.typed("9520001421175");
            test.see("unusable");
            verify(!test.named("bookIn"));
        }

        function test_passedDate_isSaid() {
            test.offer("(01)09520001421174(17)260101", 1172, 800);
            verify(test.see("caution").note.length > 0);
        }

        function test_typedCode_goesTheWayOfAScan() {
            test.show(1172, 800);
            test.fill("codeField", "9520001443107");
            keyClick(Qt.Key_Return);
            compare(test.see("headName").text, "Yellow wood glue");
        }

        function test_anotherScan_waitsInSight() {
            test.offer(test.whiteGlue, 1172, 800);
            AppServices.scanner.typed("9520001443107");
            const banner = test.see("otherWaiting");
            verify(banner.text.includes("Yellow wood glue"), banner.text);
            banner.acted();
            tryCompare(test.see("headName"), "text", "Yellow wood glue");
        }

        function test_cameraThatIsNotThere_isSaidInWords() {
            test.show(1172, 800);
            const words = test.waitFor(() => test.says(AppServices.scanner.camera.trouble), "the trouble");
            verify(words.text.endsWith("."), words.text);
            verify(test.named("codeField"), "the number can be typed");
            verify(test.named("choosePicture"));
        }

        function test_portrait_keepsTheButtonInReach() {
            test.offer(test.whiteGlue, 800, 1188);
            const button = test.named("bookIn");
            tryVerify(() => button.mapToItem(stage, 0, button.height).y <= stage.height, test.patience);
            verify(button.height >= 64);
            verify(test.named("viewfinder").height < 200);
            test.nothingStandsOut();
        }

        function test_everyTarget_isLargeEnough() {
            test.offer("9520123456788", 1172, 800);
            const buttons = [Accessible.Button, Accessible.RadioButton];
            const small = test.find(item => item.Accessible && buttons.includes(item.Accessible.role) && (item.width < 48 || item.height < 48));
            verify(small === null, small ? small.Accessible.name + " " + small.width + " x " + small.height : "");
        }
    }
}
