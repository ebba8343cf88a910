#include "core/domain/logbook.h"

#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::workSet;

TEST(Set, CountsOnlyRepetitionsToTheStandard)
{
    EXPECT_EQ(workSet("40", 10, 3).countedReps(), 7);
    EXPECT_EQ(workSet("40", 10).countedReps(), 10);
    EXPECT_FALSE(workSet("40", 10).watched());
    EXPECT_TRUE(workSet("40", 10, 0).watched());
}

TEST(Set, RefusesMoreOffStandardThanRepetitions)
{
    EXPECT_TRUE(validate(workSet("40", 10, 10)).empty());
    const Problems problems = validate(workSet("40", 10, 11));
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems.front().field, QStringLiteral("off"));
}

TEST(Set, AMarkIsNeverGivenMoreOftenThanThereAreRepetitions)
{
    SetEntry set = workSet("40", 5, 5);
    set.marks.set(Mark::Swing, 5);
    set.marks.set(Mark::ShortBottom, 5);  // together more than off: one repetition may carry several
    EXPECT_TRUE(validate(set).empty());
    set.marks.set(Mark::Swing, 6);
    ASSERT_EQ(validate(set).size(), 1U);
    EXPECT_EQ(validate(set).front().field, QStringLiteral("marks"));
}

TEST(Set, OneMistakeIsOneProblem)
{
    const Problems problems = validate(workSet("40", -1));
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems.front().field, QStringLiteral("reps"));
}

TEST(Marks, ReadBackFromTheirTextInAnyOrder)
{
    const auto marks = MarkCounts::parse("swing:1; short_bottom:2");
    ASSERT_TRUE(marks);
    EXPECT_EQ(marks->toString(), "short_bottom:2;swing:1");
    EXPECT_EQ(MarkCounts::parse(marks->toString()), marks);
    for (const char* bad : {"swing", "swing:", "swing:0", "swing:-1", "swing:1;swing:2", "sway:1", ";", "swing:201"})
        EXPECT_FALSE(MarkCounts::parse(bad)) << bad;
}

// Zourdos et al. 2016, JSCR 30(1):267-275; Helms et al. 2016, Strength Cond J 38(4):42-49: from 7 to 10, RIR = 10 - RPE;
// below 7 the scale is a category.
TEST(Effort, ReserveFollowsThePublishedScale)
{
    const auto rpe = [](const char16_t* text) {
        return Effort{Effort::Scale::Rpe, Decimal::parse(QStringView(text)).value()};
    };
    EXPECT_DOUBLE_EQ(rpe(u"10").repsInReserve().value(), 0);
    EXPECT_DOUBLE_EQ(rpe(u"9.5").repsInReserve().value(), 0.5);
    EXPECT_DOUBLE_EQ(rpe(u"8.5").repsInReserve().value(), 1.5);
    EXPECT_DOUBLE_EQ(rpe(u"7").repsInReserve().value(), 3);
    EXPECT_FALSE(rpe(u"6.5").repsInReserve());
    EXPECT_DOUBLE_EQ((Effort{Effort::Scale::Rir, Decimal(5)}).repsInReserve().value(), 5);
}

TEST(Rating, StaysFromZeroToTen)
{
    ExerciseRating rating;
    EXPECT_TRUE(rating.none());
    rating.discomfort[static_cast<std::size_t>(Joint::Elbow)] = 11;
    rating.tension = -1;
    const Problems problems = validate(rating);
    ASSERT_EQ(problems.size(), 2U);
    EXPECT_EQ(problems[0].field, QStringLiteral("tension"));
    EXPECT_EQ(problems[1].field, QStringLiteral("discomfort_elbow"));
}

}  // namespace
}  // namespace steelyard
