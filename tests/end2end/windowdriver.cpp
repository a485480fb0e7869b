#include "end2end/windowdriver.h"

#include <algorithm>
#include <chrono>

#include <QTest>

namespace gw::test {

namespace {

constexpr std::chrono::minutes patience { 2 };

QQuickItem* findBelow(QQuickItem* item, const WindowDriver::Test& test)
{
    if (!item->isVisible())
        return nullptr;
    if (test(*item))
        return item;
    // The last painted is on top, and what is on top is what a person sees.
    auto children = item->childItems();
    std::stable_sort(children.begin(), children.end(), [](auto* a, auto* b) { return a->z() > b->z(); });
    for (QQuickItem* child : children) {
        if (QQuickItem* found = findBelow(child, test))
            return found;
    }
    return nullptr;
}

QRectF inScene(const QQuickItem& item)
{
    return item.mapRectToScene(QRectF(0, 0, item.width(), item.height()));
}

} // namespace

QQuickItem* WindowDriver::find(const Test& test) const { return findBelow(m_window.contentItem(), test); }

QQuickItem* WindowDriver::named(const QString& objectName) const
{
    return find([&](const QQuickItem& item) { return item.objectName() == objectName; });
}

QQuickItem* WindowDriver::withText(const char* type, const char* property, const QString& value) const
{
    return find([&](const QQuickItem& item) {
        return QByteArray(item.metaObject()->className()).startsWith(type)
            && item.property(property).toString() == value;
    });
}

bool WindowDriver::press(const std::function<QQuickItem*()>& finder) const
{
    QRectF before;
    const bool ready = QTest::qWaitFor(
        [&] {
            const QQuickItem* item = finder();
            if (!item || !item->isEnabled() || item->width() < 1) {
                before = {};
                return false;
            }
            const QRectF now = inScene(*item);
            const bool still = now == before && QRectF(QPointF(), m_window.size()).contains(now.center());
            before = now;
            if (!still)
                QTest::qWait(100);
            return still;
        },
        std::chrono::milliseconds(patience).count());
    if (!ready)
        return false;
    QTest::mouseClick(&m_window, Qt::LeftButton, Qt::NoModifier, before.center().toPoint());
    return true;
}

void WindowDriver::type(const QString& text) const
{
    for (const QChar letter : text)
        QTest::keyClick(&m_window, letter.toLatin1(), Qt::NoModifier, 80);
}

QColor WindowDriver::colourAt(const QQuickItem& item, qreal x, qreal y) const
{
    const QRectF place = inScene(item);
    const QImage picture = m_window.grabWindow();
    const qreal scale = picture.devicePixelRatio();
    return picture.pixelColor(
        (place.topLeft() + QPointF(place.width() * x, place.height() * y)).toPoint() * scale);
}

} // namespace gw::test
