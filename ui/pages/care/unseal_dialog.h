// Opens a sealed file as a book of its own: its passphrase, and where the book is to stand. For a backup on a new computer, and for
// a lifter's record from another coach. What is open stays as it is.
//
//   auto* dialog = new UnsealDialog({sealed, jobs, prompter, clock}, this);
//   connect(dialog, &UnsealDialog::bookRequested, this, &MainWindow::openBook);
//   dialog->open();
//
// It is restored as any backup is (core/care/book_restore.h): brought into today's form, checked whole, without those who were
// erased. Never over a file that is there. Escape stops, and leaves nothing behind.
#pragma once

#include "core/care/passphrase.h"
#include "ui/jobs/job.h"

#include <QtWidgets/QDialog>

#include <memory>

class QLabel;
class QPushButton;

namespace steelyard {

class Clock;
class PassphraseFields;
class Prompter;

class UnsealDialog final : public QDialog {
    Q_OBJECT

public:
    struct Surroundings {
        QString sealed;
        JobRunner& jobs;
        Prompter& prompter;
        const Clock& clock;
    };
    explicit UnsealDialog(Surroundings with, QWidget* parent = nullptr);
    ~UnsealDialog() override;

Q_SIGNALS:
    void bookRequested(const QString& path);

private:
    void choosePlace();
    void unseal(const QString& to, const std::shared_ptr<const Passphrase>& passphrase);
    void wait(bool busy);

    Surroundings m_with;
    JobHandle m_job;
    PassphraseFields* m_passphrase;
    QLabel* m_said;
    QPushButton* m_open;
};

}  // namespace steelyard
