import QtQuick
import QtTest
import Gluewright.Ui

TestCase {
    id: testCase
    height: 400
    name: "Signs"
    visible: true
    when: windowShown
    width: 600

    Component {
        id: signMaker
        JointSign {}
    }

    Component {
        id: vesselMaker
        Vessel {}
    }

    Component {
        id: badgeMaker
        VerdictBadge {}
    }

    Component {
        id: figuresMaker
        Figures {}
    }

    function test_sign_hasADrawingInBothThemes_data() {
        return [
            { tag: "good", word: "Good", file: "good" },
            { tag: "test_first", word: "Test first", file: "test-first" },
            { tag: "do_not_use", word: "Do not use", file: "do-not-use" },
            { tag: "not_known", word: "Not known", file: "not-known" },
        ];
    }

    function test_sign_hasADrawingInBothThemes(row) {
        for (const dark of [false, true]) {
            Theme.dark = dark;
            const sign = createTemporaryObject(signMaker, testCase, { verdict: row.tag });
            const image = findChild(sign, "drawing");
            tryCompare(image, "status", Image.Ready);
            verify(image.source.toString().endsWith("/" + row.file + (dark ? "-dark.svg" : ".svg")));
            compare(sign.Accessible.name, row.word);
        }
        Theme.dark = false;
    }

    // Whatever nobody foresaw is not known; it never becomes good.
    function test_sign_ofAnUnforeseenWord_isNotKnown_data() {
        return [{ tag: "" }, { tag: "Good" }, { tag: "GOOD" }, { tag: "pass" }, { tag: "null" }];
    }

    function test_sign_ofAnUnforeseenWord_isNotKnown(row) {
        const sign = createTemporaryObject(signMaker, testCase, { verdict: row.tag });
        compare(sign.drawing, "not-known");
        compare(Theme.verdictWord(row.tag), "Not known");
        verify(Qt.colorEqual(Theme.verdictColor(row.tag), Theme.notKnown));
    }

    function test_gate_borrowsTheSign() {
        compare(Theme.gateVerdict("pass"), "good");
        compare(Theme.gateVerdict("warn"), "test_first");
        compare(Theme.gateVerdict("stop"), "do_not_use");
        compare(Theme.gateVerdict("unknown"), "not_known");
        compare(Theme.gateVerdict("anything"), "not_known");
    }

    function test_badge_saysWordAndReason() {
        const badge = createTemporaryObject(badgeMaker, testCase, { note: "Froze on 14 Jan", verdict: "do_not_use", width: 300 });
        compare(badge.Accessible.name, "Do not use. Froze on 14 Jan");
    }

    // What is drawn is looked at: the vessel is grabbed and its pixels are asked.
    function pixelShare(vessel: Item, wanted: color): real {
        const image = grabImage(vessel);
        let hits = 0;
        for (let y = 0; y < image.height; y += 2)
            for (let x = 0; x < image.width; x += 2)
                if (Math.abs(image.red(x, y) / 255 - wanted.r) < 0.03 && Math.abs(image.green(x, y) / 255 - wanted.g) < 0.03
                    && Math.abs(image.blue(x, y) / 255 - wanted.b) < 0.03)
                    ++hits;
        return hits / (image.width * image.height / 4);
    }

    function test_vessel_showsMoreWhenThereIsMore_data() {
        return [{ tag: "bottle" }, { tag: "jar" }, { tag: "tin" }, { tag: "bag" }, { tag: "tube" }, { tag: "box" }, { tag: "item" }];
    }

    function test_vessel_showsMoreWhenThereIsMore(row) {
        const contents = Qt.color("#2040c0");
        const shares = [0, 0.25, 0.5, 1].map(level => {
            const vessel = createTemporaryObject(vesselMaker, testCase, { contents: contents, level: level, shape: row.tag });
            const share = pixelShare(vessel, contents);
            vessel.destroy();
            return share;
        });
        verify(shares[0] < 0.005, "an empty vessel shows contents: " + shares[0]);
        verify(shares[1] > shares[0] + 0.02, "a quarter: " + shares[1]);
        verify(shares[2] > shares[1] + 0.02, "a half: " + shares[2]);
        verify(shares[3] > shares[2] + 0.02, "full: " + shares[3]);
    }

    function test_vessel_ofUnknownLevel_showsNoContents() {
        const contents = Qt.color("#2040c0");
        const vessel = createTemporaryObject(vesselMaker, testCase, { contents: contents, level: -1, shape: "jar" });
        verify(pixelShare(vessel, contents) < 0.005);
        compare(vessel.Accessible.name, "Amount not known");
        const empty = createTemporaryObject(vesselMaker, testCase, { contents: contents, level: 0, shape: "jar" });
        compare(empty.Accessible.name, "0 percent left");
    }

    // Tabular figures: in one size every string of the same pattern has the same width, whatever the digits.
    function test_figures_standInEvenCells_data() {
        return [{ tag: "111.1 g", other: "888.8 g" }, { tag: "1 111", other: "4 270" }, { tag: "11:11", other: "20:45" }];
    }

    function test_figures_standInEvenCells(row) {
        const one = createTemporaryObject(figuresMaker, testCase, { text: row.tag });
        const other = createTemporaryObject(figuresMaker, testCase, { text: row.other });
        verify(one.width > 20);
        compare(one.width, other.width);
        compare(one.Accessible.name, row.tag);
    }

    function test_figures_ofNothing_takeNoRoom() {
        compare(createTemporaryObject(figuresMaker, testCase, { text: "" }).width, 0);
    }
}
