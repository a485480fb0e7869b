import QtQuick
import QtTest
import Gluewright.Ui

// A test of one screen: puts it on a stage of a given size and finds what is in sight on it, or in a list over it.
TestCase {
    id: root

    required property Component screen

    readonly property int patience: 20000
    readonly property Loader stage: loader

    function walk(item: Item, fits): Item {
        if (!item.visible)
            return null;
        if (fits(item))
            return item;
        for (let i = 0; i < item.children.length; ++i) {
            const found = root.walk(item.children[i], fits);
            if (found)
                return found;
        }
        return null;
    }

    function find(fits): Item {
        return root.walk(root.Window.window.contentItem, fits);
    }

    function named(name: string): Item {
        return root.find(item => item.objectName === name);
    }

    function inside(item: Item, name: string): Item {
        return root.walk(item, child => child.objectName === name);
    }

    function says(text: string): Item {
        return root.find(item => typeof item.text === "string" && item.text.indexOf(text) >= 0);
    }

    function waitFor(look, what: string): Item {
        tryVerify(() => look() !== null, root.patience, what);
        return look();
    }

    // A press where it is once everything has come to rest.
    function press(item: Item) {
        let last = null;
        let still = 0;
        tryVerify(() => {
            const now = item.mapToItem(null, 0, 0);
            still = last !== null && now.x === last.x && now.y === last.y ? still + 1 : 0;
            last = now;
            return still > 5;
        }, root.patience);
        mouseClick(item);
    }

    function show(width: int, height: int) {
        root.parent.width = width;
        root.parent.height = height;
        loader.sourceComponent = root.screen;
        verify(loader.item !== null);
    }

    // A text in sight that stands out of the width of the screen or is too small to read at arm's length.
    function wrongText(): Item {
        return root.walk(loader.item, item => {
            if (item.paintedWidth === undefined || typeof item.text !== "string" || item.text.length === 0 || item.opacity === 0)
                return false;
            const left = item.mapToItem(loader.item, 0, 0).x;
            return left < -1 || left + item.width > loader.width + 1 || item.font.pixelSize < Theme.textSmall;
        });
    }

    function nothingStandsOut() {
        verify(root.walk(loader.item, item => item.paintedWidth > 100) !== null, "there is something to read");
        tryVerify(() => root.wrongText() === null, 2000);
    }

    visible: true
    when: windowShown

    function cleanup() {
        loader.sourceComponent = null;
    }

    Loader {
        id: loader
        height: root.parent.height
        parent: root.parent
        width: root.parent.width
    }
}
