#include "core/analysis/set_forecast.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const SetForecast kOneBell({{1.0, 0.35, 0.05}}, 3.5);

TEST(SetForecast, QuantilesAndSharesAreEachOthersInverse)
{
    for (const double share : {0.01, 0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975, 0.99})
        EXPECT_NEAR(kOneBell.cdf(kOneBell.quantile(share)), share, 1e-5);
}

TEST(SetForecast, IsRecalibratedInItsTailsAndLeftAloneInTheMiddle)
{
    // A stated tenth came true in 8.77 of a hundred.
    EXPECT_NEAR(kOneBell.rawCdf(kOneBell.quantile(0.0877)), 0.1, 1e-5);
    EXPECT_NEAR(kOneBell.rawCdf(kOneBell.quantile(1 - 0.0877)), 0.9, 1e-5);
    EXPECT_NEAR(kOneBell.quantile(0.5), 0.35, 1e-5);
}

TEST(SetForecast, SaysHowLikelyRepetitionsAre)
{
    EXPECT_NEAR(kOneBell.reps(0.5), repsOfZ(0.35), 1e-3);
    EXPECT_NEAR(kOneBell.probabilityOver(repsOfZ(0.35)), 0.5, 1e-6);
    double before = 1;
    for (int reps = 0; reps <= 40; ++reps) {
        const double chance = kOneBell.probabilityOver(reps);
        EXPECT_LE(chance, before);
        before = chance;
    }
    EXPECT_LT(before, 0.01);
}

}  // namespace
}  // namespace steelyard
