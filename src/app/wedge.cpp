#include "app/wedge.h"

#include <utility>

#include <QCoreApplication>
#include <QDeadlineTimer>

namespace gw {

namespace {

constexpr QChar groupSeparator { u'\u001d' };

/// What a key adds to a scan: its character, or the group separator as keyboards send it (itself, Ctrl+],
/// F8). None for any other key.
QString scanText(const QKeyEvent& event)
{
    if (event.key() == Qt::Key_F8 && event.modifiers() == Qt::NoModifier)
        return groupSeparator;
    const QString text = event.text();
    if (text.size() != 1 && !(text.size() == 2 && text.at(0).isHighSurrogate()))
        return {};
    if (text.at(0) == groupSeparator)
        return groupSeparator;
    if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier))
        return {};
    return text.at(0).isPrint() ? text : QString();
}

bool isEnter(const QKeyEvent& event) { return event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter; }

/// Shift goes down between the letters of a scan.
bool isShift(const QKeyEvent& event)
{
    return event.key() == Qt::Key_Shift || event.key() == Qt::Key_CapsLock || event.key() == Qt::Key_Control;
}

qint64 nowMs() { return QDeadlineTimer::current().deadline(); }

} // namespace

Wedge::Wedge(QObject* parent)
    : QObject(parent)
{
    m_wait.setSingleShot(true);
    m_wait.setTimerType(Qt::PreciseTimer);
    connect(&m_wait, &QTimer::timeout, this, &Wedge::waited);
}

void Wedge::watch(QWindow* window)
{
    if (m_window)
        m_window->removeEventFilter(this);
    m_window = window;
    if (m_window)
        m_window->installEventFilter(this);
}

bool Wedge::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_window || m_releasing)
        return false;
    if (event->type() == QEvent::KeyPress)
        return pressed(*static_cast<QKeyEvent*>(event));
    if (event->type() == QEvent::KeyRelease)
        return released(*static_cast<QKeyEvent*>(event));
    return false;
}

bool Wedge::pressed(const QKeyEvent& event)
{
    const bool follows = !m_held.empty() && event.timestamp() - m_last <= gapMs;
    if (!follows)
        release();
    if (isEnter(event)) {
        if (follows && m_text.size() >= shortest) {
            const QString text = std::exchange(m_text, {});
            m_wait.stop();
            m_held.clear();
            m_swallowEnter = true;
            Q_EMIT scanned(text);
            return true;
        }
        release();
        return false;
    }
    if (isShift(event)) {
        if (follows)
            m_last = event.timestamp();
        return false;
    }
    const QString text = scanText(event);
    // A separator cannot begin a scan, so F8 and Ctrl+] alone stay what they are.
    if (text.isEmpty() || event.isAutoRepeat() || (text == groupSeparator && m_held.empty())) {
        release();
        return false;
    }
    m_text += text;
    m_last = event.timestamp();
    hold(event);
    return true;
}

bool Wedge::released(const QKeyEvent& event)
{
    if (isEnter(event) && std::exchange(m_swallowEnter, false))
        return true;
    if (m_held.empty() || isShift(event))
        return false;
    hold(event);
    return true;
}

void Wedge::hold(const QKeyEvent& event)
{
    m_held.emplace_back(event.clone());
    m_wait.start(gapMs);
    m_due = nowMs() + gapMs;
}

void Wedge::waited()
{
    // When the screen was busy the rest of a scan may be waiting behind this timer: let it come first.
    constexpr qint64 late = 10;
    const qint64 now = nowMs();
    if (now > m_due + late) {
        m_wait.start(late);
        m_due = now + late;
        return;
    }
    release();
}

void Wedge::release()
{
    m_wait.stop();
    m_text.clear();
    const auto held = std::exchange(m_held, {});
    if (!m_window)
        return;
    m_releasing = true;
    for (const auto& event : held)
        QCoreApplication::sendEvent(m_window, event.get());
    m_releasing = false;
}

} // namespace gw
