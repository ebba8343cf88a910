// What the window does for the care of the opened book: its backups, putting one of them in its place, one lifter's data and its
// removal.
#include "ui/shell/main_window.h"

#include "core/care/erasure.h"
#include "ui/pages/care/unseal_dialog.h"
#include "ui/pages/first_run/first_run_page.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/book_restoring.h"
#include "ui/shell/book_view.h"
#include "ui/shell/status_line.h"

namespace steelyard {

void MainWindow::beginBackups()
{
    if (!m_services.backupFolder) return;
    m_backups = std::make_unique<BackupKeeper>(
        *m_book, *m_jobs, m_clock,
        BackupKeeper::Options{m_services.backupFolder(m_book->path()), &m_settings, m_services.dailyBackups});
    connect(m_backups.get(), &BackupKeeper::troubleChanged, m_status,
            [this] { m_status->setNote(m_backups->trouble(), m_backups->troubleDetail()); });
    // When all is read and nothing else runs: the day's first backup waits for the coach, not the other way round.
    connect(this, &MainWindow::settled, m_backups.get(), &BackupKeeper::keepIfDue);
}

void MainWindow::unseal(const QString& path)
{
    auto* dialog = new UnsealDialog({path, *m_jobs, m_prompter, m_clock}, this);
    connect(dialog, &UnsealDialog::bookRequested, this, &MainWindow::openBook);
    dialog->open();
}

void MainWindow::restore(const RestoreWish& wish)
{
    const auto close = [this] {
        closeBook();
        m_first->say(tr("Restoring…"));
    };
    restoreBook({this, *m_jobs, m_prompter, m_clock, BackupShelf(m_services.backupFolder(wish.book), m_clock), close,
                 [this](const QString& book) { openBook(book); }, [this](const QString& text) { m_status->say(text); }},
                wish);
}

void MainWindow::openLifterData(std::optional<Id<Athlete>> athlete, const QString& receipt)
{
    QStringList copies = copiesBeside(m_book->path());
    if (m_backups)
        for (const Backup& backup : m_backups->shelf().list()) copies += backup.path;
    // Later: the page that asks is gone before the book is.
    const auto eraseSoon = [this](const EraseWish& wish) {
        QMetaObject::invokeMethod(
            this, [this, wish] { erase(wish); }, Qt::QueuedConnection);
    };
    m_services.openLifterData(*m_context, {athlete, receipt, copies, eraseSoon}, this);
}

void MainWindow::erase(const EraseWish& wish)
{
    eraseFromBook(
        {this, *m_jobs, m_clock, m_settings, m_book->path(), m_backups ? m_backups->shelf().folder() : QString(),
         [this] {
             closeBook();
             m_first->say(tr("Removing what is no longer to be kept…"));
         },
         [this, healthOnly = wish.healthOnly](const QString& path, const EraseOutcome& outcome) {
             if (!openBook(path)) return;
             m_status->say(outcome.done ? tr("Removed") : tr("Nothing was removed"));
             const bool isStillThere = healthOnly || !outcome.done;
             openLifterData(isStillThere ? std::optional(outcome.athlete) : std::nullopt, outcome.receipt);
         }},
        wish);
}

}  // namespace steelyard
