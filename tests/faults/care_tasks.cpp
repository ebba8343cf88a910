#include "tests/faults/care_tasks.h"

#include "core/care/book_restore.h"

#include <algorithm>

namespace steelyard::test {
namespace {

Result<Backup> keepOne(const QString& book, const BackupShelf& shelf)
{
    STEELYARD_TRY(const auto reader, Database::openReader(book));
    return shelf.keep(*reader, BackupReason::Asked);
}

QByteArray soundOf(const BackupShelf& shelf)
{
    const auto there = shelf.list();
    const auto sound =
        std::ranges::count_if(there, [&](const Backup& one) { return shelf.check(one, {}).has_value(); });
    return QByteArray::number(sound) + " of " + QByteArray::number(static_cast<qsizetype>(there.size()));
}

}  // namespace

Result<void> keepUntilTheEnd(const QString& book, const BackupShelf& shelf, const Say& say)
{
    while (true) {
        STEELYARD_TRY(const Backup made, keepOne(book, shelf));
        say("acknowledged " + QByteArray::number(made.number));
    }
}

Result<void> restoreUntilTheEnd(const QString& book, const QStringList& backups, const BackupShelf& shelf,
                                const Clock& clock, const Say& say)
{
    for (int n = 1;; ++n) {
        const RestoreWish wish{.book = book, .from = backups.at((n - 1) % 2)};
        STEELYARD_TRY(const StagedBook staged, stageRestore(wish, clock, {}));
        STEELYARD_CHECK(finishRestore(staged, shelf, clock));
        say("acknowledged " + QByteArray::number(n));
    }
}

Result<void> keepWithoutRoom(const QString& book, const BackupShelf& shelf, const BackupShelf& second,
                             const std::function<void()>& fill, const std::function<void()>& makeRoom, const Say& say)
{
    STEELYARD_CHECK(keepOne(book, shelf));
    STEELYARD_CHECK(second.make());
    fill();
    for (int n = 0; n < 100; ++n) {
        const auto kept = keepOne(book, shelf);
        if (kept) continue;
        say("refused: " + kept.error().what.toUtf8());
        break;
    }
    say("sound " + soundOf(shelf));
    if (const auto brought = second.bringFrom(shelf, {}); !brought)
        say("second refused: " + brought.error().what.toUtf8());
    say("second has " + soundOf(second));
    makeRoom();
    STEELYARD_TRY(const Backup again, keepOne(book, shelf));
    STEELYARD_CHECK(shelf.check(again, {}));
    STEELYARD_CHECK(second.bringFrom(shelf, {}));
    say("again: " + soundOf(shelf) + ", second " + soundOf(second));
    return {};
}

}  // namespace steelyard::test
