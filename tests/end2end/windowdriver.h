#pragma once

#include <functional>

#include <QQuickItem>
#include <QQuickWindow>

namespace gw::test {

/// Works a window as a person does: finds what is to be seen on it, and presses there.
class WindowDriver {
public:
    using Test = std::function<bool(const QQuickItem&)>;

    explicit WindowDriver(QQuickWindow& window)
        : m_window(window)
    {
    }

    /// The first item in sight that passes, popups included; null when there is none.
    QQuickItem* find(const Test& test) const;
    QQuickItem* named(const QString& objectName) const;
    /// One with a text property of that value, of a type whose name starts so ("RailButton").
    QQuickItem* withText(const char* type, const char* property, const QString& value) const;

    /// Waits until there is one, it may be pressed and it stands still, then presses its middle with the left
    /// mouse button. False when it does not come within two minutes.
    bool press(const std::function<QQuickItem*()>& finder) const;
    bool pressNamed(const QString& objectName) const
    {
        return press([&] { return named(objectName); });
    }
    /// Types as fingers do: slower than a hand scanner.
    void type(const QString& text) const;

    /// What the screen shows at a share of an item's width and height.
    QColor colourAt(const QQuickItem& item, qreal x, qreal y) const;

private:
    QQuickWindow& m_window;
};

} // namespace gw::test
