import QtQuick
import QtQuick.Templates as T
import QtTest
import Gluewright.Ui

// All parts at once, in both shapes of the tablet: nothing too small for a thumb, nothing unnamed for a screen reader,
// nothing running out of the screen.
TestCase {
    id: testCase
    height: 1280
    name: "Gallery"
    visible: true
    when: windowShown
    width: 1280

    Component {
        id: galleryMaker
        Gallery {}
    }

    function each(item: Item, visit: var) {
        if (!item.visible || item.opacity === 0)
            return;
        visit(item);
        for (let i = 0; i < item.children.length; ++i)
            each(item.children[i], visit);
    }

    function pressable(item: Item): bool {
        return item instanceof T.AbstractButton && item.enabled;
    }

    function test_page_data() {
        const rows = [];
        for (const portrait of [false, true])
            for (const dark of [false, true])
                for (let page = 0; page < 6; ++page)
                    rows.push({ tag: (portrait ? "portrait " : "landscape ") + (dark ? "dark " : "light ") + page, portrait: portrait, dark: dark, page: page });
        return rows;
    }

    function test_page(row) {
        const gallery = createTemporaryObject(galleryMaker, testCase, { dark: row.dark, height: row.portrait ? 1280 : 800, page: row.page, width: row.portrait ? 800 : 1280 });
        waitForRendering(gallery);
        let buttons = 0;
        let texts = 0;
        each(gallery, item => {
            const at = item.mapToItem(gallery, 0, 0);
            if (pressable(item)) {
                ++buttons;
                verify(item.width >= Theme.touch && item.height >= Theme.touch, item + " is " + item.width + " by " + item.height);
                verify(item.Accessible.name.length > 0, item + " has no name");
            }
            if (item instanceof Text && item.text.length > 0) {
                ++texts;
                verify(item.font.pixelSize >= 15, "'" + item.text + "' is set in " + item.font.pixelSize);
                verify(at.x >= 0 && at.x + item.contentWidth <= gallery.width + 1, "'" + item.text + "' ends at " + (at.x + item.contentWidth));
                verify(item.contentHeight <= item.height + 1 || item.truncated, "'" + item.text + "' wants " + item.contentHeight + ", has " + item.height);
            }
        });
        verify(buttons >= 6);
        verify(texts > 10);
    }

    function cleanup() {
        Theme.dark = false;
    }
}
