#include "core/care/book_restore.h"

#include "core/care/checksum.h"
#include "core/care/erased_list.h"
#include "core/care/erasure.h"
#include "core/care/sealed_file.h"
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/storage/book_copy.h"
#include "core/storage/migrations.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using test::workSet;

std::shared_ptr<const Passphrase> words(const QString& text = QStringLiteral("seven plain words will do"))
{
    return std::make_shared<const Passphrase>(must(Passphrase::make(text)));
}

// A book with two sets when it was backed up; since then it has another lifter, a session more, and one set was changed.
class Restore : public testing::Test {
protected:
    Restore()
    {
        type(1, QDate(2026, 3, 2));
        type(2, QDate(2026, 3, 2));
        m_backup = must(m_shelf.keep(m_book->database(), BackupReason::Daily));
        m_before = must(dumpContent(m_book->database()));
        type(1, QDate(2026, 3, 4));
        Athlete athlete;
        athlete.name = QStringLiteral("Bo Marrow");
        must(m_book->history().perform(addAthlete(athlete)));
        const Id<SetEntry> first(must(m_book->database().integer("SELECT min(id) FROM set_entry")));
        must(m_book->history().perform(changeSet(first, workSet("40", 9), m_book.clock())));
        m_after = must(dumpContent(m_book->database()));
    }
    void type(int number, QDate day)
    {
        SetEntry set = workSet("40", 8);
        set.number = number;
        set.note = QStringLiteral("calm elbow");
        must(m_book->history().perform(addSet(m_book.line(), day, set)));
    }
    [[nodiscard]] RestoreWish wish(const QString& from) const { return {.book = m_book.path(), .from = from}; }
    [[nodiscard]] Result<RestoredBook> restore(const RestoreWish& wish)
    {
        STEELYARD_TRY(const StagedBook staged, stageRestore(wish, m_book.clock(), {}));
        m_book.close();
        return finishRestore(staged, m_shelf, m_book.clock());
    }
    static QByteArray contentAt(const QString& path) { return must(dumpContent(*must(Database::openReader(path)))); }
    [[nodiscard]] QStringList beside() const
    {
        QStringList names =
            QFileInfo(m_book.path()).dir().entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot);
        names.removeAll(QStringLiteral("shelf"));
        return names;
    }
    // Nothing changed: the same content, and no file more than before.
    void expectUntouched(const Result<StagedBook>& refused, ErrorCode code)
    {
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().code, code) << qPrintable(refused.error().what);
        EXPECT_EQ(must(dumpContent(m_book->database())), m_after);
        EXPECT_EQ(beside(), m_names) << beside().join(u' ').toStdString();
    }

    TempBook m_book;
    BackupShelf m_shelf{m_book.file(QStringLiteral("shelf")), m_book.clock()};
    Backup m_backup;
    QByteArray m_before;
    QByteArray m_after;
    QStringList m_names = beside();
};

TEST_F(Restore, ShowsFirstWhatIsInTheBackupAndWhatWouldBeLost)
{
    const Rehearsal seen = must(rehearseRestore(wish(m_backup.path), m_book.clock(), {}));
    EXPECT_EQ(seen.content, (BookContent{1, 1, 2, QDate(2026, 3, 2)}));
    ASSERT_TRUE(seen.loss);
    EXPECT_EQ(*seen.loss, (BookLoss{1, 1, 1, 1}));
    EXPECT_EQ(seen.findings, QStringList());
    EXPECT_EQ(beside(), m_names) << "the look is thrown away";
    EXPECT_TRUE(m_shelf.check(m_backup, {})) << "and the backup is as it was";
    EXPECT_TRUE(must(rehearseRestore(wish(must(m_shelf.keep(m_book->database(), BackupReason::Asked)).path),
                                     m_book.clock(), {}))
                    .loss->none());
}

TEST_F(Restore, BringsBackTheBookAndKeepsThePresentOneTwice)
{
    const RestoredBook done = must(restore(wish(m_backup.path)));
    m_book.reopen();
    EXPECT_EQ(must(dumpContent(m_book->database())), m_before);
    EXPECT_FALSE(m_book->isReadOnly());
    ASSERT_TRUE(done.kept);
    EXPECT_EQ(done.kept->reason, BackupReason::Restore);
    EXPECT_EQ(contentAt(done.kept->path), m_after);
    EXPECT_EQ(done.setAside, m_book.path() + QStringLiteral(".before-restore-20260302T120000Z"));
    EXPECT_EQ(contentAt(done.setAside), m_after);
    must(m_book->history().undo());
    EXPECT_EQ(must(m_book->database().integer("SELECT count(*) FROM set_entry")), 1) << "with its history";
    const auto permissions = QFileInfo(m_book.path()).permissions();
    EXPECT_FALSE(permissions & (QFileDevice::ReadGroup | QFileDevice::ReadOther));
}

