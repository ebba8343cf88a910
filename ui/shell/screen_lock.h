// Covers everything that the program shows until its passphrase is typed: the window's content and menus, its title, every other
// window (which comes back as it was, with what was half typed), and whatever opens meanwhile. At the start when a passphrase is
// set, on demand, and when nobody was there for the minutes that are set.
//
//   m_lock = new ScreenLock(*this, central, settings, *m_jobs);
//   setCentralWidget(m_lock->curtain());
//   connect(m_lock, &ScreenLock::changed, this, …);          // title, menus
//
// It keeps eyes off; it encrypts nothing. The time is one that is never set back and goes on while the machine sleeps; a first
// key or movement after too long locks before anything else sees it. A try costs what core/care/lock_secret.h says, off the
// window's thread; after failures the next has to wait (lock_settings.h), also in the next run.
#pragma once

#include "core/base/absent_time.h"
#include "ui/jobs/job.h"
#include "ui/shell/lock_settings.h"

#include <QtCore/QPointer>
#include <QtCore/QTimer>
#include <QtWidgets/QWidget>

class QMainWindow;
class QStackedWidget;

namespace steelyard {

class LockCover;

class ScreenLock final : public QObject {
    Q_OBJECT

public:
    ScreenLock(QMainWindow& window, QWidget* content, QSettings& settings, JobRunner& jobs,
               SteadyTime time = steadyNowAsleepToo);
    ~ScreenLock() override;

    [[nodiscard]] QWidget* curtain() const;
    [[nodiscard]] bool isLocked() const { return m_locked; }
    [[nodiscard]] bool canLock() const { return m_kept.secret().has_value(); }
    [[nodiscard]] LockSettings& kept() { return m_kept; }
    // Does nothing without a passphrase.
    void lock();
    void lockIfIdle();
    // How long until the next try is looked at.
    [[nodiscard]] std::chrono::seconds toWait() const;
    // Whether it is the passphrase; counts, and answers no at once while the next try has to wait. `then` comes later, in this
    // thread, while `owner` lives.
    void check(const std::shared_ptr<Passphrase>& typed, QObject* owner, std::function<void(bool)> then);

Q_SIGNALS:
    void changed(bool locked);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Hidden {
        QPointer<QWidget> window;
        bool wasModal = false;
    };
    void open();
    void hideOthers();
    void keepAway(QWidget* window);
    void count(bool right);
    void sayWrong();
    void sayWait();

    QMainWindow& m_window;
    LockSettings m_kept;
    JobRunner& m_jobs;
    SteadyTime m_time;
    QStackedWidget* m_curtain;
    LockCover* m_cover;
    QTimer m_idle;
    QTimer m_waiting;
    std::chrono::milliseconds m_lastSeen;
    std::chrono::milliseconds m_lastFailure;
    std::vector<Hidden> m_hidden;
    QPointer<QWidget> m_focus;
    bool m_locked = false;
};

}  // namespace steelyard
