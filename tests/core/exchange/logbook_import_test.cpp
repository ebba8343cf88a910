#include "core/exchange/lift_line_finder.h"
#include "core/exchange/logbook_import.h"

#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using test::must;
using test::rawDump;
using test::TempBook;

ParsedLogbook logOf(const QByteArray& bytes, const LogbookMapping& mapping = {})
{
    return must(parseLogbook(bytes, mapping, QDate(2026, 3, 2), Progress()));
}

ImportReport bringIn(TempBook& book, const QByteArray& bytes, ImportOptions options = {})
{
    auto outcome = must(importLogbook(book->database(), logOf(bytes), options, Progress()));
    book->history().adopt(outcome.changes);
    return outcome.report;
}

const QByteArray kTwoSets =
    "date,athlete,exercise,load,reps,pump\n2026-03-01,Ada Fulcrum,Arm curl,40,8,7\n"
    "2026-03-01,Basil Notch,Row,50.0,10,\n";

TEST(LogbookImport, IsOneEditThatGoesBackAndForthExactly)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    const ImportReport report = bringIn(book, kTwoSets);
    EXPECT_EQ(report.setsAdded, 2);
    EXPECT_EQ(report.newAthletes, QStringList(QStringLiteral("Basil Notch")));
    const QByteArray after = rawDump(book->database());
    must(book->history().undo());
    EXPECT_EQ(rawDump(book->database()), before);
    must(book->history().redo());
    EXPECT_EQ(rawDump(book->database()), after);
}

// A column of remarks that was taken for the grip makes a lift line of every row.
TEST(LogbookImport, RefusesMoreNewLiftLinesThanARosterHas)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    QByteArray file = "date,athlete,exercise,grip,reps\n";
    for (int i = 0; i <= kMostNewLines; ++i)
        file += "2026-03-01,Ada Fulcrum,Row,remark " + QByteArray::number(i) + ",8\n";
    const auto outcome = importLogbook(book->database(), logOf(file), {}, Progress());
    ASSERT_FALSE(outcome);
    EXPECT_EQ(outcome.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(outcome.error().what.contains(QString::number(kMostNewLines))) << qPrintable(outcome.error().what);
    EXPECT_EQ(rawDump(book->database()), before);
}

TEST(LogbookImport, ChangesNothingTheSecondTime)
{
    TempBook book;
    (void)bringIn(book, kTwoSets);
    const QByteArray once = rawDump(book->database());
    const ImportReport again = bringIn(book, kTwoSets);
    EXPECT_EQ(again.setsAdded, 0);
    EXPECT_EQ(again.setsAlreadyThere, 2);
    EXPECT_EQ(rawDump(book->database()), once);
}

TEST(LogbookImport, WritesNothingWhenPreviewingOrWhenARowIsBad)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    EXPECT_FALSE(bringIn(book, kTwoSets, {true, false}).written);
    EXPECT_FALSE(bringIn(book, kTwoSets + "2026-03-01,Ada Fulcrum,Arm curl,40,ten,\n").written);
    EXPECT_EQ(rawDump(book->database()), before);
}

TEST(LogbookImport, LeavesTheBookAloneWhenItIsStopped)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    const ParsedLogbook log = logOf(kTwoSets);
    std::stop_source stop;
    stop.request_stop();
    const auto outcome = importLogbook(book->database(), log, {}, Progress({}, stop.get_token()));
    ASSERT_FALSE(outcome);
    EXPECT_EQ(outcome.error().code, ErrorCode::Cancelled);
    EXPECT_EQ(rawDump(book->database()), before);
}

QByteArray manySets(int rows)
{
    QByteArray file = "date,athlete,exercise,set,reps\n";
    for (int i = 0; i < rows; ++i)
        file += QDate(2020, 1, 1).addDays(i / 10).toString(Qt::ISODate).toLatin1() + ",Ada Fulcrum,Arm curl,"
                + QByteArray::number(i % 10 + 1) + ",8\n";
    return file;
}

TEST(LogbookImport, TellsHowFarItIsUntilItsEnd)
{
    TempBook book;
    std::vector<double> shares;
    const Progress progress([&](double share) { shares.push_back(share); });
    const ParsedLogbook log = must(parseLogbook(manySets(5000), {}, QDate(2026, 3, 2), progress));
    must(importLogbook(book->database(), log, {}, progress));
    EXPECT_GE(shares.size(), 10U);
    EXPECT_TRUE(std::ranges::is_sorted(shares));
    EXPECT_GT(shares.front(), 0);
    EXPECT_EQ(shares.back(), 1.0);
}

