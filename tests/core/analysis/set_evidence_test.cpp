#include "core/analysis/set_evidence.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::madeEntry;
using testing_support::MadeSet;

const SetContext kContext{.loading = Loading::BarTotal, .bodyKg = 0, .lnReference = std::log(40.0), .bandHigh = 12};

HeardSet heard(const MadeSet& set)
{
    return hearSet(madeEntry(set), 1, kContext);
}

void expectSays(const HeardSet& set, double reps, double sd, ObservationKind kind)
{
    ASSERT_EQ(set.count, 1U);
    EXPECT_NEAR(set.repsToFailure, reps, 1e-12);
    EXPECT_NEAR(set.said[0].z, std::log(1 + reps / 30), 1e-12);
    EXPECT_NEAR(set.said[0].repError, sd / (30 + reps), 1e-12);
    EXPECT_EQ(set.said[0].kind, kind);
}

TEST(SetEvidence, TellsByReserveWhatASetCanSay)
{
    expectSays(heard({.load = 40, .reps = 8, .failed = true}), 8.5, 0.45, ObservationKind::Exact);
    expectSays(heard({.load = 40, .reps = 8, .rir = 0}), 8.5, 0.45, ObservationKind::Exact);
    expectSays(heard({.load = 40, .reps = 8, .rir = 2}), 8 + 0.45 + 2.2, 0.95, ObservationKind::Exact);
    expectSays(heard({.load = 40, .reps = 8, .rir = 6}), 11, 1.0, ObservationKind::AtLeast);
    expectSays(heard({.load = 40, .reps = 8}), 8 + 0.45 + 1.65, 1.6, ObservationKind::Exact);
    expectSays(heard({.load = 40, .reps = 12}), 12.5, 0.8, ObservationKind::AtLeast);
    expectSays(heard({.load = 40, .reps = 8, .rir = 4, .kind = SetKind::Deload}), 9.5, 1.0, ObservationKind::AtLeast);
}

TEST(SetEvidence, AFailedRepetitionOutweighsAReportedReserve)
{
    expectSays(heard({.load = 40, .reps = 8, .rir = 3, .failed = true}), 8.5, 0.45, ObservationKind::Exact);
}

TEST(SetEvidence, HelpTurnsASetIntoAnUpperBound)
{
    const HeardSet helped = heard({.load = 40, .reps = 10, .off = 6, .rir = 1});
    ASSERT_EQ(helped.count, 1U);
    EXPECT_EQ(helped.said[0].kind, ObservationKind::AtMost);
    EXPECT_NEAR(helped.said[0].z, std::log(1 + 11.55 / 30), 1e-12);
}

TEST(SetEvidence, AFewOffRepetitionsLeaveTheCountedOnesAsALowerBound)
{
    const HeardSet mostly = heard({.load = 40, .reps = 10, .off = 2, .rir = 1});
    ASSERT_EQ(mostly.count, 2U);
    EXPECT_EQ(mostly.said[0].kind, ObservationKind::AtMost);
    EXPECT_EQ(mostly.said[1].kind, ObservationKind::AtLeast);
    EXPECT_NEAR(mostly.said[1].z, std::log(1 + 8.5 / 30), 1e-12);
    EXPECT_LT(mostly.said[1].z, mostly.said[0].z);
}

TEST(SetEvidence, MarksSpeakWhereNobodyCountedOffRepetitions)
{
    SetEntry set = madeEntry({.load = 40, .reps = 10, .rir = 1});
    set.marks.set(Mark::Swing, 5);
    EXPECT_EQ(offReps(set), 5);
    EXPECT_TRUE(mostlyHelped(set));
    EXPECT_EQ(hearSet(set, 1, kContext).said[0].kind, ObservationKind::AtMost);
}

TEST(SetEvidence, WarmUpsAndEmptyBarsSayNothing)
{
    EXPECT_EQ(heard({.load = 40, .reps = 8, .rir = 1, .kind = SetKind::WarmUp}).count, 0U);
    EXPECT_EQ(heard({.load = 0, .reps = 8, .rir = 1}).count, 0U);
}

TEST(SetEvidence, MeasuresLoadsAgainstTheReferenceAndCountsBodyMass)
{
    EXPECT_NEAR(heard({.load = 44, .reps = 8, .rir = 1}).said[0].lnLoad, std::log(1.1), 1e-12);
    SetContext added = kContext;
    added.loading = Loading::Added;
    added.bodyKg = 80;
    EXPECT_NEAR(lnMoved(madeEntry({.load = 20, .reps = 5}), added).value(), std::log(100.0), 1e-12);
    SetContext assisted = added;
    assisted.loading = Loading::Assisted;
    EXPECT_NEAR(lnMoved(madeEntry({.load = 20, .reps = 5}), assisted).value(), std::log(60.0), 1e-12);
    EXPECT_FALSE(lnMoved(madeEntry({.load = 90, .reps = 5}), assisted));
}

TEST(SetEvidence, ZAndRepetitionsAreEachOthersInverse)
{
    for (const double reps : {0.0, 0.5, 8.0, 30.0, 400.0}) EXPECT_NEAR(repsOfZ(zOfReps(reps)), reps, 1e-9);
}

}  // namespace
}  // namespace steelyard
