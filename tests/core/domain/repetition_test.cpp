#include "core/domain/repetition.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

std::vector<Repetition> made(int count, RepetitionSource source = RepetitionSource::Tapped)
{
    std::vector<Repetition> list;
    for (int number = 1; number <= count; ++number) list.push_back({.number = number, .source = source});
    return list;
}

SetEntry logged(int reps, std::optional<int> off = std::nullopt)
{
    SetEntry set;
    set.load = Load::parseWithUnit(u"40 kg").value();
    set.reps = reps;
    set.off = off;
    return set;
}

TEST(RepetitionMarks, GoToTextAndBack)
{
    RepetitionMarks marks;
    marks.set(Mark::Swing);
    marks.set(Mark::ShortBottom);
    EXPECT_EQ(marks.toString(), "short_bottom;swing");
    EXPECT_EQ(RepetitionMarks::parse("swing;short_bottom"), marks);
    EXPECT_EQ(RepetitionMarks::parse(""), RepetitionMarks());
    for (const char* wrong : {"swing;swing", "swing;", ";swing", "Swing", "swing:1"})
        EXPECT_FALSE(RepetitionMarks::parse(wrong)) << wrong;
}

TEST(Repetitions, TravelIsTheOneMeasuredElseBetweenTheHeights)
{
    Repetition one{.lowMm = Decimal(20), .highMm = Decimal(530)};
    EXPECT_DOUBLE_EQ(one.travel().value(), 510);
    one.travelMm = Decimal(505);
    EXPECT_DOUBLE_EQ(one.travel().value(), 505);
    EXPECT_FALSE(Repetition{.lowMm = Decimal(20)}.travel());
}

TEST(Repetitions, AreRefusedWithAPlaceWhenTheyCannotBe)
{
    auto list = made(3);
    EXPECT_TRUE(validate(list).empty());
    list[1].partWay = true;
    EXPECT_EQ(validate(list).at(0).field, QStringLiteral("part_way"));
    list = made(3);
    list[2].number = 4;
    EXPECT_EQ(validate(list).at(0).field, QStringLiteral("number"));
    list = made(3);
    list[0].travelMm = Decimal(3001);
    list[1].lowMm = Decimal(9);
    list[1].highMm = Decimal(8);
    list[2].loweringSeconds = Decimal(121);
    const Problems problems = validate(list);
    ASSERT_EQ(problems.size(), 3U);
    EXPECT_EQ(problems[0].field, QStringLiteral("travel_mm 1"));
    EXPECT_EQ(problems[1].field, QStringLiteral("high_mm 2"));
    EXPECT_EQ(problems[2].field, QStringLiteral("lowering_s 3"));
    EXPECT_EQ(validate(made(201)).size(), 1U);
}

TEST(Repetitions, ThatSomebodyLookedAtSayEverythingOfTheirSet)
{
    auto list = made(5);
    list[1].marks.set(Mark::Swing);
    list[3].marks.set(Mark::Swing);
    list[3].marks.set(Mark::ShortTop);
    list[4].partWay = true;
    list[4].marks.set(Mark::Dropped);  // of no whole repetition
    for (const std::size_t at : {0U, 1U, 2U})
        list[at].loweringSeconds = Decimal::nearest(2.0 + 0.26 * static_cast<double>(at), 2);
    const SetEntry set = withRepetitions(logged(12), list);
    EXPECT_EQ(set.reps, 4);
    EXPECT_TRUE(set.failed);
    EXPECT_EQ(set.off, 2);
    EXPECT_EQ(set.marks.toString(), "short_top:1;swing:2");
    EXPECT_EQ(set.loweringSeconds, Decimal::parse(u"2.3"));
    EXPECT_EQ(set.countedReps(), 2);
    EXPECT_TRUE(validate(set).empty());
}

TEST(Repetitions, OfADeviceChangeOnlyWhatADeviceSees)
{
    auto list = made(9, RepetitionSource::Measured);
    list[0].marks.set(Mark::ShortTop);
    list[8].marks.set(Mark::ShortTop);
    SetEntry seen = logged(10, 1);
    seen.failed = true;
    seen.marks.set(Mark::Swing, 1);
    seen.marks.set(Mark::ShortBottom, 3);
    const SetEntry after = withRepetitions(seen, list);
    EXPECT_EQ(after.reps, 10);
    EXPECT_TRUE(after.failed);
    EXPECT_EQ(after.off, 2);
    EXPECT_EQ(after.marks.toString(), "short_top:2;swing:1");
    const SetEntry unwatched = withRepetitions(logged(10), list);
    EXPECT_FALSE(unwatched.watched());
    EXPECT_EQ(unwatched.marks.of(Mark::ShortTop), 2);
    EXPECT_TRUE(validate(withRepetitions(logged(1, 0), list)).empty());
}

TEST(Repetitions, WithFewLoweringTimesLeaveTheSetsOwn)
{
    auto list = made(5);
    list[0].loweringSeconds = Decimal(2);
    list[1].loweringSeconds = Decimal(4);
    SetEntry set = logged(5);
    set.loweringSeconds = Decimal(3);
    EXPECT_EQ(withRepetitions(set, list).loweringSeconds, Decimal(3));
    list[2].loweringSeconds = Decimal(4);
    EXPECT_EQ(withRepetitions(set, list).loweringSeconds, Decimal(4));
    EXPECT_EQ(withRepetitions(set, {}), set);
}

}  // namespace
}  // namespace steelyard
