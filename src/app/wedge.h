#pragma once

#include <deque>
#include <memory>

#include <QKeyEvent>
#include <QObject>
#include <QPointer>
#include <QString>
#include <QTimer>
#include <QWindow>

namespace gw {

/// A hand scanner that types what it reads, on any screen and whatever has the focus.
///
/// Keys that come faster than a hand types and end with Enter are a scan. Until it is certain, a key is held
/// back for a moment too short to notice; when no scan comes of it, it goes on to where it was meant for, in
/// its order. So nothing of a scan ever reaches a field, and nothing a person types is lost.
class Wedge : public QObject {
    Q_OBJECT

public:
    static constexpr int gapMs = 40; ///< the next key of a scan comes within this; scanners take 1 to 20 ms
    static constexpr int shortest = 4; ///< characters; nothing shorter is a code

    explicit Wedge(QObject* parent = nullptr);

    /// Watches the keys of a window. The window stays its owner's.
    void watch(QWindow* window);

Q_SIGNALS:
    void scanned(const QString& text);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    bool pressed(const QKeyEvent& event);
    bool released(const QKeyEvent& event);
    void hold(const QKeyEvent& event);
    void release();
    void waited();

    QPointer<QWindow> m_window;
    std::deque<std::unique_ptr<QKeyEvent>> m_held;
    QString m_text;
    quint64 m_last = 0; ///< timestamp of the last key held
    qint64 m_due = 0;
    QTimer m_wait;
    bool m_releasing = false;
    bool m_swallowEnter = false;
};

} // namespace gw