TEST(LogbookImport, CanBeStoppedAtEveryStepAndThenLeavesTheBookAlone)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    const ParsedLogbook log = logOf(manySets(2500));
    int steps = 0;
    must(importLogbook(book->database(), log, {true, false}, Progress([&](double) { ++steps; })));
    ASSERT_GE(steps, 5);
    for (int last = 1; last < steps; ++last) {
        std::stop_source stop;
        int step = 0;
        const auto report = [&](double) {
            if (++step == last) stop.request_stop();
        };
        const auto outcome = importLogbook(book->database(), log, {}, Progress(report, stop.get_token()));
        ASSERT_FALSE(outcome) << "stopped at step " << last;
        EXPECT_EQ(outcome.error().code, ErrorCode::Cancelled);
        EXPECT_EQ(rawDump(book->database()), before) << "stopped at step " << last;
    }
}

TEST(LogbookImport, GivesTheBookFreeBeforeItsLeftoversAreGone)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    std::stop_source stop;
    const Progress progress([&](double) { stop.request_stop(); }, stop.get_token());
    const auto reader = must(LogbookReader::open(manySets(2500), {}, QDate(2026, 3, 2)));
    const auto writer = must(Database::openWriter(book.path()));
    ImportLeftovers leftovers;
    const auto outcome = importLogbook(*writer, *reader, {.leftovers = &leftovers}, progress);
    ASSERT_FALSE(outcome);
    EXPECT_FALSE(leftovers.empty());
    EXPECT_EQ(rawDump(book->database()), before);
    must(must(Transaction::begin(book->database())).commit());
}

TEST(LogbookImport, CanBeStoppedWhileTheFileIsRead)
{
    std::stop_source stop;
    const Progress progress([&](double) { stop.request_stop(); }, stop.get_token());
    const auto log = parseLogbook(manySets(2500), {}, QDate(2026, 3, 2), progress);
    ASSERT_FALSE(log);
    EXPECT_EQ(log.error().code, ErrorCode::Cancelled);
}

TEST(LogbookImport, SetsARowAsideAsItStoodInTheFileWhenTheBookContradictsIt)
{
    TempBook book;
    (void)bringIn(book, kTwoSets);
    const ParsedLogbook log = logOf(
        "date,athlete,exercise,load,reps,note\n\n2026-03-01,Basil Notch,Row,50.0,10,\n"
        "2026-03-01,Ada Fulcrum,Arm curl,40,9,\"one\nand two\"\n");
    const auto outcome = must(importLogbook(book->database(), log, {false, true}, Progress()));
    ASSERT_EQ(outcome.report.problemRecords.size(), 1U);
    EXPECT_EQ(outcome.report.problemRecords[0].line, 4);
    EXPECT_EQ(outcome.report.problemRecords[0].fields.last(), QStringLiteral("one\nand two"));
}

TEST(LogbookImport, ReportsASetThatDiffersFromWhatTheBookHolds)
{
    TempBook book;
    (void)bringIn(book, kTwoSets);
    const ImportReport report =
        bringIn(book, "date,athlete,exercise,load,reps\n2026-03-01,Ada Fulcrum,Arm curl,40,9\n");
    EXPECT_FALSE(report.written);
    ASSERT_EQ(report.problems.size(), 1U);
    EXPECT_EQ(report.problems[0].line, 2);
    EXPECT_EQ(report.problems[0].column, QStringLiteral("set"));
}

TEST(LogbookImport, LeavesOutARowWhoseRatingsContradictAnEarlierRow)
{
    TempBook book;
    const ImportReport report = bringIn(book,
                                        "date,athlete,exercise,load,reps,pump\n2026-03-01,Ada Fulcrum,Arm curl,40,8,7\n"
                                        "2026-03-01,Ada Fulcrum,Arm curl,40,8,2\n",
                                        {false, true});
    EXPECT_EQ(report.setsAdded, 1);
    EXPECT_EQ(report.rowsSetAside, 1);
    EXPECT_EQ(must(book->database().integer("SELECT count(*) FROM set_entry")), 1);
}

TEST(LogbookImport, TakesBlankNamesForTheSameThingAsTheirWrittenOutName)
{
    TempBook book;
    const ImportReport report = bringIn(
        book,
        "date,athlete,exercise,variant,grip,standard,reps\n2026-03-01,Ada Fulcrum,Row,as usual,as usual,as usual,8\n"
        "2026-03-01,Ada Fulcrum,row,,,,8\n");
    EXPECT_TRUE(report.problems.empty());
    EXPECT_EQ(report.newLines, 1);
    EXPECT_EQ(report.newVariants, 1);
}