TEST_F(Restore, CanBeTakenBackByRestoringWhatWasSetAside)
{
    const RestoredBook done = must(restore(wish(m_backup.path)));
    must(restore(wish(done.setAside)));
    m_book.reopen();
    EXPECT_EQ(must(dumpContent(m_book->database())), m_after);
}

TEST_F(Restore, OfALostBookNeedsNothingInItsPlace)
{
    m_book.close();
    ASSERT_TRUE(QFile::remove(m_book.path()));
    EXPECT_FALSE(must(rehearseRestore(wish(m_backup.path), m_book.clock(), {})).loss);
    const RestoredBook done = must(restore(wish(m_backup.path)));
    EXPECT_FALSE(done.kept);
    EXPECT_EQ(done.setAside, QString());
    EXPECT_EQ(contentAt(m_book.path()), m_before);
}

TEST_F(Restore, OfADamagedBookSetsItAsideAsItIs)
{
    m_book.close();
    QFile file(m_book.path());
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(file.resize(file.size() / 2));
    file.close();
    const QByteArray damaged = test::fileBytes(m_book.path());
    const RestoredBook done = must(restore(wish(m_backup.path)));
    EXPECT_FALSE(done.kept);
    EXPECT_EQ(test::fileBytes(done.setAside), damaged);
    EXPECT_EQ(contentAt(m_book.path()), m_before);
}

TEST_F(Restore, OfASealedBackupNeedsItsPassphrase)
{
    const QString sealed = m_book.file(QStringLiteral("out.sealed"));
    must(sealFile(m_backup.path, sealed, *words(), SealCost::least(), {}));
    m_names = beside();
    RestoreWish open = wish(sealed);
    expectUntouched(stageRestore(open, m_book.clock(), {}), ErrorCode::Invalid);
    open.passphrase = words(QStringLiteral("another passphrase"));
    expectUntouched(stageRestore(open, m_book.clock(), {}), ErrorCode::Invalid);
    open.passphrase = words();
    EXPECT_EQ(must(rehearseRestore(open, m_book.clock(), {})).content.sets, 2);
    must(restore(open));
    EXPECT_EQ(contentAt(m_book.path()), m_before);
}

TEST_F(Restore, RefusesABackupThatWasChanged)
{
    // One letter of a note: SQLite finds nothing wrong with it.
    QByteArray bytes = test::fileBytes(m_backup.path);
    const auto at = bytes.indexOf("calm elbow");
    ASSERT_GT(at, 0);
    QFile file(m_backup.path);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(file.seek(at));
    ASSERT_EQ(file.write("p"), 1);
    file.close();
    EXPECT_EQ(must(must(Database::openReader(m_backup.path))
                       ->integer("SELECT count(*) FROM pragma_integrity_check WHERE integrity_check <> 'ok'")),
              0);
    expectUntouched(stageRestore(wish(m_backup.path), m_book.clock(), {}), ErrorCode::Invalid);
}

TEST_F(Restore, RefusesWhatIsNoSoundBook)
{
    const QString odd = m_book.file(QStringLiteral("odd.steelyard"));
    must(copyBook(m_book->database(), odd));
    {
        const auto damaged = must(Database::openWriter(odd));
        must(damaged->execute("PRAGMA foreign_keys = OFF; DELETE FROM session WHERE date = '2026-03-02'"));
    }
    m_names = beside();
    const auto refused = stageRestore(wish(odd), m_book.clock(), {});
    expectUntouched(refused, ErrorCode::Invalid);
    EXPECT_FALSE(refused.error().detail.isEmpty()) << "what is wrong with it";
    EXPECT_FALSE(must(rehearseRestore(wish(odd), m_book.clock(), {})).findings.isEmpty());
    QFile text(odd);
    ASSERT_TRUE(text.open(QIODevice::WriteOnly | QIODevice::Truncate));
    ASSERT_EQ(text.write("dear diary"), 10);
    text.close();
    const auto stranger = stageRestore(wish(odd), m_book.clock(), {});
    expectUntouched(stranger, ErrorCode::Storage);
    EXPECT_TRUE(stranger.error().what.contains(odd)) << qPrintable(stranger.error().what);
    expectUntouched(stageRestore(wish(m_book.file(QStringLiteral("nowhere"))), m_book.clock(), {}),
                    ErrorCode::NotFound);
    expectUntouched(stageRestore(wish(m_book.path()), m_book.clock(), {}), ErrorCode::Invalid);
}

