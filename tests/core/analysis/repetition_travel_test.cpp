#include "core/analysis/repetition_travel.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Repetition reached(double low, double high, int number = 1)
{
    Repetition one{.number = number, .source = RepetitionSource::Measured};
    one.lowMm = Decimal::nearest(low, 1);
    one.highMm = Decimal::nearest(high, 1);
    return one;
}

Repetition moved(double travel)
{
    return {.source = RepetitionSource::Measured, .travelMm = Decimal::nearest(travel, 1)};
}

TEST(FullTravel, IsTheMedianOfTheLongestThreeOfEverySet)
{
    const std::vector<std::vector<Repetition>> sets{{moved(500), moved(510), moved(490), moved(420)},
                                                    {moved(505), moved(300), moved(495), moved(498)}};
    const auto full = fullTravel(sets);  // 490 495 498 500 505 510
    ASSERT_TRUE(full);
    EXPECT_DOUBLE_EQ(full->mm, 499);
    EXPECT_EQ(full->repetitions, 6);
    EXPECT_FALSE(full->lowMm);
}

TEST(FullTravel, IsNotTurnedByADeviceThatLostTheBarNorByASwing)
{
    std::vector<std::vector<Repetition>> sets{{moved(500), moved(500), moved(500), moved(2900)},
                                              {moved(500), moved(500), moved(500), moved(500)}};
    sets[1][0] = moved(700);
    sets[1][0].marks.set(Mark::Swing);
    EXPECT_DOUBLE_EQ(fullTravel(sets)->mm, 500);
}

TEST(FullTravel, IsUnknownFromTwoRepetitionsOrNone)
{
    EXPECT_FALSE(fullTravel({}));
    EXPECT_FALSE(fullTravel(std::vector<std::vector<Repetition>>{{moved(500), moved(500)}}));
    EXPECT_FALSE(fullTravel(std::vector<std::vector<Repetition>>{{Repetition{}, Repetition{}, Repetition{}}}));
}

TEST(FullTravel, LooksAtTheNewestSetsOnly)
{
    std::vector<std::vector<Repetition>> sets(30, {moved(400), moved(400), moved(400)});
    sets.insert(sets.end(), kTravelSets, {moved(500), moved(500), moved(500)});
    EXPECT_DOUBLE_EQ(fullTravel(sets)->mm, 500);
}

TEST(ShortRepetitions, AreMarkedAtTheEndThatTheyMissed)
{
    const std::vector<std::vector<Repetition>> sets(3, {reached(10, 510), reached(10, 510), reached(10, 510)});
    const auto full = fullTravel(sets);
    ASSERT_TRUE(full);
    const auto judged =
        markShort({reached(12, 505), reached(12, 430), reached(90, 508), reached(80, 440), reached(10, 459)}, *full, 90,
                  Mark::ShortBottom);
    EXPECT_EQ(judged[0].marks.toString(), "");
    EXPECT_EQ(judged[1].marks.toString(), "short_top");
    EXPECT_EQ(judged[2].marks.toString(), "short_bottom");
    EXPECT_EQ(judged[3].marks.toString(), "short_bottom;short_top");
    EXPECT_EQ(judged[4].marks.toString(), "short_top");  // 449 mm of 500, one under the 90 %
}

TEST(ShortRepetitions, WithoutHeightsAreMarkedWhereTheCallerSays)
{
    const FullTravel full{500, {}, {}, 9};
    const auto judged = markShort({moved(450), moved(449)}, full, 90, Mark::ShortTop);
    EXPECT_TRUE(judged[0].marks.none());
    EXPECT_EQ(judged[1].marks.toString(), "short_top");
}

TEST(ShortRepetitions, KeepOtherMarksAndAreJudgedAnewEachTime)
{
    const FullTravel full{500, {}, {}, 9};
    std::vector<Repetition> list{moved(400), moved(500), Repetition{}, moved(100)};
    list[1].marks.set(Mark::ShortBottom);
    list[1].marks.set(Mark::Lean);
    list[2].marks.set(Mark::ShortBottom);  // seen by somebody; no travel says otherwise
    list[3].partWay = true;
    const auto judged = markShort(list, full, 90, Mark::ShortBottom);
    EXPECT_EQ(judged[0].marks.toString(), "short_bottom");
    EXPECT_EQ(judged[1].marks.toString(), "lean");
    EXPECT_EQ(judged[2].marks.toString(), "short_bottom");
    EXPECT_TRUE(judged[3].marks.none());
    EXPECT_EQ(markShort(judged, full, 90, Mark::ShortBottom), judged);
    EXPECT_TRUE(markShort(judged, full, 60, Mark::ShortBottom)[0].marks.none());
}

}  // namespace
}  // namespace steelyard
