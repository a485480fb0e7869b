import QtQuick

// The outlines of the six kinds of container and of a single thing (a brush), on a ground of 72 by 108. A shape it does
// not know is drawn as a jar. `body` is what holds the
// contents, between `top` (full) and 106 (the foot); `lid` is what closes it; `lines` are drawn over both.
QtObject {
    id: root

    property string shape

    readonly property string body: {
        switch (root.shape) {
        case "bottle": return "M27 16 h18 v9 c0 9 17 13 17 30 v42 q0 9 -9 9 h-34 q-9 0 -9 -9 v-42 c0 -17 17 -21 17 -30 z";
        case "tin": return "M9 17 h54 v80 c0 6 -12 9 -27 9 s-27 -3 -27 -9 z";
        case "bag": return "M13 20 h46 l6 79 q0 7 -7 7 h-44 q-7 0 -7 -7 z";
        case "tube": return "M10 14 h52 l-8 62 q-2 12 -12 14 h-12 q-10 -2 -12 -14 z";
        case "box": return "M7 30 h58 v73 q0 3 -3 3 h-52 q-3 0 -3 -3 z";
        case "item": return "M21 58 h30 l6 40 q-10 8 -21 8 q-11 0 -21 -8 z";
        default: return "M15 22 h42 q7 4 7 12 v62 q0 10 -10 10 h-36 q-10 0 -10 -10 v-62 q0 -8 7 -12 z";
        }
    }

    readonly property string lid: {
        switch (root.shape) {
        case "bottle": return "M25 3 h22 q2 0 2 2 v11 h-26 v-11 q0 -2 2 -2 z";
        case "tin": return "M9 17 c0 -5 12 -8 27 -8 s27 3 27 8 s-12 8 -27 8 s-27 -3 -27 -8 z";
        case "bag": return "M13 20 l2 -15 l6 4 l5 -5 l5 5 l5 -5 l5 5 l5 -5 l5 5 l6 -4 l2 15 z";
        case "tube": return "M25 90 h22 v14 q0 2 -2 2 h-18 q-2 0 -2 -2 z M8 3 h56 v11 h-56 z";
        case "box": return "M7 30 l9 -14 h40 l9 14 z";
        case "item": return "M33 5 q3 -3 6 0 l3 35 h-12 z M19 40 h34 v18 h-34 z";
        default: return "M13 5 q0 -2 2 -2 h42 q2 0 2 2 v17 h-46 z";
        }
    }

    readonly property string lines: {
        switch (root.shape) {
        case "bag": return "M22 20 l-3 12 M50 20 l3 12";
        case "box": return "M36 16 v24";
        case "tin": return "M19 17 c0 -2 7 -4 17 -4 s17 2 17 4 s-7 4 -17 4 s-17 -2 -17 -4";
        case "tube": return "M8 9 h56";
        default: return "M0 0";
        }
    }

    readonly property real top: {
        switch (root.shape) {
        case "bottle": return 30;
        case "tin": return 27;
        case "bag": return 26;
        case "tube": return 18;
        case "box": return 34;
        case "item": return 58;
        default: return 28;
        }
    }

    readonly property real foot: root.shape === "tube" ? 90 : 106
}
