#include "core/keying/line_change.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kChangeDay(2027, 3, 8);

TEST(LineChange, SaysWhatIsCutOffAndWhatIsGoneOnWith)
{
    SheetSample sample;
    sample.done(sample.curl, QDate(2027, 1, 4), {{u"40", 10}, {u"40", 9}});
    sample.done(sample.curl, QDate(2027, 2, 1), {{u"20", 8, 0, 2, SetKind::WarmUp}, {u"40", 10}});
    LiftLine other = sample.log.lines[sample.curl].line;
    other.grip = Id<Grip>(2);
    const LineChange change = changeOfLine(sample.log, sample.log.lines[sample.curl].line, other);
    EXPECT_EQ(change.left, (LineHistory{3, 2, QDate(2027, 1, 4), QDate(2027, 2, 1)}));
    EXPECT_TRUE(change.opensNew());
    EXPECT_TRUE(change.gripChanges);
    EXPECT_FALSE(change.variantChanges);
    EXPECT_FALSE(changeOfLine(sample.log, other, sample.log.lines[sample.curl].line).opensNew());
}

TEST(LineChange, OtherWaysAreThoseOfTheSameExerciseWithTheLiftersOwnFirst)
{
    SheetSample sample;
    const LiftLine curl = sample.log.lines[sample.curl].line;
    // Another variant of the curl, done twice; and an agreed standard of the first one.
    LineRecord cable = sample.log.lines[sample.curl];
    cable.id = Id<LiftLine>(50);
    cable.line.variant = Id<Variant>(50);
    cable.line.standard = Id<RepStandard>(50);
    sample.log.lines.push_back(cable);
    sample.done(sample.log.lines.size() - 1, kChangeDay.addDays(-3), {{u"30", 10}});
    sample.library.standards.push_back(
        {Id<RepStandard>(60), {}, {curl.variant, sample.log.athlete.id, QStringLiteral("paused")}});
    sample.library.standards.push_back(
        {Id<RepStandard>(61), {}, {curl.variant, Id<Athlete>(77), QStringLiteral("somebody else's")}});
    const auto ways = otherWays(sample.log, sample.library, curl);
    ASSERT_FALSE(ways.empty());
    EXPECT_EQ(ways[0], cable.line);
    EXPECT_FALSE(std::ranges::count(ways, curl)) << "as it is now is no other way";
    EXPECT_TRUE(std::ranges::count(ways, LiftLine{curl.athlete, curl.variant, Id<Grip>(2), curl.standard}));
    EXPECT_TRUE(std::ranges::count(ways, LiftLine{curl.athlete, curl.variant, curl.grip, Id<RepStandard>(60)}));
    EXPECT_FALSE(std::ranges::count(ways, LiftLine{curl.athlete, curl.variant, curl.grip, Id<RepStandard>(61)}));
    EXPECT_FALSE(std::ranges::any_of(ways, [](const LiftLine& way) { return way.variant == Id<Variant>(2); }))
        << "a squat is no curl";
}

TEST(LineChange, WhatCanBeAddedIsEveryVariantThatIsNotHiddenAndNotThereYet)
{
    SheetSample sample;
    sample.done(sample.pulldown, kChangeDay.addDays(-3), {{u"50", 10}});
    sample.library.variants[sample.squat].value.hidden = true;
    const LiftLine curl = sample.log.lines[sample.curl].line;
    const auto lifts = liftsToAdd(sample.log, sample.library, {curl});
    ASSERT_EQ(lifts.size(), 2U);
    EXPECT_EQ(lifts[0], sample.log.lines[sample.pulldown].line) << "what the lifter did last comes first";
    EXPECT_EQ(lifts[1].variant, sample.log.lines[sample.dumbbell].line.variant);
}

}  // namespace
}  // namespace steelyard
