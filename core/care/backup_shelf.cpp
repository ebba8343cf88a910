#include "core/care/backup_shelf.h"

#include "core/base/lock_taking.h"
#include "core/care/checksum.h"
#include "core/storage/book_copy.h"
#include "core/storage/durable_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QCryptographicHash>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QLockFile>
#include <QtCore/QStandardPaths>

#include <algorithm>

namespace steelyard {
namespace {

struct ShelfText {
    Q_DECLARE_TR_FUNCTIONS(ShelfText)
};

constexpr QFileDevice::Permissions kOwnFile = QFileDevice::ReadOwner | QFileDevice::WriteOwner;
constexpr QFileDevice::Permissions kOwnFolder = kOwnFile | QFileDevice::ExeOwner;
constexpr int kPatienceMs = 20'000;
constexpr int kKeyDigits = 16;
constexpr QLatin1StringView kUnfinished(".unfinished");

// A book is known by where it stands; the file may be gone by the time somebody asks for its backups.
QString keyOfBook(const QString& book)
{
    const QFileInfo file(book);
    const QString folder = QFileInfo(file.absolutePath()).canonicalFilePath();
    const QString place = file.isSymLink() ? file.symLinkTarget()
                                           : (folder.isEmpty() ? file.absolutePath() : folder) + u'/' + file.fileName();
    return QString::fromLatin1(
        QCryptographicHash::hash(place.toUtf8(), QCryptographicHash::Blake2b_256).toHex().left(kKeyDigits));
}

Result<void> makeFolder(const QString& path)
{
    if (!QDir().mkpath(path))
        return fail(ErrorCode::Storage, ShelfText::tr("The folder “%1” can't be made.").arg(path));
    // Some sticks know no owners; what they hold can be read by whoever holds them.
    QFile::setPermissions(path, kOwnFolder);
    return {};
}

class ShelfLock {
public:
    explicit ShelfLock(const QString& folder) : m_lock(QDir(folder).filePath(QStringLiteral(".lock")))
    {
        m_lock.setStaleLockTime(0);
    }
    [[nodiscard]] Result<void> take()
    {
        if (takeLock(m_lock, kPatienceMs)) return {};
        if (m_lock.error() == QLockFile::LockFailedError)
            return fail(ErrorCode::Conflict, ShelfText::tr("Another program is making a backup of this book. Try "
                                                           "again when it is done."));
        return fail(ErrorCode::Storage,
                    ShelfText::tr("Nothing can be written into the backup folder. Check that the disk has room and "
                                  "that the folder may be written."));
    }

private:
    QLockFile m_lock;
};

Result<void> copyPlainFile(const QString& from, const QString& to)
{
    QFile::remove(to);
    QFile source(from);
    if (!source.copy(to))
        return fail(ErrorCode::Storage, ShelfText::tr("“%1” can't be written: %2.").arg(to, source.errorString()));
    QFile::setPermissions(to, kOwnFile);
    if (QFileInfo(to).size() != QFileInfo(from).size())
        return fail(ErrorCode::Storage, ShelfText::tr("“%1” can't be written: %2.").arg(to, source.errorString()));
    return syncFile(to);
}

}  // namespace

QString BackupShelf::usualFolder(const QString& book)
{
    return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) + QStringLiteral("/steelyard/backups/")
           + keyOfBook(book);
}

QString BackupShelf::folderIn(const QString& chosen, const QString& book)
{
    return QDir(chosen).filePath(QStringLiteral("steelyard-backups-") + keyOfBook(book));
}

std::vector<Backup> BackupShelf::list() const
{
    std::vector<Backup> found;
    const QDir folder(m_folder);
    for (const QString& name : folder.entryList({QStringLiteral("*.steelyard")}, QDir::Files))
        if (const auto backup = backupNamed(folder.filePath(name))) found.push_back(*backup);
    std::ranges::sort(found, std::ranges::greater(), &Backup::number);
    return found;
}

bool BackupShelf::isDue() const
{
    const auto there = list();
    return there.empty() || there.front().madeAt.toLocalTime().date() != m_clock->today();
}

Result<void> BackupShelf::make() const
{
    return makeFolder(m_folder);
}

QString BackupShelf::nextName(const QDateTime& madeAt, BackupReason reason) const
{
    const auto there = list();
    return QDir(m_folder).filePath(backupName(there.empty() ? 1 : there.front().number + 1, madeAt, reason));
}

// From a whole and checked file to a backup: the checksum first, so that nothing in the list is ever without.
Result<Backup> BackupShelf::put(const QString& unfinished, const QString& path) const
{
    auto put = keepChecksum(unfinished, path);
    if (put) put = renameOver(unfinished, path);
    if (!put) {
        QFile::remove(unfinished);
        QFile::remove(checksumPath(path));
        return fail(put.error());
    }
    return *backupNamed(path);
}

