// What is in one backup, what of the book it lacks, and the way to put it in the book's place. Restoring comes after looking: its button
// is off until the look found the backup sound.
//
//   panel->show({path, title});          // nothing is read yet
//   panel->look();                       // opens a copy of it, checks it, throws it away
//
// A sealed file asks for its passphrase here.
#pragma once

#include "core/care/book_restore.h"
#include "ui/jobs/job.h"

#include <QtWidgets/QWidget>

class QLabel;
class QPushButton;

namespace steelyard {

class ElidedLabel;
class PassphraseFields;
class SecretStore;

class RestorePanel final : public QWidget {
    Q_OBJECT

public:
    struct Source {
        QString path;
        QString title;
        friend bool operator==(const Source&, const Source&) = default;
    };

    // `secrets` may know the passphrase of a sealed file; absent: it is asked for.
    RestorePanel(QString book, JobRunner& jobs, const Clock& clock, SecretStore* secrets, QWidget* parent = nullptr);
    ~RestorePanel() override;
    void show(const std::optional<Source>& source);
    void look();
    [[nodiscard]] bool canRestore() const;
    [[nodiscard]] bool isSettled() const { return !m_job.isRunning(); }

Q_SIGNALS:
    void restoreRequested(const steelyard::RestoreWish& wish, const steelyard::Rehearsal& seen);

private:
    void took(const Result<Rehearsal>& seen);
    void showSeen(const Rehearsal& seen);
    void say(const QString& text, bool alarming);
    void updateButtons();
    void recall();

    QString m_book;
    JobRunner& m_jobs;
    const Clock& m_clock;
    SecretStore* m_secrets;
    std::optional<Source> m_source;
    RestoreWish m_wish;  // of the look that is or was made
    std::optional<Rehearsal> m_seen;
    JobHandle m_job;
    int m_asked = 0;
    ElidedLabel* m_title;
    QLabel* m_content;
    QLabel* m_loss;
    QLabel* m_verdict;
    PassphraseFields* m_passphrase;
    QPushButton* m_look;
    QPushButton* m_restore;
};

}  // namespace steelyard
