#include "ui/shell/backup_keeper.h"

#include "core/book/book.h"

#include <QtCore/QFileInfo>
#include <QtCore/QSettings>

namespace steelyard {
namespace {

constexpr int kTryAgainMs = 60'000;

std::optional<Error> errorOf(const auto& outcome)
{
    return outcome ? std::nullopt : std::optional(outcome.error());
}

}  // namespace

void keepFirst(BackupKeeper* keeper, BackupReason reason, QObject* owner, std::function<void()> then)
{
    if (!keeper) return then();
    keeper->keep(reason, owner, [then = std::move(then)](const Result<Backup>&) { then(); });
}

BackupKeeper::BackupKeeper(Book& book, JobRunner& jobs, const Clock& clock, const Options& options, QObject* parent)
    : QObject(parent), m_book(book), m_jobs(jobs), m_clock(clock), m_options(options), m_shelf(options.folder, clock)
{
    m_again.setInterval(kTryAgainMs);
    connect(&m_again, &QTimer::timeout, this, &BackupKeeper::tryAgain);
}

void BackupKeeper::keepIfDue()
{
    const QDate today = m_clock.today();
    if (!m_options.daily || m_book.isReadOnly() || m_tried == today || m_keeping.isRunning()) return;
    m_tried = today;
    if (m_shelf.isDue())
        keep(BackupReason::Daily, this, {});
    else
        bringAlong();
}

void BackupKeeper::keep(BackupReason reason, QObject* owner, Kept then)
{
    const auto work = [place = m_book.database().checkPlace(), path = m_book.path(), shelf = m_shelf,
                       reason](const Progress&) -> Result<Backup> {
        STEELYARD_CHECK(place);  // never of another file that came there
        STEELYARD_TRY(const auto reader, Database::openReader(path));
        return shelf.keep(*reader, reason);
    };
    m_keeping =
        m_jobs.run(this, tr("Making a backup"), work,
                   [this, owner = QPointer<QObject>(owner), then = std::move(then)](const Result<Backup>& made) {
                       took(made);
                       if (owner && then) then(made);
                   });
}

void BackupKeeper::took(const Result<Backup>& made)
{
    m_first = errorOf(made);
    if (made) m_tried = m_clock.today();
    Q_EMIT shelfChanged();
    bringAlong();
    showTrouble();
}

QString BackupKeeper::settingsKey() const
{
    return QStringLiteral("backups/second/") + QFileInfo(m_shelf.folder()).fileName();
}

QString BackupKeeper::secondFolder() const
{
    return m_options.settings ? m_options.settings->value(settingsKey()).toString() : QString();
}

Result<void> BackupKeeper::chooseSecond(const QString& folder)
{
    if (folder.isEmpty()) {
        m_second.reset();
        if (m_options.settings) m_options.settings->remove(settingsKey());
        showTrouble();
        return {};
    }
    STEELYARD_CHECK(BackupShelf(BackupShelf::folderIn(folder, m_book.path()), m_clock).make());
    if (m_options.settings) m_options.settings->setValue(settingsKey(), folder);
    bringAlong();
    return {};
}

void BackupKeeper::bringAlong()
{
    const QString chosen = secondFolder();
    if (chosen.isEmpty() || m_bringing.isRunning()) return;
    m_bringing = m_jobs.run(
        this, tr("Bringing the backup along"),
        [shelf = m_shelf, second = BackupShelf(BackupShelf::folderIn(chosen, m_book.path()), m_clock)](
            const Progress& progress) { return second.bringFrom(shelf, progress); },
        [this](const Result<void>& brought) {
            if (!brought && brought.error().code == ErrorCode::Cancelled) return;
            m_second = secondFolder().isEmpty() ? std::nullopt : errorOf(brought);
            showTrouble();
        });
}

void BackupKeeper::tryAgain()
{
    if (m_first && !m_keeping.isRunning()) {
        m_tried = {};
        keepIfDue();
    }
    // While the stick isn't there, nothing is to be seen of looking for it.
    if (m_second && QFileInfo(BackupShelf::folderIn(secondFolder(), m_book.path())).isDir()) bringAlong();
}

void BackupKeeper::showTrouble()
{
    if (m_first || m_second)
        m_again.start();
    else
        m_again.stop();
    Q_EMIT troubleChanged();
}

QString BackupKeeper::trouble() const
{
    if (m_first) return tr("No backup could be made");
    if (!m_second) return {};
    switch (m_second->code) {
    case ErrorCode::NotFound:
        return tr("Second backup folder isn't there");
    case ErrorCode::Invalid:
        return tr("A backup in the second folder was changed");
    default:
        return tr("Second backup folder takes nothing");
    }
}

QString BackupKeeper::troubleDetail() const
{
    if (m_first) return m_first->what;
    return m_second ? m_second->what : QString();
}

}  // namespace steelyard