Result<Backup> BackupShelf::keep(Database& book, BackupReason reason) const
{
    STEELYARD_CHECK(makeFolder(m_folder));
    ShelfLock lock(m_folder);
    STEELYARD_CHECK(lock.take());
    sweep();
    STEELYARD_CHECK(takeInCopiesOf(book.path()));
    const QString path = nextName(m_clock->nowUtc(), reason);
    STEELYARD_CHECK(copyBook(book, path + kUnfinished));
    auto made = put(path + kUnfinished, path);
    if (made) prune();
    return made;
}

// Of an older form than this program's, and to be kept in that form.
Result<void> BackupShelf::takeIn(const QString& copy) const
{
    {
        const auto database = Database::openReader(copy);
        if (!database) return {};  // no backup; it stays where it is
        const auto broken = (*database)->integer("SELECT count(*) FROM pragma_quick_check WHERE quick_check <> 'ok'");
        if (!broken || *broken > 0) return {};
    }
    const QString path = nextName(QFileInfo(copy).lastModified().toUTC(), BackupReason::Update);
    STEELYARD_CHECK(copyPlainFile(copy, path + kUnfinished));
    STEELYARD_CHECK(put(path + kUnfinished, path));
    QFile::remove(copy);
    return {};
}

Result<void> BackupShelf::takeInCopiesOf(const QString& book) const
{
    const QFileInfo file(book);
    const QString prefix = file.fileName() + QStringLiteral(".before-version-");
    const QDir folder = file.absoluteDir();
    for (const QString& name : folder.entryList(QDir::Files, QDir::Time | QDir::Reversed))
        if (name.startsWith(prefix) && !name.endsWith(QStringLiteral(".part")))
            STEELYARD_CHECK(takeIn(folder.filePath(name)));
    return {};
}

// What a program that was killed left half made.
void BackupShelf::sweep() const
{
    const QDir folder(m_folder);
    for (const QString& name : folder.entryList({QLatin1Char('*') + kUnfinished + QLatin1Char('*')}, QDir::Files))
        QFile::remove(folder.filePath(name));
    const QString ending = checksumPath({});
    for (const QString& name : folder.entryList({QLatin1Char('*') + ending}, QDir::Files))
        if (!folder.exists(name.chopped(ending.size()))) QFile::remove(folder.filePath(name));
}

void BackupShelf::prune() const
{
    for (const Backup& backup : surplusBackups(list())) {
        QFile::remove(backup.path);
        QFile::remove(checksumPath(backup.path));
    }
}

Result<void> BackupShelf::check(const Backup& backup, const Progress& progress) const
{
    return checkChecksum(backup.path, progress);
}

Result<std::optional<Backup>> BackupShelf::newestGood(const Progress& progress) const
{
    for (const Backup& backup : list()) {
        const auto checked = check(backup, progress);
        if (checked) return backup;
        if (checked.error().code == ErrorCode::Cancelled) return fail(checked.error());
    }
    return std::optional<Backup>();
}

Result<void> BackupShelf::setAsideIfChanged(const Backup& backup, const Progress& progress) const
{
    auto checked = check(backup, progress);
    if (checked || checked.error().code == ErrorCode::Cancelled) return checked;
    STEELYARD_CHECK(renameOver(backup.path, backup.path + QStringLiteral(".changed")));
    QFile::remove(checksumPath(backup.path));
    return checked;
}

// Newer than what is here, though the other shelf may have begun to count anew.
Result<void> BackupShelf::bring(const Backup& good, qint64 newestHere, const Progress& progress) const
{
    const QString path =
        QDir(m_folder).filePath(backupName(std::max(good.number, newestHere + 1), good.madeAt, good.reason));
    const QString unfinished = path + kUnfinished;
    auto copied = copyPlainFile(good.path, unfinished);
    if (copied) {
        const auto found = checksumOf(unfinished, progress);
        if (!found)
            copied = fail(found.error());
        else if (*found != keptChecksum(good.path))
            copied = fail(ErrorCode::Storage, ShelfText::tr("The second backup folder doesn't keep what is written "
                                                            "into it: “%1”.")
                                                  .arg(m_folder));
    }
    if (copied) return put(unfinished, path).map([](const Backup&) {});
    QFile::remove(unfinished);
    return copied;
}

Result<void> BackupShelf::bringFrom(const BackupShelf& other, const Progress& progress) const
{
    if (!QFileInfo(m_folder).isDir())
        return fail(ErrorCode::NotFound, ShelfText::tr("The second backup folder isn't there: “%1”. Put the stick in, "
                                                       "or choose another folder.")
                                             .arg(m_folder));
    ShelfLock lock(m_folder);
    STEELYARD_CHECK(lock.take());
    sweep();
    const auto here = list();
    auto before = here.empty() ? Result<void>() : setAsideIfChanged(here.front(), progress.part(0, 0.3));
    STEELYARD_TRY(const auto good, other.newestGood(progress.part(0.3, 0.6)));
    const auto there = list();
    if (!good || (!there.empty() && keptChecksum(there.front().path) == keptChecksum(good->path))) return before;
    STEELYARD_CHECK(bring(*good, there.empty() ? 0 : there.front().number, progress.part(0.6, 1)));
    prune();
    return before;
}

}  // namespace steelyard
