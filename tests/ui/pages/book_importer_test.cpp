// The import screen's importer on a real book.
#include "ui/pages/import/book_importer.h"

#include "tests/support/temp_book.h"
#include "ui/shell/backup_keeper.h"

#include <QtCore/QFile>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;

class ImportIntoABook : public testing::Test {
protected:
    QString write(const QByteArray& bytes)
    {
        const QString path = m_book.file(QStringLiteral("log.csv"));
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size()) qFatal("can't write");
        return path;
    }
    Result<int> bringIn(const QString& path, const ImportChoices& choices)
    {
        return bringIn(m_importer, path, choices);
    }
    Result<int> bringIn(BookImporter& importer, const QString& path, const ImportChoices& choices)
    {
        std::optional<Result<int>> answer;
        importer.start(&m_jobs, path, choices, [&](Result<int> sets) { answer = std::move(sets); });
        if (!QTest::qWaitFor([&] { return answer.has_value(); }, 20'000)) qFatal("the import never answered");
        return *answer;
    }

    TempBook m_book;
    JobRunner m_jobs;
    BookImporter m_importer{*m_book, m_jobs};
    const QByteArray m_file =
        "Datum;Name;Übung;Gewicht;Wdh\n03.02.2026;Ada Fulcrum;Arm curl;42,5;10\n"
        "25.02.2026;Ada Fulcrum;Arm curl;45;zehn\n";
};

TEST_F(ImportIntoABook, GuessesHowAFileIsWritten)
{
    const LogbookGuess guess = m_importer.guess(m_file);
    EXPECT_EQ(guess.mapping.separator, QChar(u';'));
    EXPECT_EQ(guess.mapping.decimalMark, QChar(u','));
    EXPECT_EQ(guess.mapping.dateOrder, DateOrder::DayMonthYear);
    EXPECT_EQ(std::get<int>(guess.mapping.columns.at(QStringLiteral("reps"))), 5);
}

TEST_F(ImportIntoABook, PreviewsWithoutChangingAnything)
{
    const QByteArray before = test::rawDump(m_book->database());
    const auto preview = must(m_importer.preview(write(m_file), {m_importer.guess(m_file).mapping}, Progress()));
    EXPECT_EQ(preview.newSets, 1);
    EXPECT_EQ(preview.badRows, 1);
    ASSERT_EQ(preview.troubles.size(), 1U);
    EXPECT_EQ(preview.troubles[0].row, 1);
    EXPECT_EQ(preview.troubles[0].source, 4);
    EXPECT_EQ(test::rawDump(m_book->database()), before);
}

TEST_F(ImportIntoABook, ShowsTheHeaderOfAFileWhoseColumnsItDoesNotKnowAndReadsItOnceToldWhichIsWhich)
{
    const QByteArray file = "Aa;Bb;Cc;Dd;Ee\n03.02.2026;Ada Fulcrum;Arm curl;42,5;10\n";
    ImportChoices choices{m_importer.guess(file).mapping};
    choices.mapping.columns = {{QStringLiteral("load"), 4}};
    const QString path = write(file);
    const auto unknown = must(m_importer.preview(path, choices, Progress()));
    EXPECT_EQ(unknown.header.size(), 5);
    EXPECT_EQ(unknown.rows.size(), 1U);
    EXPECT_FALSE(unknown.refusal.isEmpty());
    choices.mapping.columns = {{QStringLiteral("date"), 1},
                               {QStringLiteral("athlete"), 2},
                               {QStringLiteral("exercise"), 3},
                               {QStringLiteral("load"), 4},
                               {QStringLiteral("reps"), 5}};
    const auto told = must(m_importer.preview(path, choices, Progress()));
    EXPECT_EQ(told.refusal, QString());
    EXPECT_EQ(told.newSets, 1);
}

TEST_F(ImportIntoABook, RefusesAllOrSetsBadRowsAsideAndCanBeUndone)
{
    const QByteArray before = test::rawDump(m_book->database());
    const QString path = write(m_file);
    ImportChoices choices{m_importer.guess(m_file).mapping};
    EXPECT_FALSE(bringIn(path, choices));
    EXPECT_EQ(test::rawDump(m_book->database()), before);
    choices.setBadRowsAside = true;
    EXPECT_EQ(must(bringIn(path, choices)), 1);
    EXPECT_TRUE(test::fileBytes(path + QStringLiteral(".set-aside.csv")).contains("zehn"));
    EXPECT_NE(test::rawDump(m_book->database()), before);
    must(m_book->history().undo());
    EXPECT_EQ(test::rawDump(m_book->database()), before);
}

TEST_F(ImportIntoABook, KeepsABackupFirstAndComesInThoughNoneCanBeMade)
{
    const QByteArray before = test::rawDump(m_book->database());
    BackupKeeper keeper(*m_book, m_jobs, m_book.clock(), {.folder = m_book.file(QStringLiteral("shelf"))});
    BookImporter importer(*m_book, m_jobs, &keeper);
    const QString path = write(m_file);
    const ImportChoices choices{m_importer.guess(m_file).mapping, true};
    EXPECT_EQ(must(bringIn(importer, path, choices)), 1);
    ASSERT_EQ(keeper.shelf().list().size(), 1U);
    EXPECT_EQ(keeper.shelf().list().front().reason, BackupReason::Import);
    EXPECT_EQ(test::rawDump(*must(Database::openReader(keeper.shelf().list().front().path))), before);
    EXPECT_EQ(keeper.trouble(), QString());
    must(m_book->history().undo());
    QFile inTheWay(m_book.file(QStringLiteral("no folder")));
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    BackupKeeper hindered(*m_book, m_jobs, m_book.clock(), {.folder = inTheWay.fileName()});
    BookImporter again(*m_book, m_jobs, &hindered);
    EXPECT_EQ(must(bringIn(again, path, choices)), 1);
    EXPECT_EQ(hindered.trouble(), QStringLiteral("No backup could be made"));
}

TEST_F(ImportIntoABook, RecognisesTheSameSetsInAFileWithItsColumnsInAnotherOrder)
{
    const QByteArray first =
        "Datum;Name;\xC3\x9C"
        "bung;Gewicht;Wdh\n03.02.2026;Ada Fulcrum;Arm curl;42,5;10\n";
    const QByteArray second = "reps,load,exercise,athlete,date\n10,42.5,Arm curl,Ada Fulcrum,2026-02-03\n";
    EXPECT_EQ(must(bringIn(write(first), {m_importer.guess(first).mapping})), 1);
    const auto preview = must(m_importer.preview(write(second), {m_importer.guess(second).mapping}, Progress()));
    EXPECT_EQ(preview.newSets, 0);
    EXPECT_EQ(preview.alreadyThere, 1);
}

TEST_F(ImportIntoABook, SaysWhichNamesTheLibraryHasNotAndBringsThemInAsTheyWereMatched)
{
    const QByteArray file =
        "date,athlete,exercise,load,reps\n2026-02-03,Ada Fulcrum,Arm crul,40,8\n"
        "2026-02-03,Ada Fulcrum,Arm curl,40,8\n";
    ImportChoices choices{m_importer.guess(file).mapping};
    const QString path = write(file);
    const auto preview = must(m_importer.preview(path, choices, Progress()));
    ASSERT_EQ(preview.exercises.size(), 2U);
    EXPECT_EQ(preview.exercises[0].name.exercise, QStringLiteral("Arm crul"));
    ASSERT_FALSE(preview.exercises[0].suggestions.empty());
    EXPECT_TRUE(preview.exercises[1].known);
    choices.mapping.exercises[preview.exercises[0].name] = preview.exercises[0].suggestions[0].name;
    const auto matched = must(m_importer.preview(path, choices, Progress()));
    EXPECT_TRUE(matched.newExercises.isEmpty());
    EXPECT_EQ(must(bringIn(path, choices)), 2);
    EXPECT_EQ(must(m_book->database().integer("SELECT count(*) FROM exercise")), 1);
}

}  // namespace
}  // namespace steelyard
