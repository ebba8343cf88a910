#include "core/keying/keyed_line.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

SetEntry plannedEntry(const char* load, int reps)
{
    SetEntry set;
    set.load = *Load::parse(load, MassUnit::kg);
    set.reps = reps;
    return set;
}

class KeyedLines : public testing::Test {
protected:
    KeyedLines()
    {
        const LiftLine lift{Id<Athlete>(1), Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};
        KeyingExercise exercise{lift, {}, {}};
        exercise.rows = {{5, plannedEntry("42.5", 12), {}}, {6, plannedEntry("42.5", 11), {}}, {7, {}, {}}};
        sheet.exercises = {exercise};
    }
    void store(std::size_t row, SetEntry set)
    {
        auto& rows = sheet.exercises[0].rows;
        set.number = rows[row].number;
        rows[row].stored = RecordedSet{Id<SetEntry>(1), sheet.exercises[0].lift, set};
    }
    [[nodiscard]] NotationReading read(QStringView line, std::size_t row) const
    {
        return readKeyedLine(line, sheet.exercises[0], row, sheet);
    }

    KeyingSheet sheet{Id<Athlete>(1), QDate(2027, 3, 8), MassUnit::kg, SetKind::Work, {}};
};

TEST_F(KeyedLines, ASetHasTheNumberOfItsRow)
{
    EXPECT_EQ(read(u"40x10", 1)->number, 6);
    EXPECT_EQ(keyedAsPlanned(sheet.exercises[0].rows[0], Watched::No)->number, 5);
}

TEST_F(KeyedLines, RepetitionsAloneKeepTheLoadOfTheSetBefore)
{
    EXPECT_EQ(read(u"10", 0)->load.toString(), QStringLiteral("42.5 kg")) << "the plan, where nothing was done yet";
    store(0, plannedEntry("40", 12));
    EXPECT_EQ(read(u"10", 1)->load.toString(), QStringLiteral("40 kg"));
    EXPECT_EQ(read(u"9", 0)->load.toString(), QStringLiteral("40 kg")) << "a stored set keeps its own";
}

TEST_F(KeyedLines, AWarmUpIsNoLoadToKeep)
{
    SetEntry light = plannedEntry("20", 10);
    light.kind = SetKind::WarmUp;
    store(0, light);
    EXPECT_EQ(read(u"10", 1)->load.toString(), QStringLiteral("42.5 kg"));
}

TEST_F(KeyedLines, ALineThatBeginsWithAWordSpeaksOfThePlan)
{
    const auto watched = read(u"w", 0);
    ASSERT_TRUE(watched);
    EXPECT_EQ(watched->reps, 12);
    EXPECT_EQ(watched->off, 0);
    const auto off = read(u"-2s @9", 0);
    ASSERT_TRUE(off);
    EXPECT_EQ(off->off, 2);
    EXPECT_EQ(off->marks.of(Mark::Swing), 1);
    EXPECT_EQ(off->effort->value, Decimal(9));
}

TEST_F(KeyedLines, ThePlannedReserveStaysUnlessAnotherIsSaid)
{
    sheet.exercises[0].rows[0].planned->effort = Effort{Effort::Scale::Rir, Decimal(2)};
    EXPECT_EQ(read(u"w", 0)->effort, sheet.exercises[0].rows[0].planned->effort);
    EXPECT_EQ(read(u"rir1", 0)->effort->value, Decimal(1));
    EXPECT_FALSE(read(u"12", 0)->effort) << "a set that is typed says what is known of it";
}

TEST_F(KeyedLines, AProblemNamesThePlaceInWhatWasTyped)
{
    const auto broken = read(u"w ?", 0);
    ASSERT_FALSE(broken);
    EXPECT_EQ(broken.error().at, 2);
    const auto tooMany = read(u"-13", 0);
    ASSERT_FALSE(tooMany);
    EXPECT_GE(tooMany.error().at, 0);
    EXPECT_LE(tooMany.error().at + tooMany.error().length, 3);
}

TEST_F(KeyedLines, WithoutAPlanAWordIsNoSet)
{
    EXPECT_FALSE(read(u"w", 2));
    EXPECT_FALSE(keyedAsPlanned(sheet.exercises[0].rows[2], Watched::Fine));
    EXPECT_FALSE(readKeyedLine(u"12", sheet.exercises[0], 2, KeyingSheet(sheet)).has_value())
        << "there is no load to keep";
}

TEST_F(KeyedLines, WatchedAndFineIsAnotherKeyThanNotWatched)
{
    EXPECT_FALSE(keyedAsPlanned(sheet.exercises[0].rows[0], Watched::No)->off);
    EXPECT_EQ(keyedAsPlanned(sheet.exercises[0].rows[0], Watched::Fine)->off, 0);
    SetEntry seen = plannedEntry("40", 10);
    seen.off = 3;
    EXPECT_EQ(withWatching(seen, Watched::Fine).off, 3) << "what the line says is kept";
    seen.off.reset();
    seen.marks.set(Mark::Lean, 1);
    EXPECT_FALSE(withWatching(seen, Watched::Fine).off) << "marks were seen, and nobody counted";
}

TEST_F(KeyedLines, WhatStandsInARowIsReadBackAsItIs)
{
    SetEntry set = plannedEntry("42.5", 10);
    set.off = 2;
    set.marks.set(Mark::ShortTop, 2);
    set.note = QStringLiteral("left elbow; asked twice");
    store(0, set);
    const auto line = writeSet(sheet.exercises[0].rows[0].stored->set, sheet.unit, sheet.kind);
    EXPECT_EQ(*read(line, 0), sheet.exercises[0].rows[0].stored->set);
}

}  // namespace
}  // namespace steelyard
