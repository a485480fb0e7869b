import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// The check before a glue-up under the thumb: choosing, saying what is known, recording, taking it back.
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

        name: "GlueUp"
        screen: GlueUpScreen {}

        function choose(work: string) {
            test.press(test.waitFor(() => test.named("jobTypePicker"), "the work"));
            const search = test.waitFor(() => test.named("jobTypeSearch"), "the search");
            tryVerify(() => test.named("jobTypes").count > 15, test.patience);
            search.edited(work);
            tryVerify(() => test.named("jobTypes").count === 1, test.patience);
            test.press(test.waitFor(() => test.find(item => item.text === work && item.taken !== undefined), "the row"));
            tryVerify(() => test.named("jobTypeList") === null || !test.named("jobTypeList").visible, test.patience);
            tryVerify(() => test.named("answerText") !== null && test.named("answerText").text.length > 0, test.patience);
        }

        function test_beforeAnythingIsChosen_onlyTheChoiceIsThere() {
            test.show(1172, 800);
            verify(test.waitFor(() => test.says("What is to be glued?"), "what to do"));
            compare(test.named("recordButton"), null);
            compare(test.named("answerText"), null);
        }

        function test_list_opensOnTheKeyboard() {
            test.show(1172, 800);
            const picker = test.waitFor(() => test.named("jobTypePicker"), "the work");
            picker.forceActiveFocus();
            keyClick(Qt.Key_Down);
            const list = test.waitFor(() => test.named("jobTypes"), "the list");
            tryVerify(() => list.count > 15 && list.activeFocus, test.patience);
            keyClick(Qt.Key_Down);
            keyClick(Qt.Key_Down);
            keyClick(Qt.Key_Return);
            tryVerify(() => test.named("answerText") !== null, test.patience);
        }

        function test_aConditionIsSaid_changed_andForgotten() {
            test.show(1172, 800);
            test.choose("Chair, full reglue");
            const tile = test.named("airTile");
            const gate = test.named("gate_air");
            compare(gate.result, "unknown");
            verify(test.inside(tile, "forget") === null, "nothing is said, so nothing can be forgotten");
            test.press(test.inside(tile, "more"));
            tryVerify(() => gate.result !== "unknown" && gate.result !== "stop", test.patience);
            compare(test.inside(tile, "box").text, "20");
            test.press(test.inside(tile, "less"));
            tryCompare(gate, "result", "stop", test.patience);
            tryVerify(() => test.named("firstFixText").text.indexOf("Warm the room") === 0, test.patience);
            test.press(test.inside(tile, "forget"));
            tryCompare(gate, "result", "unknown", test.patience);
            compare(test.inside(tile, "box").text, "");
        }

        function test_say_putsTheKeyboardOnWhatIsMissing() {
            test.show(1172, 800);
            test.choose("Chair, full reglue");
            const gate = test.named("gate_wood");
            gate.acted();
            const box = test.inside(test.named("woodTile"), "box");
            tryVerify(() => box.activeFocus, test.patience);
            keyClick(Qt.Key_2);
            keyClick(Qt.Key_2);
            tryVerify(() => gate.result !== "unknown", test.patience);
            compare(box.text, "22");
        }

        function test_whatCannotBeRead_isSaid() {
            test.show(1172, 800);
            test.choose("Chair, full reglue");
            test.inside(test.named("woodTile"), "box").forceActiveFocus();
            keyClick(Qt.Key_X);
            verify(test.waitFor(() => test.says("does not begin with a number"), "what is wrong"));
            compare(test.named("gate_wood").result, "unknown");
        }

        function test_recording_saysSo_andUndoTakesItBack() {
            test.show(1172, 800);
            test.choose("Panel of four boards");
            const button = test.named("recordButton");
            tryCompare(button, "enabled", true, test.patience);
            test.named("pieceField").forceActiveFocus();
            keyClick(Qt.Key_B);
            keyClick(Qt.Key_O);
            keyClick(Qt.Key_X);
            said.clear();
            test.press(button);
            tryCompare(said, "count", 1, test.patience);
            verify(said.signalArguments[0][0].indexOf("Used") === 0);
            verify(said.signalArguments[0][1].length > 0, "it can be undone");
            tryCompare(test.named("pieceField"), "text", "", test.patience);
            AppServices.undo(said.signalArguments[0][1]);
            tryCompare(said, "count", 2, test.patience);
        }

        function test_containerToUse_leadsToItsPage() {
            test.show(1172, 800);
            test.choose("Chair, full reglue");
            const list = test.named("useList");
            const row = test.waitFor(() => test.walk(list, item => item.label !== undefined && item.clicked !== undefined), "a container");
            test.press(row);
            tryVerify(() => AppServices.navigation.container.length > 0, test.patience);
            AppServices.navigation.back();
        }

        function test_hazards_deferToLabelAndSheet() {
            test.show(1172, 800);
            test.choose("Shattered leg rebuilt");
            const text = test.waitFor(() => test.named("hazardText"), "the caution");
            verify(text.text.indexOf("safety data sheet") > 0);
        }

        function test_targets_areWideEnough() {
            test.show(1172, 800);
            test.choose("Chair, full reglue");
            for (const name of ["more", "less"]) {
                const button = test.inside(test.named("airTile"), name);
                verify(button.width >= Theme.touch && button.height >= Theme.touch);
            }
            verify(test.named("recordButton").height >= Theme.touchMain);
            verify(test.named("jobTypePicker").height >= Theme.touchMain);
            verify(test.named("piecesStepper").height >= Theme.touchMain);
        }

        function test_bothWaysUp_nothingStandsOut_data() {
            return [
                { tag: "landscape", width: 1172, height: 800 },
                { tag: "portrait", width: 800, height: 1188 },
                { tag: "small", width: 480, height: 620 },
            ];
        }

        function test_bothWaysUp_nothingStandsOut(row) {
            test.show(row.width, row.height);
            test.choose("Shattered leg rebuilt");
            tryVerify(() => test.named("weighList") !== null, test.patience);
            test.nothingStandsOut();
        }
    }
}
