// A book that can't be opened: what is wrong with it, and what can be done. Restore the newest good backup, save what can be saved from
// the damaged file into a new book, open a copy of it, or leave it. None of these changes the file that can't be opened but
// restoring, which sets it aside whole.
//
//   auto* page = new RecoveryPage({prompter, jobs, services}, this);
//   connect(page, &RecoveryPage::bookRequested, this, &MainWindow::openBook);
//   page->show(path, error);
//
// Esc leaves. While something runs, its buttons wait and the status line can stop it.
#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "ui/jobs/job.h"

#include <QtCore/QDateTime>
#include <QtWidgets/QWidget>

#include <functional>

class QLabel;
class QPushButton;

namespace steelyard {

class ElidedLabel;
class Prompter;

struct KnownBackup {
    QString path;
    QDateTime madeAt;  // UTC
};

// What the page needs from outside; absent ones are not offered.
struct RecoveryServices {
    // The newest backup of this book that is still as it was when it was made; from a worker thread.
    std::function<Result<std::optional<KnownBackup>>(const QString& book, const Progress&)> newestGoodBackup;
    // Puts the backup in the book's place and sets aside what stood there; from a worker thread, with the book closed.
    std::function<Result<void>(const QString& book, const QString& backup, const Progress&)> restore;
};

class RecoveryPage : public QWidget {
    Q_OBJECT

public:
    struct Surroundings {
        Prompter& prompter;
        JobRunner& jobs;
        RecoveryServices services;
    };
    explicit RecoveryPage(Surroundings surroundings, QWidget* parent = nullptr);
    // A book for which this page is: there is a file, and it can't be used.
    [[nodiscard]] static bool isFor(const QString& path, const Error& error);
    void show(const QString& path, const Error& error);

Q_SIGNALS:
    void bookRequested(const QString& path);
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void lookForBackup();
    void offerBackup(const Result<std::optional<KnownBackup>>& found);
    void restore();
    void save();
    void saveTo(const QString& path);
    void openCopy();
    void copyTo(const QString& path);
    void say(const QString& text, bool bad);
    void wait(bool busy);
    [[nodiscard]] QString besideTheBook(const QString& name) const;

    Surroundings m_with;
    QString m_path;
    std::optional<KnownBackup> m_backup;
    QString m_saved;
    JobHandle m_running;
    QLabel* m_wrong;
    QLabel* m_result;
    QLabel* m_backupWords;
    ElidedLabel* m_file;
    QPushButton* m_restore;
    QPushButton* m_save;
    QPushButton* m_copy;
    QPushButton* m_leave;
    QPushButton* m_open;
};

}  // namespace steelyard
