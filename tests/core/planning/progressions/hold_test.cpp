#include "tests/support/progression_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::doneAt;
using testing_support::likelyAtForty;
using testing_support::ProgressionProbe;

TEST(HoldTheLoad, TheLoadStaysWhateverWasDone)
{
    ProgressionProbe probe{QStringLiteral("hold")};
    probe.input.exposures = {doneAt(40, {12, 12})};
    const auto step = probe.next();
    ASSERT_TRUE(step);
    EXPECT_EQ(step->kind, StepKind::Hold);
    EXPECT_EQ(step->load.kilograms(), 40);
    EXPECT_EQ(step->targetReps, (std::vector{12, 12, 12}));
}

TEST(HoldTheLoad, TargetsAreWhatIsLikelyWhereverInTheBand)
{
    ProgressionProbe probe{QStringLiteral("hold")};
    probe.input.exposures = {doneAt(40, {12, 12, 12})};
    probe.input.likely = likelyAtForty(14.5);
    EXPECT_EQ(probe.next()->targetReps, (std::vector{14, 13, 13}));
    EXPECT_EQ(probe.next()->load.kilograms(), 40);
}

}  // namespace
}  // namespace steelyard
