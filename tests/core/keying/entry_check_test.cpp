#include "core/keying/entry_check.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::madeEntry;
using testing_support::MadeSet;

const QDate kTypedDay(2027, 3, 8);

class EntryChecks : public testing::Test {
protected:
    EntryChecks()
        : log(LogBuilder()
                  .line(QStringLiteral("Arm curl"))
                  .exposures(6, kTypedDay.addDays(-4), 4,
                             [](int i) { return MadeSet{.load = 42.5, .reps = 9 + i % 2, .off = 0}; })
                  .build())
    {}
    [[nodiscard]] std::optional<EntryQuestion> ask(const SetEntry& set, bool known = true) const
    {
        EntryBackground about{known ? &log.lines[0] : nullptr, kTypedDay, Loading::BarTotal, std::nullopt};
        if (!known) about.planned = *Load::parse(u"42.5", MassUnit::kg);
        return questionAbout(set, about);
    }

    AthleteLog log;
};

TEST_F(EntryChecks, NothingIsAskedAboutWhatIsUsual)
{
    EXPECT_FALSE(ask(madeEntry({.load = 45, .reps = 8})));
    EXPECT_FALSE(ask(madeEntry({.load = 40, .reps = 14})));
    EXPECT_FALSE(ask(madeEntry({.load = 30, .reps = 20})));
}

TEST_F(EntryChecks, TheOtherUnitThatWouldFitIsNamed)
{
    const auto question = ask(madeEntry({.load = 95, .reps = 10}));
    ASSERT_TRUE(question);
    EXPECT_EQ(question->slip, EntrySlip::Unit);
    EXPECT_EQ(question->fitting->load.toString(), QStringLiteral("95 lb"));
    EXPECT_NEAR(*question->usualKg, 42.5, 0.01);
}

TEST_F(EntryChecks, AMissingPointIsSeen)
{
    const auto question = ask(madeEntry({.load = 425, .reps = 10}));
    ASSERT_TRUE(question);
    EXPECT_EQ(question->slip, EntrySlip::Point);
    EXPECT_EQ(question->fitting->load.kilograms(), 42.5);
}

TEST_F(EntryChecks, AJumpThatNoOneMakesIsAskedAboutThoughNothingFits)
{
    const auto question = ask(madeEntry({.load = 60, .reps = 12}));
    ASSERT_TRUE(question);
    EXPECT_EQ(question->trouble, EntryTrouble::Jump);
    EXPECT_FALSE(question->fitting);
}

TEST_F(EntryChecks, RepetitionsTypedTogetherAreSeen)
{
    const auto question = ask(madeEntry({.load = 42.5, .reps = 101}));
    ASSERT_TRUE(question);
    EXPECT_EQ(question->slip, EntrySlip::Digits);
}

TEST_F(EntryChecks, TheDayThatIsTypedIsNoWitnessOfItself)
{
    auto& exposures = log.lines[0].exposures;
    for (int i = 0; i < 3; ++i)
        exposures.push_back({kTypedDay, {{Id<SetEntry>(900 + i), i + 1, madeEntry({.load = 95, .reps = 10})}}, {}});
    EXPECT_TRUE(ask(madeEntry({.load = 95, .reps = 10})));
}

TEST_F(EntryChecks, WithoutARecordThePlanIsTheMeasure)
{
    EXPECT_TRUE(ask(madeEntry({.load = 95, .reps = 10}), false));
    EXPECT_FALSE(ask(madeEntry({.load = 50, .reps = 10}), false));
    EXPECT_FALSE(questionAbout(madeEntry({.load = 95, .reps = 10}), {nullptr, kTypedDay, Loading::BarTotal, {}}))
        << "a first set of all is what it is";
}

TEST_F(EntryChecks, WhatNoOneLiftsIsAskedAboutWithoutAnyRecord)
{
    const EntryBackground first{nullptr, kTypedDay, Loading::PerHand, {}};
    EXPECT_EQ(questionAbout(madeEntry({.load = 120, .reps = 10}), first)->trouble, EntryTrouble::TooHeavy);
    EXPECT_EQ(questionAbout(madeEntry({.load = 20, .reps = 120}), first)->trouble, EntryTrouble::TooMany);
}

TEST_F(EntryChecks, AWarmUpMayBeLight)
{
    EXPECT_TRUE(ask(madeEntry({.load = 10, .reps = 10})));
    EXPECT_FALSE(ask(madeEntry({.load = 10, .reps = 10, .kind = SetKind::WarmUp})));
}

}  // namespace
}  // namespace steelyard
