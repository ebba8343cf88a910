#include "core/exchange/logbook_reader.h"

#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

const QDate kReaderDay(2026, 3, 2);

// More than three pieces of text, with characters of two bytes that stand across their borders.
TEST(LogbookReader, ReadsAFileOfManyPiecesAsOne)
{
    QByteArray file = "date,athlete,exercise,load,reps,note\n";
    const int rows = 80'000;
    for (int i = 0; i < rows; ++i)
        file += "2026-02-0" + QByteArray::number(i % 9 + 1) + ",\xC3\x84\xC3\x96\xC3\x9C,Arm curl,40,"
                + QByteArray::number(i % 100) + ",\"\xC3\xA4" + QByteArray(i % 7, 'x') + "\nb, \xE2\x82\xAC\"\n";
    ASSERT_GT(file.size(), 3 * 1024 * 1024);
    const auto reader = must(LogbookReader::open(file, {}, kReaderDay));
    int at = 0;
    while (must(reader->next())) {
        ASSERT_TRUE(reader->problems().empty()) << toText(reader->problems()[0]).toStdString();
        const LogbookRow& row = reader->sets().at(0);
        ASSERT_EQ(row.line, 2 + 2 * at);
        ASSERT_EQ(row.set.reps, at % 100);
        ASSERT_EQ(row.set.note.size(), 6 + at % 7) << at;
        ++at;
    }
    EXPECT_EQ(at, rows);
    EXPECT_EQ(reader->share(), 1.0);
    EXPECT_EQ(reader->exercises().begin()->second, rows);
}

