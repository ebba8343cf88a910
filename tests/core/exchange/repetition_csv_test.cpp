#include "core/exchange/repetition_csv.h"

#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

RepetitionReading readAll(const QByteArray& bytes)
{
    const RepetitionTable table = must(readRepetitionTable(bytes));
    return readRepetitions(table, guessRepetitionColumns(table));
}

TEST(RepetitionCsv, GuessesColumnsAndUnitsFromTheHeading)
{
    const auto table =
        must(readRepetitionTable("Datum;Satz;Wdh;Weg [cm];Exzentrisch (ms);Konzentrisch (ms)\n"
                                 "2026-03-02;1;1;51,2;2450;980\n"));
    const auto mapping = guessRepetitionColumns(table);
    EXPECT_EQ(mapping.of(RepetitionColumn::Date), 0);
    EXPECT_EQ(mapping.of(RepetitionColumn::Set), 1);
    EXPECT_EQ(mapping.of(RepetitionColumn::Number), 2);
    EXPECT_EQ(mapping.of(RepetitionColumn::Travel), 3);
    EXPECT_EQ(mapping.of(RepetitionColumn::Lowering), 4);
    EXPECT_EQ(mapping.of(RepetitionColumn::Lifting), 5);
    EXPECT_FALSE(mapping.of(RepetitionColumn::Athlete));
    EXPECT_EQ(mapping.length, LengthUnit::cm);
    EXPECT_EQ(mapping.time, TimeUnit::ms);
    const auto reading = readRepetitions(table, mapping);
    ASSERT_EQ(reading.sets.size(), 1U);
    EXPECT_TRUE(reading.problems.empty());
    const Repetition& one = reading.sets[0].repetitions.at(0);
    EXPECT_EQ(one.travelMm, Decimal::parse(u"512"));
    EXPECT_EQ(one.loweringSeconds, Decimal::parse(u"2.45"));
    EXPECT_EQ(one.liftingSeconds, Decimal::parse(u"0.98"));
    EXPECT_EQ(one.source, RepetitionSource::Measured);
    EXPECT_EQ(reading.sets[0].place.date, QDate(2026, 3, 2));
    EXPECT_EQ(reading.sets[0].place.set, 1);
}

TEST(RepetitionCsv, GuessesUnitsFromTheNumbersWhenTheHeadingIsSilent)
{
    struct Case {
        const char* file;
        LengthUnit length;
        TimeUnit time;
    };
    for (const Case& each : {Case{"rep,travel,lowering\n1,0.512,2.4\n", LengthUnit::m, TimeUnit::s},
                             Case{"rep,travel,lowering\n1,51.2,2400\n", LengthUnit::cm, TimeUnit::ms},
                             Case{"rep,travel,lowering\n1,512,0.9\n", LengthUnit::mm, TimeUnit::s}}) {
        const auto table = must(readRepetitionTable(each.file));
        const auto mapping = guessRepetitionColumns(table);
        EXPECT_EQ(mapping.length, each.length) << each.file;
        EXPECT_EQ(mapping.time, each.time) << each.file;
        EXPECT_DOUBLE_EQ(readRepetitions(table, mapping).sets.at(0).repetitions.at(0).travel().value(), 512);
    }
}

TEST(RepetitionCsv, ANewSetBeginsWhereTheNumbersStartAgainOrThePlaceChanges)
{
    const auto reading = readAll("set,rep,travel_mm\n1,1,500\n1,2,501\n2,1,502\n2,2,503\n2,1,504\n");
    ASSERT_EQ(reading.sets.size(), 3U);
    EXPECT_EQ(reading.sets[0].repetitions.size(), 2U);
    EXPECT_EQ(reading.sets[1].repetitions.size(), 2U);
    EXPECT_EQ(reading.sets[2].rows, std::vector{6});
    EXPECT_EQ(reading.sets[2].repetitions[0].number, 1);
}

TEST(RepetitionCsv, SaysRowColumnAndRemedyOfWhatCannotBeRead)
{
    const auto reading =
        readAll("set,rep,travel_mm,lowering_s\n1,1,abc,2\n1,2,500,-1\n2,1,500,\n2,2,9000,2\nx,1,500,2\n");
    ASSERT_EQ(reading.problems.size(), 4U);
    EXPECT_EQ(reading.problems[0].row, 2);
    EXPECT_EQ(reading.problems[0].column, QStringLiteral("travel_mm"));
    EXPECT_TRUE(reading.problems[0].text.contains(QStringLiteral("abc")));
    EXPECT_EQ(reading.problems[1].row, 3);
    EXPECT_EQ(reading.problems[1].column, QStringLiteral("lowering_s"));
    EXPECT_EQ(reading.problems[2].row, 6);
    EXPECT_EQ(reading.problems[2].column, QStringLiteral("set"));
    EXPECT_EQ(reading.problems[3].row, 5);
    EXPECT_EQ(reading.problems[3].column, QStringLiteral("travel_mm"));
    for (const ReadRepetitions& set : reading.sets) EXPECT_FALSE(set.sound);
}

TEST(RepetitionCsv, EmptyCellsAreUnknown)
{
    const auto reading = readAll("rep,lowest (mm),highest (mm),eccentric (s)\n1,12,520,\n2,,,2.5\n");
    EXPECT_TRUE(reading.problems.empty());
    const auto& list = reading.sets.at(0).repetitions;
    EXPECT_DOUBLE_EQ(list.at(0).travel().value(), 508);
    EXPECT_FALSE(list.at(0).loweringSeconds);
    EXPECT_FALSE(list.at(1).travel());
}

TEST(RepetitionCsv, RefusesAFileWithoutRowsAndKnowsWhenNothingIsTold)
{
    EXPECT_FALSE(readRepetitionTable("rep,travel\n"));
    EXPECT_FALSE(readRepetitionTable(""));
    EXPECT_FALSE(tellsAnything(guessRepetitionColumns(must(readRepetitionTable("a,b\n1,2\n")))));
    EXPECT_TRUE(tellsAnything(guessRepetitionColumns(must(readRepetitionTable("a,travel\n1,2\n")))));
}

// Damage of any kind ends in a refusal or in problems, never in a set that can't be stored.
TEST(RepetitionCsv, WhateverItReadsAsSoundCanBeStored)
{
    const QByteArray good = "date,set,rep,travel (mm),lowering (s)\n2026-03-02,1,1,500,2.5\n2026-03-02,1,2,490,2.4\n";
    for (qsizetype at = 0; at < good.size(); ++at)
        for (const char byte : {'\0', '"', ',', ';', '\n', '-', '9', '\xff'}) {
            QByteArray damaged = good;
            damaged[at] = byte;
            const auto table = readRepetitionTable(damaged);
            if (!table) continue;
            for (const ReadRepetitions& set : readRepetitions(*table, guessRepetitionColumns(*table)).sets)
                EXPECT_TRUE(!set.sound || validate(set.repetitions).empty()) << damaged.constData();
        }
}

}  // namespace
}  // namespace steelyard
