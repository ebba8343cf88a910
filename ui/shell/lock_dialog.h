// Sets, changes or takes away the passphrase of the lock, and how long nobody has to be there before it locks by itself.
//
//   auto* dialog = new LockDialog(lock, jobs, this);      // deletes itself when closed; not modal
//   connect(dialog, &LockDialog::passphraseSet, lock, &ScreenLock::lock);
//   dialog->show();
#pragma once

#include "ui/shell/screen_lock.h"

#include <QtWidgets/QDialog>

class QComboBox;
class QLabel;
class QPushButton;

namespace steelyard {

class PassphraseFields;

class LockDialog final : public QDialog {
    Q_OBJECT

public:
    LockDialog(ScreenLock& lock, JobRunner& jobs, QWidget* parent = nullptr);

Q_SIGNALS:
    void passphraseSet();

private:
    void addMinutes(class QFormLayout* form);
    void ask(const std::function<void()>& whenRight);
    void set();
    void remove();
    void hash(const std::shared_ptr<Passphrase>& chosen);
    void switchKnown();
    void setBusy(bool busy);

    ScreenLock& m_lock;
    JobRunner& m_jobs;
    PassphraseFields* m_present;
    PassphraseFields* m_new;
    QComboBox* m_minutes;
    QLabel* m_said;
    QPushButton* m_set;
    QPushButton* m_remove;
};

}  // namespace steelyard