TEST(LogbookReader, NamesTheLineOfBadBytesFarIntoAFile)
{
    QByteArray file = "date,athlete,exercise,reps\n";
    for (int i = 0; i < 120'000; ++i) file += "2026-02-01,Ada Fulcrum,Arm curl,8\n";
    file += "2026-02-01,\xDC,Arm curl,8\n";
    const auto reader = must(LogbookReader::open(file, {}, kReaderDay));
    auto more = reader->next();
    while (more && *more) more = reader->next();
    ASSERT_FALSE(more);
    EXPECT_TRUE(more.error().what.contains(QStringLiteral("Line 120002"))) << more.error().what.toStdString();
}

TEST(LogbookReader, RefusesARowBeyondAllMeasure)
{
    QByteArray file = "date,athlete,exercise,reps\n";
    for (int i = 0; i < 80; ++i) file += QByteArray(60'000, '7') + ',';
    const auto reader = must(LogbookReader::open(file, {}, kReaderDay));
    const auto more = reader->next();
    ASSERT_FALSE(more);
    EXPECT_TRUE(more.error().what.contains(QStringLiteral("Line 2: a row is longer")));
}

LogbookMapping wideMapping()
{
    LogbookMapping mapping;
    mapping.byHand = true;
    mapping.columns = {{QStringLiteral("date"), 1}, {QStringLiteral("athlete"), 2}, {QStringLiteral("exercise"), 3}};
    mapping.sets = {{{QStringLiteral("load"), 4}, {QStringLiteral("reps"), 5}},
                    {{QStringLiteral("load"), 6}, {QStringLiteral("reps"), 7}}};
    return mapping;
}

TEST(WideSheet, NamesTheColumnOfTheFileWhereASetIsWrongAndTakesNoSetOfThatRow)
{
    const auto reader = must(LogbookReader::open("Day,Who,What,kg 1,reps 1,kg 2,reps 2\n2026-02-01,Ada,Row,40,8,42,x\n",
                                                 wideMapping(), kReaderDay));
    ASSERT_TRUE(must(reader->next()));
    EXPECT_TRUE(reader->sets().empty());
    ASSERT_EQ(reader->problems().size(), 1U);
    EXPECT_EQ(reader->problems()[0].source, 6);
    EXPECT_EQ(toText(reader->problems()[0]).left(38), QStringLiteral("line 2, column reps (reps 2), “x”: thi"));
}

TEST(WideSheet, PassesOverARowWithoutASet)
{
    const auto reader = must(LogbookReader::open("Day,Who,What,kg 1,reps 1,kg 2,reps 2\n2026-02-01,Ada,Row,,-,,\n",
                                                 wideMapping(), kReaderDay));
    ASSERT_TRUE(must(reader->next()));
    EXPECT_TRUE(reader->problems().empty());
    EXPECT_FALSE(reader->passedOver().isEmpty());
}

TEST(WideSheet, RefusesAColumnThatCantBelongToEverySet)
{
    LogbookMapping mapping = wideMapping();
    mapping.columns[QStringLiteral("off")] = 2;
    const auto reader = LogbookReader::open("Day,Who,What,kg 1,reps 1,kg 2,reps 2\n", mapping, kReaderDay);
    ASSERT_FALSE(reader);
    EXPECT_TRUE(reader.error().what.contains(QStringLiteral("off")));
}

TEST(WideSheet, IsTheSameAsALongOne)
{
    const auto wide = must(parseLogbook("Day,Who,What,kg 1,reps 1,kg 2,reps 2\n2026-02-01,Ada,Row,40,8,42.5,6\n",
                                        wideMapping(), kReaderDay, Progress()));
    const auto lengthwise =
        must(parseLogbook("date,athlete,exercise,load,reps\n2026-02-01,Ada,Row,40,8\n2026-02-01,Ada,Row,42.5,6\n", {},
                          kReaderDay, Progress()));
    ASSERT_EQ(wide.rows.size(), lengthwise.rows.size());
    for (std::size_t i = 0; i < wide.rows.size(); ++i) {
        EXPECT_EQ(wide.rows[i].set, lengthwise.rows[i].set);
        EXPECT_EQ(wide.rows[i].date, lengthwise.rows[i].date);
    }
}

TEST(MatchedNames, ComeInAsTheLibrarysAndAreCountedAsTheFiles)
{
    LogbookMapping mapping;
    mapping.exercises = {{{QStringLiteral("KH Curl"), {}}, {QStringLiteral("Arm curl"), QStringLiteral("dumbbells")}}};
    mapping.athletes = {{QStringLiteral("Ada F."), QStringLiteral("Ada Fulcrum")}};
    const auto reader =
        must(LogbookReader::open("date,athlete,exercise,reps\n2026-02-01,Ada F.,KH Curl,8\n", mapping, kReaderDay));
    ASSERT_TRUE(must(reader->next()));
    EXPECT_EQ(reader->sets().at(0).exercise, QStringLiteral("Arm curl"));
    EXPECT_EQ(reader->sets().at(0).variant, QStringLiteral("dumbbells"));
    EXPECT_EQ(reader->sets().at(0).athlete, QStringLiteral("Ada Fulcrum"));
    EXPECT_EQ(reader->exercises().begin()->first.exercise, QStringLiteral("KH Curl"));
    EXPECT_EQ(reader->athletes().begin()->first, QStringLiteral("Ada F."));
}

// A note or a date that was taken for a name would make a lifter of every row.
TEST(ManyNames, AreRefusedAtTheLineWhereTheyAreTooMany)
{
    for (const char* form : {"2026-02-01,L%1,Row,8\n", "2026-02-01,Ada,E%1,8\n"}) {
        QByteArray file = "date,athlete,exercise,reps\n";
        for (int i = 0; i <= static_cast<int>(kMostNames); ++i)
            file += QByteArray(form).replace("%1", QByteArray::number(i));
        const auto reader = must(LogbookReader::open(file, {}, kReaderDay));
        for (std::size_t row = 0; row < kMostNames; ++row) ASSERT_TRUE(must(reader->next()));
        const auto refused = reader->next();
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().code, ErrorCode::Invalid);
        EXPECT_TRUE(refused.error().what.contains(QStringLiteral("line 5002"))) << qPrintable(refused.error().what);
    }
}

}  // namespace
}  // namespace steelyard