TEST(LogbookImport, KeepsNamesApartThatDifferInAnAccentWhenTheBookHasBoth)
{
    TempBook book;
    auto tx = must(Transaction::begin(book->database()));
    const QString accented = QString::fromUtf8(
        "\xC3\x9C"
        "bung");
    (void)must(book->library().insert(tx, Exercise{QStringLiteral("Ubung"), {}, false}));
    const auto second = must(book->library().insert(tx, Exercise{accented, {}, false}));
    must(tx.commit());
    EXPECT_TRUE(bringIn(book,
                        "date,athlete,exercise,reps\n2026-03-01,Ada Fulcrum,\xC3\x9C"
                        "bung,8\n")
                    .newExercises.isEmpty());
    const Library library = must(book->library().read());
    EXPECT_EQ(library.variants.back().value.exercise, second);
}

TEST(LogbookImport, NumbersSetsInOrderOfRowsAfterTheOnesThatHaveANumber)
{
    TempBook book;
    const ImportReport report = bringIn(book,
                                        "date,athlete,exercise,set,reps\n2026-03-01,Ada Fulcrum,Arm curl,2,8\n"
                                        "2026-03-01,Ada Fulcrum,Arm curl,,7\n");
    EXPECT_TRUE(report.problems.empty());
    EXPECT_EQ(must(book->database().integer("SELECT number FROM set_entry WHERE reps = 7")), 3);
}

TEST(LogbookImport, ReportsANumberThatStandsTwiceInTheFileWithOtherContent)
{
    TempBook book;
    const ImportReport report = bringIn(book,
                                        "date,athlete,exercise,set,reps\n2026-03-01,Ada Fulcrum,Arm curl,2,8\n"
                                        "2026-03-01,Ada Fulcrum,Arm curl,2,8\n"
                                        "2026-03-01,Ada Fulcrum,Arm curl,2,7\n");
    EXPECT_EQ(report.setsAdded, 1);
    EXPECT_EQ(report.setsAlreadyThere, 1);
    ASSERT_EQ(report.problems.size(), 1U);
    EXPECT_EQ(report.problems[0].line, 4);
}

TEST(LogbookImport, RefusesMoreSetsADayThanALogCanHold)
{
    TempBook book;
    QByteArray file = "date,athlete,exercise,reps\n";
    for (int i = 0; i < 501; ++i) file += "2026-03-01,Ada Fulcrum,Arm curl,8\n";
    const ImportReport report = bringIn(book, file);
    ASSERT_EQ(report.problems.size(), 1U);
    EXPECT_EQ(report.problems[0].line, 502);
}

TEST(LogbookImport, TakesLoadsWithoutAUnitInTheAthletesUnit)
{
    TempBook book;
    (void)bringIn(book,
                  "date,athlete,exercise,load,unit,reps\n2026-03-01,Basil Notch,Row,95,lb,8\n2026-03-02,Basil "
                  "Notch,Row,97.5,,8\n");
    EXPECT_EQ(must(book->database().integer("SELECT count(*) FROM set_entry WHERE unit = 'lb'")), 2);
}

TEST(RowsSetAside, ComeInAfterMendingWithTheSameMapping)
{
    TempBook book;
    LogbookMapping mapping;
    mapping.encoding = TextEncoding::Windows1252;
    const ParsedLogbook log = logOf("date,athlete,exercise,reps,note\n2026-03-01,J\xFCrgen,Row,ten,a\n", mapping);
    const auto outcome = must(importLogbook(book->database(), log, {false, true}, Progress()));
    QByteArray aside = problemRowsCsv(log, outcome.report);
    EXPECT_TRUE(aside.contains("column reps"));
    aside.replace("\"ten\"", "\"10\"");
    const ParsedLogbook mended = logOf(aside, mapping);
    ASSERT_EQ(mended.rows.size(), 1U);
    EXPECT_EQ(mended.rows[0].athlete, QString::fromUtf8("J\xC3\xBCrgen"));
    EXPECT_EQ(mended.rows[0].set.note, QStringLiteral("a")) << "what was wrong is no part of the note";
    EXPECT_TRUE(mended.unknownColumns.isEmpty());
}

TEST(RowsSetAside, HaveNoHeaderWhereTheFileHadNone)
{
    LogbookMapping mapping;
    mapping.hasHeader = false;
    for (int i = 0; i < 4; ++i)
        mapping.columns[QStringList{QStringLiteral("date"), QStringLiteral("athlete"), QStringLiteral("exercise"),
                                    QStringLiteral("reps")}[i]] = i + 1;
    const ParsedLogbook log = logOf("2026-03-01,A,B,ten\n", mapping);
    ImportReport report;
    report.problems = log.problems;
    report.problemRecords = log.badRecords;
    EXPECT_TRUE(problemRowsCsv(log, report).startsWith("\"2026-03-01\""));
}

}  // namespace
}  // namespace steelyard
