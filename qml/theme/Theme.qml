pragma Singleton

import QtQuick

// Every colour, size and duration of the screens. Colours come in pairs (light, dark); the contrast of each pair that
// is used together is measured by tests/qml/parts/tst_contrast.qml against WCAG 2.2.
QtObject {
    id: root

    // Set once by the main window from the shop's own choice or the system's.
    property bool dark: false

    // Grounds, from the page up.
    readonly property color paper: dark ? "#1E1712" : "#F6F1E7"
    readonly property color card: dark ? "#2A211A" : "#FFFDF8"
    readonly property color raised: dark ? "#352A21" : "#FFFDF8"
    readonly property color sunken: dark ? "#17110D" : "#FFFFFF"
    readonly property color scrim: dark ? "#A6000000" : "#802A1D12"

    // `line` only divides; `edge` outlines what can be touched and must stand out by itself.
    readonly property color line: dark ? "#4A3D32" : "#DCD1BF"
    readonly property color edge: dark ? "#95836F" : "#8A7862"
    readonly property color ink: dark ? "#F4EADB" : "#2A211B"
    readonly property color inkQuiet: dark ? "#C9B8A4" : "#655748"

    // The rail and the undo bar.
    readonly property color walnut: dark ? "#130E0A" : "#4A3426"
    readonly property color walnutLit: dark ? "#4A3627" : "#6A4E3B"
    readonly property color walnutInk: dark ? "#FFF1DC" : "#FFF6E8"
    readonly property color walnutInkQuiet: dark ? "#D3C2AE" : "#E3D5C5"
    readonly property color railMark: dark ? "#F6C974" : "#F6D9A6"

    // The one accent. Amber alone is too pale against paper to mark a button, hence its edge.
    readonly property color amber: dark ? "#E3A23A" : "#D58F1F"
    readonly property color amberPressed: dark ? "#C88921" : "#BF7C12"
    readonly property color amberEdge: dark ? "#E3A23A" : "#8A5600"
    readonly property color amberInk: "#231506"
    readonly property color accentInk: dark ? "#F0B552" : "#8A5600"
    readonly property color focus: dark ? "#FFD591" : "#7A4B00"

    // Verdicts: a text colour and a wash to stand behind it.
    readonly property color good: dark ? "#84CBA6" : "#2A664A"
    readonly property color testFirst: dark ? "#F0B552" : "#855800"
    readonly property color doNotUse: dark ? "#F79A88" : "#9B2D20"
    readonly property color notKnown: dark ? "#B9C3CB" : "#525C65"
    readonly property color goodWash: dark ? "#22382D" : "#E6F0E6"
    readonly property color testFirstWash: dark ? "#43321A" : "#FBEED3"
    readonly property color doNotUseWash: dark ? "#4A2720" : "#F9E3DC"
    readonly property color notKnownWash: dark ? "#343837" : "#E9EBEA"

    // Vessels.
    readonly property color glass: dark ? "#40352B" : "#EFE7D8"
    readonly property color vesselEdge: dark ? "#CDBBA5" : "#4A3426"

    // Distances, radii, touch targets, all in device-independent pixels.
    readonly property int space1: 4
    readonly property int space2: 8
    readonly property int space3: 12
    readonly property int space4: 16
    readonly property int space5: 24
    readonly property int space6: 32
    readonly property int space7: 48
    readonly property int radiusSmall: 8
    readonly property int radius: 14
    readonly property int radiusLarge: 20
    readonly property int touch: 48
    readonly property int touchMain: 64

    readonly property int textSmall: 16
    readonly property int textBody: 18
    readonly property int textStrong: 20
    readonly property int textTitle: 24
    readonly property int textScreen: 32
    readonly property int textBig: 44

    // Milliseconds.
    readonly property int quick: 120
    readonly property int move: 220
    readonly property int undoStay: 12000

    readonly property string fontFamily: firstInstalled(["Inter", "Noto Sans", "DejaVu Sans"])

    function firstInstalled(wanted: list<string>): string {
        const installed = Qt.fontFamilies();
        const found = wanted.find(family => installed.includes(family));
        return found === undefined ? Qt.application.font.family : found;
    }

    function verdictColor(verdict: string): color {
        switch (verdict) {
        case "good": return root.good;
        case "test_first": return root.testFirst;
        case "do_not_use": return root.doNotUse;
        default: return root.notKnown;
        }
    }

    function verdictWash(verdict: string): color {
        switch (verdict) {
        case "good": return root.goodWash;
        case "test_first": return root.testFirstWash;
        case "do_not_use": return root.doNotUseWash;
        default: return root.notKnownWash;
        }
    }

    function verdictWord(verdict: string): string {
        switch (verdict) {
        case "good": return qsTr("Good");
        case "test_first": return qsTr("Test first");
        case "do_not_use": return qsTr("Do not use");
        default: return qsTr("Not known");
        }
    }

    // A gate borrows the joint sign: what it says of the stock it says of the work.
    function gateVerdict(result: string): string {
        switch (result) {
        case "pass": return "good";
        case "warn": return "test_first";
        case "stop": return "do_not_use";
        default: return "not_known";
        }
    }

    function contentsColor(kind: string): color {
        switch (kind) {
        case "hide": return "#C9974F";
        case "liquid_hide": return "#B9782E";
        case "pva": return "#FAF6EA";
        case "resin": return "#CFE0E4";
        case "hardener": return "#E9D7A8";
        case "shellac": return "#D97F2B";
        case "powder": return "#E4DCCB";
        case "silica": return "#FFFFFF";
        case "dye": return "#7A4324";
        case "solvent": return "#D5E6EE";
        case "wax": return "#E8CF8E";
        default: return "#C8BBA6";
        }
    }
}
