import QtQuick
import QtTest
import Gluewright.Ui

TestCase {
    id: testCase
    height: 700
    name: "Fields"
    visible: true
    when: windowShown
    width: 700

    Component {
        id: stepperMaker
        Stepper {
            label: "How many"
            width: 360
        }
    }

    Component {
        id: fieldMaker
        Field {
            label: "Lot"
            width: 360
        }
    }

    Component {
        id: amountMaker
        AmountField {
            label: "Amount"
            unit: "g"
            units: ["g", "ml", "fl oz"]
            width: 420
        }
    }

    Component {
        id: dateMaker
        DateField {
            label: "Made"
            today: "2025-11-25"
            width: 420
        }
    }

    Component {
        id: pickerMaker
        Picker {
            label: "Place"
            options: ["Bench", "Lean-to shelf", "Dry cupboard"]
            width: 360
        }
    }

    Component {
        id: searchMaker
        SearchField {}
    }

    Component {
        id: spyMaker
        SignalSpy {}
    }

    function spyOn(target: QtObject, signalName: string): SignalSpy {
        return createTemporaryObject(spyMaker, testCase, { signalName: signalName, target: target });
    }

    function test_stepper_stopsAtItsLimits() {
        const stepper = createTemporaryObject(stepperMaker, testCase, { from: 0, to: 2, value: 1 });
        const changed = spyOn(stepper, "changed");
        const box = findChild(stepper, "spin");
        mouseClick(box, box.width - 20, box.height / 2);
        compare(stepper.value, 2);
        mouseClick(box, box.width - 20, box.height / 2);
        compare(stepper.value, 2);
        for (let i = 0; i < 4; ++i)
            mouseClick(box, 20, box.height / 2);
        compare(stepper.value, 0);
        compare(changed.count, 3);
    }

    function test_stepper_takesATypedNumberAndArrowKeys() {
        const stepper = createTemporaryObject(stepperMaker, testCase, { from: 0, to: 50, value: 1 });
        const box = findChild(stepper, "spin");
        box.contentItem.forceActiveFocus();
        box.contentItem.selectAll();
        keyClick(Qt.Key_4);
        keyClick(Qt.Key_2);
        keyClick(Qt.Key_Return);
        compare(stepper.value, 42);
        keyClick(Qt.Key_Up);
        compare(stepper.value, 43);
        keyClick(Qt.Key_Down);
        keyClick(Qt.Key_Down);
        compare(stepper.value, 41);
    }

    function test_stepper_indicators_areMainTargets() {
        const box = findChild(createTemporaryObject(stepperMaker, testCase), "spin");
        verify(box.up.indicator.width >= Theme.touchMain);
        verify(box.down.indicator.width >= Theme.touchMain);
        verify(box.height >= Theme.touchMain);
    }

    function test_field_sendsWhatIsTypedAndFollowsTheDraft() {
        const field = createTemporaryObject(fieldMaker, testCase);
        const edited = spyOn(field, "edited");
        field.focusBox();
        keyClick(Qt.Key_2);
        keyClick(Qt.Key_4);
        compare(edited.count, 2);
        compare(edited.signalArguments[1][0], "24");
        field.text = "25-003";
        compare(findChild(field, "box").text, "25-003");
        compare(edited.count, 2);
    }

    function test_field_inError_saysSoAndGrows() {
        const field = createTemporaryObject(fieldMaker, testCase, { hint: "As on the label" });
        const before = field.height;
        field.errorText = "A lot number has at most 20 characters. Check it against the label and type it again as it stands there.";
        tryVerify(() => field.height > before);
        verify(Qt.colorEqual(field.boxEdge, Theme.doNotUse));
        compare(findChild(field, "box").Accessible.description, field.errorText);
    }

    function test_amount_unitIsPicked() {
        const amount = createTemporaryObject(amountMaker, testCase);
        const picked = spyOn(amount, "unitPicked");
        const units = findChild(amount, "units");
        mouseClick(units, units.width - 20, units.height / 2);
        compare(picked.count, 1);
        compare(picked.signalArguments[0][0], "fl oz");
    }

    // Expected dates: proleptic Gregorian calendar as in ISO 8601; 2024 is a leap year, 2100 is not.
    function test_date_steps_data() {
        return [
            { tag: "day over a month's end", text: "2025-01-31", kind: 0, way: 1, wants: "2025-02-01" },
            { tag: "day over the leap day", text: "2024-02-28", kind: 0, way: 1, wants: "2024-02-29" },
            { tag: "day in a century year", text: "2100-02-28", kind: 0, way: 1, wants: "2100-03-01" },
            { tag: "day back over the year", text: "2025-01-01", kind: 0, way: -1, wants: "2024-12-31" },
            { tag: "month keeps the last day", text: "2025-01-31", kind: 1, way: 1, wants: "2025-02-28" },
            { tag: "month back from March", text: "2024-03-31", kind: 1, way: -1, wants: "2024-02-29" },
            { tag: "month over the year", text: "2025-12-15", kind: 1, way: 1, wants: "2026-01-15" },
            { tag: "year from the leap day", text: "2024-02-29", kind: 2, way: 1, wants: "2025-02-28" },
            { tag: "nothing written starts today", text: "", kind: 0, way: -1, wants: "2025-11-24" },
            { tag: "half a date starts today", text: "2025-0", kind: 2, way: 1, wants: "2026-11-25" },
        ];
    }

    function test_date_steps(row) {
        const field = createTemporaryObject(dateMaker, testCase, { stepKind: row.kind, text: row.text });
        compare(field.stepped(row.way), row.wants);
    }

    function test_date_withoutTodayOrText_staysEmpty() {
        const field = createTemporaryObject(dateMaker, testCase, { text: "", today: "" });
        compare(field.stepped(1), "");
    }

    function test_date_canBeNotKnown() {
        const field = createTemporaryObject(dateMaker, testCase, { text: "2025-01-31" });
        const known = spyOn(field, "knownPicked");
        mouseClick(findChild(field, "notKnown"));
        compare(known.count, 1);
        compare(known.signalArguments[0][0], false);
        field.known = false;
        mouseClick(findChild(field, "notKnown"));
        compare(known.count, 2);
        compare(known.signalArguments[1][0], true);
    }

    function test_picker_opensAndTakesByKeyboard() {
        const picker = createTemporaryObject(pickerMaker, testCase, { currentIndex: 0 });
        const picked = spyOn(picker, "picked");
        findChild(picker, "face").forceActiveFocus();
        keyClick(Qt.Key_Down);
        tryVerify(() => findChild(picker, "list").opened);
        keyClick(Qt.Key_Down);
        keyClick(Qt.Key_Return);
        compare(picked.count, 1);
        compare(picked.signalArguments[0][0], 1);
        tryVerify(() => !findChild(picker, "list").visible);
        verify(findChild(picker, "face").activeFocus);
    }

    function test_picker_closesByEscapeTakingNothing() {
        const picker = createTemporaryObject(pickerMaker, testCase);
        const picked = spyOn(picker, "picked");
        picker.openList();
        tryVerify(() => findChild(picker, "list").opened);
        keyClick(Qt.Key_Escape);
        tryVerify(() => !findChild(picker, "list").visible);
        compare(picked.count, 0);
    }

    function test_picker_withNothingTaken_asksToChoose() {
        const picker = createTemporaryObject(pickerMaker, testCase);
        compare(findChild(picker, "face").text, "Choose");
        compare(findChild(picker, "face").Accessible.name, "Place: Choose");
    }

    function test_search_isClearedByEscape() {
        const search = createTemporaryObject(searchMaker, testCase);
        const edited = spyOn(search, "edited");
        const cleared = spyOn(search, "cleared");
        search.forceActiveFocus();
        keyClick(Qt.Key_A);
        compare(edited.count, 1);
        keyClick(Qt.Key_Escape);
        compare(cleared.count, 1);
        compare(edited.signalArguments[1][0], "");
        keyClick(Qt.Key_Escape);
        compare(cleared.count, 1);
    }
}
