#include "ui/shell/screen_lock.h"

#include "ui/shell/lock_cover.h"

#include <QtCore/QEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QDialog>
#include <QtWidgets/QMainWindow>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QToolTip>

namespace steelyard {
namespace {

constexpr std::chrono::seconds kLookEvery{5};

bool isActivity(QEvent::Type type)
{
    switch (type) {
    case QEvent::KeyPress:
    case QEvent::ShortcutOverride:
    case QEvent::MouseMove:
    case QEvent::MouseButtonPress:
    case QEvent::Wheel:
    case QEvent::TouchBegin:
    case QEvent::TabletPress:
    case QEvent::InputMethod:
    case QEvent::Drop:
        return true;
    default:
        return false;
    }
}

}  // namespace

ScreenLock::ScreenLock(QMainWindow& window, QWidget* content, QSettings& settings, JobRunner& jobs, SteadyTime time)
    : QObject(&window),
      m_window(window),
      m_kept(settings),
      m_jobs(jobs),
      m_time(std::move(time)),
      m_curtain(new QStackedWidget(&window)),
      m_cover(new LockCover(m_kept.file(), m_curtain)),
      m_lastSeen(m_time()),
      m_lastFailure(m_time())
{
    m_curtain->addWidget(content);
    m_curtain->addWidget(m_cover);
    connect(m_cover, &LockCover::tried, this, [this](const std::shared_ptr<Passphrase>& typed) {
        m_cover->setOpen(false);
        check(typed, this, [this](bool right) {
            m_cover->setOpen(true);
            if (right)
                open();
            else
                sayWrong();
        });
    });
    connect(m_cover, &LockCover::triedTooShort, this, [this] {
        if (toWait().count() == 0) count(false);
        sayWrong();
    });
    connect(m_cover, &LockCover::quitRequested, &m_window, &QWidget::close);
    connect(&m_idle, &QTimer::timeout, this, &ScreenLock::lockIfIdle);
    connect(&m_waiting, &QTimer::timeout, this, &ScreenLock::sayWait);
    m_idle.start(kLookEvery);
    qApp->installEventFilter(this);
}

ScreenLock::~ScreenLock() = default;

QWidget* ScreenLock::curtain() const
{
    return m_curtain;
}

void ScreenLock::lock()
{
    if (m_locked || !canLock()) return;
    m_locked = true;
    m_focus = QApplication::focusWidget();
    QToolTip::hideText();
    while (QWidget* popup = QApplication::activePopupWidget())
        if (!popup->close()) break;
    m_window.menuBar()->hide();
    m_curtain->setCurrentWidget(m_cover);
    hideOthers();
    m_cover->start();
    if (toWait().count() > 0) sayWait();
    Q_EMIT changed(true);
}

void ScreenLock::hideOthers()
{
    for (QWidget* each : QApplication::topLevelWidgets()) {
        if (each == &m_window || !each->isVisible() || each->windowType() == Qt::Desktop) continue;
        m_hidden.push_back({each, each->windowModality() == Qt::WindowModal});
        each->hide();
    }
}

// A window that opens by itself (a job ended, a question) waits behind the cover: it is never drawn.
void ScreenLock::keepAway(QWidget* window)
{
    window->setAttribute(Qt::WA_DontShowOnScreen);
    const bool isPassing = window->windowType() == Qt::Popup || window->windowType() == Qt::ToolTip;
    if (!isPassing) m_hidden.push_back({window, window->windowModality() == Qt::WindowModal});
    QTimer::singleShot(0, window, [window] {
        window->hide();
        window->setAttribute(Qt::WA_DontShowOnScreen, false);
    });
}

void ScreenLock::open()
{
    m_locked = false;
    m_lastSeen = m_time();
    m_curtain->setCurrentIndex(0);
    m_window.menuBar()->show();
    for (const Hidden& hidden : std::exchange(m_hidden, {})) {
        if (!hidden.window) continue;
        auto* dialog = qobject_cast<QDialog*>(hidden.window.data());
        if (dialog && hidden.wasModal)
            dialog->open();
        else
            hidden.window->show();
    }
    if (m_focus) m_focus->setFocus(Qt::OtherFocusReason);
    Q_EMIT changed(false);
}

void ScreenLock::lockIfIdle()
{
    const auto longest = std::chrono::minutes(m_kept.minutes());
    if (longest.count() > 0 && m_time() - m_lastSeen >= longest) lock();
}

std::chrono::seconds ScreenLock::toWait() const
{
    const auto left = m_lastFailure + waitAfterFailures(m_kept.failures()) - m_time();
    return std::max(std::chrono::seconds(0), std::chrono::ceil<std::chrono::seconds>(left));
}

void ScreenLock::check(const std::shared_ptr<Passphrase>& typed, QObject* owner, std::function<void(bool)> then)
{
    const auto secret = m_kept.secret();
    if (!secret || toWait().count() > 0) {
        QTimer::singleShot(0, owner, [then = std::move(then)] { then(false); });
        return;
    }
    m_jobs.run(
        owner, tr("Looking at the passphrase"), [secret, typed](const Progress&) { return secret->matches(*typed); },
        [self = QPointer(this), then = std::move(then)](bool right) {
            if (self) self->count(right);
            then(right);
        });
}

void ScreenLock::count(bool right)
{
    m_kept.setFailures(right ? 0 : m_kept.failures() + 1);
    m_lastFailure = m_time();
}

void ScreenLock::sayWrong()
{
    m_cover->say(tr("That is not the passphrase."));
    if (toWait().count() > 0) sayWait();
}

// Until the next try is looked at; then the field is open again.
void ScreenLock::sayWait()
{
    const auto seconds = static_cast<int>(toWait().count());
    m_cover->setOpen(seconds == 0);
    m_cover->say(seconds == 0
                     ? QString()
                     : tr("That was not the passphrase. The next try is looked at in %n second(s).", nullptr, seconds));
    if (seconds > 0)
        m_waiting.start(std::chrono::milliseconds(500));
    else
        m_waiting.stop();
}

bool ScreenLock::eventFilter(QObject* watched, QEvent* event)
{
    if (isActivity(event->type())) {
        const bool wasLocked = m_locked;
        lockIfIdle();
        m_lastSeen = m_time();
        if (m_locked && !wasLocked) return true;  // after a night's sleep the first key must not reach the book
    }
    if (m_locked && event->type() == QEvent::Show && !event->spontaneous()) {
        auto* window = qobject_cast<QWidget*>(watched);
        if (window && window->isWindow() && window != &m_window) keepAway(window);
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace steelyard
