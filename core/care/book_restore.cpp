#include "core/care/book_restore.h"

#include "core/book/book.h"
#include "core/book/book_hold.h"
#include "core/book/verify.h"
#include "core/care/checksum.h"
#include "core/care/erased_list.h"
#include "core/care/erasure.h"
#include "core/care/sealed_file.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/book_swap.h"
#include "core/storage/durable_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QLockFile>
#include <QtCore/QTemporaryDir>

#include <algorithm>
#include <utility>

namespace steelyard {
namespace {

struct RestoreText {
    Q_DECLARE_TR_FUNCTIONS(RestoreText)
};

void removeBookFiles(const QString& path)
{
    for (const auto* ending : {"", "-wal", "-shm", "-journal", ".lock"})
        QFile::remove(path + QString::fromLatin1(ending));
}

Result<void> copyOne(const QString& from, const QString& to)
{
    QFile source(from);
    if (!source.copy(to) || QFileInfo(to).size() != source.size())
        return fail(ErrorCode::Storage, RestoreText::tr("“%1” can't be written: %2.").arg(to, source.errorString()));
    QFile::setPermissions(to, QFileDevice::ReadOwner | QFileDevice::WriteOwner);
    return {};
}

// A plain copy of what is restored, readable by its owner only.
Result<void> fetch(const RestoreWish& wish, const QString& to, const Progress& progress)
{
    STEELYARD_TRY(const bool sealed, isSealedFile(wish.from));
    if (const auto checked = checkChecksum(wish.from, progress.part(0, 0.4));
        !checked && checked.error().code != ErrorCode::NotFound)
        return checked;
    if (sealed) {
        if (!wish.passphrase)
            return fail(ErrorCode::Invalid,
                        RestoreText::tr("“%1” is sealed. Its passphrase is needed to open it.").arg(wish.from));
        return openSealedFile(wish.from, to, *wish.passphrase, progress.part(0.4, 1));
    }
    // A book that was set aside may have its newest sets in the journal beside it.
    for (const auto* journal : {"", "-wal", "-journal"}) {
        const QString ending = QString::fromLatin1(journal);
        if (!ending.isEmpty() && QFileInfo(wish.from + ending).size() == 0) continue;
        STEELYARD_CHECK(copyOne(wish.from + ending, to + ending));
    }
    progress.report(1);
    return {};
}

Result<Rehearsal> lookInto(const QString& copy, const QString& present, const Progress& progress)
{
    Rehearsal seen;
    STEELYARD_TRY(const auto database, Database::open(copy, Access::ReadOnly));
    STEELYARD_TRY(const VerifyReport report, verifyBook(*database, progress));
    seen.findings = report.findings;
    STEELYARD_TRY(seen.content, contentOf(*database));
    if (QFileInfo::exists(present))
        if (const auto loss = lossAgainst(present, copy)) seen.loss = *loss;
    return seen;
}

Result<void> checkWish(const RestoreWish& wish)
{
    if (!QFileInfo(wish.from).isFile())
        return fail(ErrorCode::NotFound, RestoreText::tr("There is no file “%1”.").arg(wish.from));
    if (const auto from = fileIdentity(wish.from); from && from == fileIdentity(wish.book))
        return fail(ErrorCode::Invalid,
                    RestoreText::tr("“%1” is the book itself. Choose a backup of it.").arg(wish.from));
    return {};
}

// A backup that comes back in another place doesn't know the marks of the book it was made of.
Result<std::vector<ErasedAthlete>> erasedElsewhere(Database& copy, const QString& shelf)
{
    std::vector<ErasedAthlete> present;
    STEELYARD_TRY(const auto athletes, AthleteRepository(copy).all());
    for (const ErasedAthlete& one : erasedBeside(shelf))
        if (std::ranges::any_of(athletes, [&](const Row<Athlete>& row) { return erasureMark(row.uuid) == one.mark; }))
            present.push_back(one);
    if (present.size() == athletes.size()) present.clear();
    return present;
}

// Today's form, checked, without those who were erased. What it leaves is one file.
Result<Rehearsal> getReady(const RestoreWish& wish, const QString& copy, const Clock& clock, const Progress& progress)
{
    STEELYARD_CHECK(fetch(wish, copy, progress.part(0, 0.4)));
    const QString shelf = BackupShelf::usualFolder(wish.book);
    auto erased = erasedFrom(wish.book, shelf);
    {
        const auto updated = Database::open(copy, Access::ReadWrite, Database::Older::ChangeInPlace);
        if (!updated) {
            Error error = updated.error();
            error.what.replace(copy, wish.from);  // the copy is nothing that the coach knows
            return fail(error);
        }
        if (!QFileInfo::exists(wish.book)) {
            STEELYARD_TRY(const auto elsewhere, erasedElsewhere(**updated, shelf));
            erased.insert(erased.end(), elsewhere.begin(), elsewhere.end());
        }
    }
    if (!erased.empty()) {
        STEELYARD_TRY(const auto book, Book::open(copy, clock));
        STEELYARD_CHECK(eraseAgain(*book, erased));
    }
    if (progress.cancelled()) return fail(ErrorCode::Cancelled, RestoreText::tr("Stopped. Nothing was changed."));
    return lookInto(copy, wish.book, progress.part(0.4, 1));
}

// What other starts left that ended before they were ready.
void sweepBeside(const QString& book)
{
    const QFileInfo file(book);
    const QDir folder = file.absoluteDir();
    for (const QFileInfo& entry : folder.entryInfoList(QDir::Files | QDir::Dirs | QDir::NoDotAndDotDot)) {
        if (entry.fileName().startsWith(file.fileName() + QStringLiteral(".restoring")))
            QFile::remove(entry.filePath());
        if (entry.isDir() && entry.fileName().startsWith(file.fileName() + QStringLiteral(".rehearsal-")))
            QDir(entry.filePath()).removeRecursively();
    }
}

Result<std::optional<Backup>> keepPresent(const QString& book, const BackupShelf& shelf)
{
    if (!QFileInfo(book).isFile()) return std::optional<Backup>();
    // Reading: what a writer would do to a damaged book is nobody's business here.
    const auto present = Database::openReader(book);
    if (!present || !(*present)->integer("SELECT count(*) FROM athlete")) return std::optional<Backup>();
    auto kept = shelf.keep(**present, BackupReason::Restore);
    if (kept) return std::optional<Backup>(*kept);
    const auto sound = (*present)->integer("SELECT count(*) FROM pragma_quick_check WHERE quick_check <> 'ok'");
    if (!sound || *sound > 0) return std::optional<Backup>();
    return fail(kept.error());
}

}  // namespace

StagedBook::StagedBook(StagedBook&& other) noexcept
    : seen(std::move(other.seen)), m_book(std::move(other.m_book)), m_path(std::exchange(other.m_path, {}))
{}

StagedBook& StagedBook::operator=(StagedBook&& other) noexcept
{
    std::swap(seen, other.seen);
    std::swap(m_book, other.m_book);
    std::swap(m_path, other.m_path);
    return *this;
}

StagedBook::~StagedBook()
{
    if (!m_path.isEmpty()) removeBookFiles(m_path);
}

Result<Rehearsal> rehearseRestore(const RestoreWish& wish, const Clock& clock, const Progress& progress)
{
    STEELYARD_CHECK(checkWish(wish));
    // Beside the book, where what it holds may stand; not where all temporary files are.
    const QTemporaryDir folder(wish.book + QStringLiteral(".rehearsal-XXXXXX"));
    if (!folder.isValid())
        return fail(
            ErrorCode::Storage,
            RestoreText::tr("A look into the backup needs room beside the book: %1.").arg(folder.errorString()));
    return getReady(wish, folder.filePath(QStringLiteral("copy.steelyard")), clock, progress);
}

Result<StagedBook> stageRestore(const RestoreWish& wish, const Clock& clock, const Progress& progress)
{
    STEELYARD_CHECK(checkWish(wish));
    sweepBeside(wish.book);
    StagedBook staged(wish.book, wish.book + QStringLiteral(".restoring"));
    STEELYARD_TRY(staged.seen, getReady(wish, staged.path(), clock, progress));
    if (!staged.seen.findings.isEmpty())
        return fail(
            ErrorCode::Invalid,
            RestoreText::tr("“%1” isn't sound, so the book was left as it is: %n finding(s). Take another backup.",
                            nullptr, static_cast<int>(staged.seen.findings.size()))
                .arg(wish.from),
            staged.seen.findings.front());
    return staged;
}

Result<RestoredBook> finishRestore(const StagedBook& staged, const BackupShelf& shelf, const Clock& clock)
{
    const BookHold hold = holdBook(staged.book());
    if (!hold && !hold.holder.isEmpty())
        return fail(
            ErrorCode::Conflict,
            RestoreText::tr("The book is open in another program (%1). Close it there first.").arg(hold.holder));
    if (!hold)
        return fail(ErrorCode::Storage,
                    RestoreText::tr("The folder of “%1” can't be written, so nothing was changed.").arg(staged.book()));
    RestoredBook done;
    STEELYARD_TRY(done.kept, keepPresent(staged.book(), shelf));
    STEELYARD_TRY(done.setAside, putInPlace(staged.book(), staged.path(), clock.nowUtc()));
    return done;
}

}  // namespace steelyard
