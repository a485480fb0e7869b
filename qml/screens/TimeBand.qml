pragma ComponentBehavior: Bound

import QtCharts
import QtQuick
import Gluewright.Backend
import Gluewright.Ui

// One quantity against time: a band from low to high, what is wanted of it, and the axes in our own figures. What is
// assumed or still to come is paler.
Item {
    id: root

    required property TimeChart chart
    property bool showsTimes: true
    property color ink: Theme.accentInk

    readonly property rect plot: Qt.rect(72, 10, Math.max(1, root.width - 84), Math.max(1, root.height - (root.showsTimes ? 42 : 20)))
    // As few of the times as have room.
    readonly property int stride: Math.max(1, Math.ceil(root.chart.timesAt.length * 104 / root.plot.width))

    function xOf(time: real): real {
        return root.plot.x + time / root.chart.span * root.plot.width;
    }

    function yOf(level: real): real {
        return root.plot.y + (root.chart.high - level) / (root.chart.high - root.chart.low) * root.plot.height;
    }

    function fill(upper: LineSeries, lower: LineSeries, band: list<real>) {
        upper.clear();
        lower.clear();
        for (let i = 0; i + 2 < band.length; i += 3) {
            lower.append(band[i], band[i + 1]);
            upper.append(band[i], band[i + 2]);
        }
    }

    function redraw() {
        root.fill(solidUpper, solidLower, root.chart.solid);
        root.fill(paleUpper, paleLower, root.chart.pale);
    }

    Accessible.name: root.chart.spoken
    Accessible.role: Accessible.Graphic
    implicitHeight: 260
    implicitWidth: 480

    Component.onCompleted: root.redraw()

    Connections {
        function onDrawn() {
            root.redraw();
        }

        target: root.chart
    }

    Rectangle {
        color: Theme.goodWash
        height: root.chart.zone.length === 2 ? root.yOf(root.chart.zone[0]) - y : 0
        visible: root.chart.zone.length === 2
        width: root.plot.width
        x: root.plot.x
        y: root.chart.zone.length === 2 ? root.yOf(root.chart.zone[1]) : 0
    }

    Repeater {
        model: root.chart.levelsAt

        Item {
            id: level

            required property int index
            required property real modelData

            y: root.yOf(level.modelData)

            Rectangle {
                color: Theme.line
                height: 1
                width: root.plot.width
                x: root.plot.x
            }

            Figures {
                Accessible.ignored: true
                color: Theme.inkQuiet
                size: Theme.textSmall
                text: root.chart.levelTexts[level.index] ?? ""
                x: root.plot.x - width - Theme.space2
                y: -height / 2
            }
        }
    }

    Repeater {
        model: root.chart.timesAt

        Item {
            id: time

            required property int index
            required property real modelData

            x: root.xOf(time.modelData)

            Rectangle {
                color: Theme.line
                height: root.plot.height + (root.showsTimes ? 6 : 0)
                width: 1
                y: root.plot.y
            }

            Figures {
                id: words
                Accessible.ignored: true
                color: Theme.inkQuiet
                size: Theme.textSmall
                text: root.chart.timeTexts[time.index] ?? ""
                visible: root.showsTimes && time.index % root.stride === 0
                x: Math.max(-time.x, Math.min(-width / 2, root.width - time.x - width))
                y: root.plot.y + root.plot.height + Theme.space2
            }
        }
    }

    // Axes of categories without any: of the axes the chart has, qmllint of Qt 6.4 knows these. What is written on them
    // stands above, in our own figures.
    ChartView {
        anchors.fill: parent
        animationOptions: ChartView.NoAnimation
        antialiasing: true
        backgroundColor: "transparent"
        dropShadowEnabled: false
        legend.visible: false
        plotArea: root.plot

        CategoryAxis {
            id: timeAxis
            gridVisible: false
            labelsVisible: false
            lineVisible: false
            max: root.chart.span
            min: 0
        }

        CategoryAxis {
            id: levelAxis
            gridVisible: false
            labelsVisible: false
            lineVisible: false
            max: root.chart.high
            min: root.chart.low
        }

        AreaSeries {
            axisX: timeAxis
            axisY: levelAxis
            borderColor: "transparent"
            color: Qt.alpha(root.ink, 0.3)

            lowerSeries: LineSeries {
                id: paleLower
            }

            upperSeries: LineSeries {
                id: paleUpper
            }
        }

        AreaSeries {
            axisX: timeAxis
            axisY: levelAxis
            borderColor: "transparent"
            color: Qt.alpha(root.ink, 0.85)

            lowerSeries: LineSeries {
                id: solidLower
            }

            upperSeries: LineSeries {
                id: solidUpper
            }
        }
    }

    Rectangle {
        color: Theme.doNotUse
        height: 2
        visible: root.chart.limit >= 0
        width: root.plot.width
        x: root.plot.x
        y: root.yOf(root.chart.limit) - 1
    }

    Rectangle {
        color: Theme.inkQuiet
        height: root.plot.height
        visible: root.chart.now >= 0
        width: 2
        x: root.xOf(root.chart.now) - 1
        y: root.plot.y
    }
}
