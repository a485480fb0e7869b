import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// The order list under the thumb: its month, how sure, how much work, the packs, and the file.
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

        name: "Order"
        screen: OrderScreen {}

        function list(): Item {
            const list = test.waitFor(() => test.named("orderList"), "the list");
            tryVerify(() => list.count > 5, test.patience);
            return list;
        }

        function test_lines_haveReasonAndFigures() {
            test.show(1172, 800);
            const line = test.walk(test.list(), item => item.usableLevel !== undefined);
            verify(line !== null);
            verify(line.why.length > 20);
            verify(line.headed, "the first line carries its supplier");
            verify(test.says(line.figuresText));
        }

        function test_notes_standUnderTheLastLine() {
            test.show(1172, 800);
            const list = test.list();
            list.positionViewAtEnd();
            const notes = test.waitFor(() => test.named("orderNotes"), "the notes");
            verify(notes.reasons.length > 0);
        }

        function test_moreSurety_costsNoLess() {
            test.show(1172, 800);
            test.list();
            const total = test.named("totalText");
            const amount = () => parseFloat(total.text);
            const choice = test.named("serviceChoice");
            choice.picked(0);
            compare(choice.currentIndex, 0);
            let few = 0;
            tryVerify(() => { few = amount(); return few > 0; }, test.patience);
            const controller = test.find(item => item.objectName === "totalText").parent;
            verify(controller !== null);
            choice.picked(3);
            tryVerify(() => amount() > few, test.patience);
            choice.picked(2);
        }

        function test_workAMonth_isSteppedAndKept() {
            test.show(1172, 800);
            test.list();
            test.press(test.named("ratesButton"));
            const row = test.waitFor(() => test.named("rate_chair_full"), "one kind of work");
            const before = row.rate;
            test.press(test.inside(row, "more"));
            tryVerify(() => test.named("rate_chair_full").rate !== before, test.patience);
            test.press(test.inside(test.named("rate_chair_full"), "fewer"));
            tryVerify(() => test.named("rate_chair_full").rate === before, test.patience);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("rate_chair_full") === null, test.patience);
        }

        function test_packs_oneIsAdded() {
            test.show(1172, 800);
            test.list();
            test.press(test.named("packsButton"));
            const add = test.waitFor(() => test.named("addPack"), "the way to add one");
            tryCompare(add, "enabled", true, test.patience);
            test.press(add);
            const save = test.waitFor(() => test.named("savePack"), "the way to keep it");
            verify(!save.enabled);
            test.named("packMaterial").picked(0);
            test.named("packAmount").edited("17 g");
            test.named("packPrice").edited("3.20");
            tryCompare(save, "enabled", true, test.patience);
            test.press(save);
            test.waitFor(() => test.named("addPack"), "the list again");
            tryVerify(() => test.says("17\u00a0g") !== null, test.patience);
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("addPack") === null, test.patience);
        }

        function test_packs_whatCannotBe_isSaidInTheForm() {
            test.show(1172, 800);
            test.list();
            test.press(test.named("packsButton"));
            test.press(test.waitFor(() => test.named("addPack"), "the way to add one"));
            test.waitFor(() => test.named("packMaterial"), "the form").picked(0);
            test.named("packAmount").edited("a lot");
            test.press(test.named("savePack"));
            test.waitFor(() => test.says("does not begin with a number"), "what is wrong");
            keyClick(Qt.Key_Escape);
            tryVerify(() => test.named("savePack") === null, test.patience);
        }

        function test_targets_areWideEnough() {
            test.show(1172, 800);
            test.list();
            for (const name of ["monthBack", "monthOn", "saveCsvButton", "serviceChoice"])
                verify(test.named(name).height >= Theme.touchMain, name);
            for (const name of ["ratesButton", "packsButton"])
                verify(test.named(name).height >= Theme.touch, name);
        }

        function test_bothWaysUp_nothingStandsOut_data() {
            return [
                { tag: "landscape", width: 1172, height: 800 },
                { tag: "portrait", width: 800, height: 1188 },
            ];
        }

        function test_bothWaysUp_nothingStandsOut(row) {
            test.show(row.width, row.height);
            test.list();
            test.nothingStandsOut();
        }
    }
}