TEST_F(Restore, RefusesTheBookOfANewerProgram)
{
    const QString newer = m_book.file(QStringLiteral("newer.steelyard"));
    must(copyBook(m_book->database(), newer));
    must(must(Database::openWriter(newer))->execute("PRAGMA user_version = 9999"));
    m_names = beside();
    expectUntouched(stageRestore(wish(newer), m_book.clock(), {}), ErrorCode::NewerFormat);
}

TEST_F(Restore, OfAnOlderFormIsBroughtUpToDateAndTheBackupStaysAsItWas)
{
    const QString old = m_book.file(QStringLiteral("old.steelyard"));
    ASSERT_TRUE(QFile::copy(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard"), old));
    const QByteArray bytes = test::fileBytes(old);
    must(restore(wish(old)));
    EXPECT_EQ(test::fileBytes(old), bytes);
    const auto book = must(Database::openReader(m_book.path()));
    EXPECT_EQ(must(schemaVersion(*book)), builtInMigrations().back().version);
    EXPECT_GT(must(book->integer("SELECT count(*) FROM set_entry")), 0);
    EXPECT_FALSE(
        std::ranges::any_of(beside(), [](const QString& name) { return name.contains(QStringLiteral("version")); }));
}

TEST_F(Restore, WaitsForAProgramThatHasTheBook)
{
    const StagedBook staged = must(stageRestore(wish(m_backup.path), m_book.clock(), {}));
    const auto refused = finishRestore(staged, m_shelf, m_book.clock());
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::Conflict);
    EXPECT_EQ(must(dumpContent(m_book->database())), m_after);
}

TEST_F(Restore, LeavesNothingWhenNobodyFinishesIt)
{
    {
        const StagedBook staged = must(stageRestore(wish(m_backup.path), m_book.clock(), {}));
        EXPECT_NE(beside(), m_names);
    }
    EXPECT_EQ(beside(), m_names) << beside().join(u' ').toStdString();
}

TEST_F(Restore, StopsWhenAskedAndLeavesNothing)
{
    std::stop_source stop;
    stop.request_stop();
    expectUntouched(stageRestore(wish(m_backup.path), m_book.clock(), Progress({}, stop.get_token())),
                    ErrorCode::Cancelled);
}

TEST_F(Restore, LosesAgainWhoWasErasedSinceBeforeAnybodySeesTheBook)
{
    const QUuid ada = must(m_book->athletes().find(m_book.athlete())).uuid;
    must(eraseAthlete(*m_book, m_book.athlete()));
    const StagedBook staged = must(stageRestore(wish(m_backup.path), m_book.clock(), {}));
    EXPECT_EQ(staged.seen.content.athletes, 0);
    EXPECT_EQ(staged.seen.content.sets, 0);
    EXPECT_EQ(must(filesNaming(staged.path(), {QStringLiteral("Ada Fulcrum"), ada})), QStringList());
}

TEST_F(Restore, KnowsFromTheShelfWhoWasErasedWhenTheBookIsLost)
{
    const QString shelf = m_book.file(QStringLiteral("marks"));
    const auto report = must(eraseAthlete(*m_book, m_book.athlete()));
    must(rememberErased(shelf, {report.erased}));
    must(rememberErased(shelf, {report.erased, {QUuid::createUuid(), m_book.clock().nowUtc()}}));
    EXPECT_EQ(erasedFrom(m_book.file(QStringLiteral("gone")), shelf).size(), 2U);
    EXPECT_EQ(erasedFrom(m_book.file(QStringLiteral("gone")), shelf).front(), report.erased);
    EXPECT_EQ(erasedFrom(m_book.path(), m_book.file(QStringLiteral("no shelf"))), std::vector{report.erased});
    const QByteArray list = test::fileBytes(shelf + QStringLiteral("/erased.json"));
    EXPECT_FALSE(list.contains("Ada"));
    QFile file(shelf + QStringLiteral("/erased.json"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{broken");
    file.close();
    EXPECT_TRUE(erasedFrom(m_book.file(QStringLiteral("gone")), shelf).empty());
}

}  // namespace
}  // namespace steelyard
