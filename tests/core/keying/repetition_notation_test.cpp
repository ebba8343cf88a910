#include "core/keying/repetition_notation.h"

#include <gtest/gtest.h>

#include <random>

namespace steelyard {
namespace {

std::vector<Repetition> repetitionsOfLine(QStringView line, const RepetitionLineContext& context = {})
{
    const auto reading = readRepetitionLine(line, context);
    EXPECT_TRUE(reading.has_value()) << qPrintable(line.toString()) << ": "
                                     << (reading ? "" : qPrintable(reading.error().text));
    return reading.value_or(std::vector<Repetition>());
}

NotationProblem problemOfLine(QStringView line, const RepetitionLineContext& context = {})
{
    const auto reading = readRepetitionLine(line, context);
    EXPECT_FALSE(reading.has_value()) << qPrintable(line.toString());
    return reading ? NotationProblem{} : reading.error();
}

std::optional<Decimal> decimal(const char* text)
{
    return Decimal::parse(std::string_view(text));
}

TEST(RepetitionNotation, ReadsEveryPartOfARepetition)
{
    const auto read = repetitionsOfLine(u"3*52/2.5 51,25^1.2/3sb . .+");
    ASSERT_EQ(read.size(), 6U);
    for (int i = 0; i < 3; ++i) {
        EXPECT_EQ(read[static_cast<std::size_t>(i)].number, i + 1);
        EXPECT_EQ(read[static_cast<std::size_t>(i)].travelMm, decimal("520"));
        EXPECT_EQ(read[static_cast<std::size_t>(i)].loweringSeconds, decimal("2.5"));
        EXPECT_EQ(read[static_cast<std::size_t>(i)].source, RepetitionSource::Typed);
    }
    EXPECT_EQ(read[3].travelMm, decimal("512.5"));
    EXPECT_EQ(read[3].liftingSeconds, decimal("1.2"));
    EXPECT_TRUE(read[3].marks.has(Mark::Swing));
    EXPECT_TRUE(read[3].marks.has(Mark::ShortBottom));
    EXPECT_FALSE(read[4].travelMm.has_value());
    EXPECT_TRUE(read[4].marks.none());
    EXPECT_TRUE(read[5].partWay);
}

TEST(RepetitionNotation, TakesTimesAndMarksInAnyOrder)
{
    EXPECT_EQ(repetitionsOfLine(u"49t/2^1s+"), repetitionsOfLine(u"49^1/2ts+"));
    EXPECT_EQ(repetitionsOfLine(u".+/2"), repetitionsOfLine(u"./2+"));
    EXPECT_EQ(problemOfLine(u"49/2/3").at, 4);
    EXPECT_EQ(problemOfLine(u".++").at, 2);
}

TEST(RepetitionNotation, TheSetTakesOverWhatItsRepetitionsSay)
{
    SetEntry set;
    set.reps = 10;
    const SetEntry said = withRepetitions(set, repetitionsOfLine(u"6*52/3 2*50/2b 48s .+"));
    EXPECT_EQ(said.reps, 9);
    EXPECT_EQ(said.off, 3);
    EXPECT_TRUE(said.failed);
    EXPECT_EQ(said.marks.of(Mark::ShortBottom), 2);
    EXPECT_EQ(said.marks.of(Mark::Swing), 1);
    EXPECT_EQ(said.loweringSeconds, decimal("3"));
}

TEST(RepetitionNotation, WhatIsWrittenIsReadBackTheSame)
{
    std::mt19937 random(20260);
    const auto draw = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
    const auto maybe = [&](int most, int decimals) {
        return draw(2) == 0 ? std::nullopt : std::optional(Decimal::fromScaled(draw(most), draw(decimals)));
    };
    for (int round = 0; round < 20'000; ++round) {
        std::vector<Repetition> repetitions;
        const int count = 1 + draw(7);
        for (int i = 1; i <= count; ++i) {
            if (!repetitions.empty() && draw(1) == 0) {
                repetitions.push_back(repetitions.back());
                repetitions.back().number = i;
                continue;
            }
            Repetition one{.number = i, .travelMm = maybe(2999, 4), .liftingSeconds = maybe(119, 3)};
            one.loweringSeconds = maybe(119, 3);
            for (const auto& [mark, key] : EnumText<Mark>::table)
                if (draw(3) == 0) one.marks.set(mark);
            repetitions.push_back(one);
        }
        repetitions.back().partWay = draw(3) == 0;
        ASSERT_TRUE(canBeTyped(repetitions));
        ASSERT_TRUE(validate(repetitions).empty());
        const QString line = writeRepetitionLine(repetitions);
        ASSERT_EQ(repetitionsOfLine(line), repetitions) << qPrintable(line);
    }
}

TEST(RepetitionNotation, NamesThePlaceAndWhatToTypeThere)
{
    const auto places = std::to_array<std::pair<QStringView, std::pair<qsizetype, qsizetype>>>({
        {u"", {0, 0}},        // nothing
        {u"52/", {3, 0}},     // seconds are missing
        {u"52 51x", {5, 1}},  // no letter of ours
        {u"0*52", {0, 2}},    // none of it
        {u"201*.", {0, 4}},   // more than a set has
        {u"52bb", {3, 1}},    // twice
        {u".+ 52", {3, 2}},   // goes on after a failure
        {u"400", {0, 3}},     // four metres
        {u"52/200", {0, 6}},  // more than two minutes
        {u"1234567890", {0, 10}},
        {u"5*", {2, 0}},  // of what
    });
    for (const auto& [line, at] : places) {
        const NotationProblem problem = problemOfLine(line);
        EXPECT_EQ(std::pair(problem.at, problem.length), at) << qPrintable(line.toString());
        EXPECT_FALSE(problem.text.isEmpty());
    }
}

TEST(RepetitionNotation, AsksAtWhichEndARepetitionUnderTheStandardWasShort)
{
    const RepetitionLineContext standard{FullTravel{.mm = 500, .repetitions = 20}, 90};
    EXPECT_EQ(repetitionsOfLine(u"50 45", standard).size(), 2U);  // 45 is exactly nine tenths
    const NotationProblem problem = problemOfLine(u"50 44.9 50", standard);
    EXPECT_EQ(problem.at, 3);
    EXPECT_EQ(problem.length, 4);
    EXPECT_TRUE(repetitionsOfLine(u"50 44.9t", standard)[1].marks.has(Mark::ShortTop));
    EXPECT_EQ(repetitionsOfLine(u"50 20+", standard).size(), 2U);  // one that failed is short anyway
    EXPECT_EQ(repetitionsOfLine(u"50 20", {.full = standard.full, .leastPercent = {}}).size(), 2U);
}

TEST(RepetitionNotation, BeginsWithAsManyAsTheSetSays)
{
    SetEntry set;
    set.reps = 8;
    EXPECT_EQ(emptyRepetitionLine(set), QStringLiteral("8*."));
    set.reps = 2;
    set.failed = true;
    EXPECT_EQ(emptyRepetitionLine(set), QStringLiteral(". . .+"));
    set.reps = 0;
    EXPECT_EQ(emptyRepetitionLine(set), QStringLiteral(".+"));
}

TEST(RepetitionNotation, LeavesWhatADeviceMeasuredToTheDevice)
{
    std::vector<Repetition> tapped{{.number = 1, .source = RepetitionSource::Tapped}};
    EXPECT_TRUE(canBeTyped(tapped));
    tapped[0].source = RepetitionSource::Measured;
    EXPECT_FALSE(canBeTyped(tapped));
    tapped[0].source = RepetitionSource::Typed;
    tapped[0].lowMm = Decimal(12);
    EXPECT_FALSE(canBeTyped(tapped));
}

}  // namespace
}  // namespace steelyard
