#include "core/trials/arm_regression.h"

#include "tests/support/reference_table.h"

#include <cmath>
#include <limits>

namespace steelyard {
namespace {

using testing_support::readReference;

ArmValues ratingsOfReference()
{
    const auto table = readReference("trial_ratings.csv");
    ArmValues values;
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        values.arm.push_back(static_cast<std::size_t>(table.number(row, "arm")));
        values.value.push_back(table.number(row, "rating"));
    }
    return values;
}

// The reference knows a little of the level: ten times the spread of sessions.
RegressionPriors priorsOfReference()
{
    RegressionPriors priors;
    priors.levelSd = 12;
    return priors;
}

void expectAsInReference(const RegressionPriors& priors, const QString& label)
{
    const auto table = readReference("trial_regression.csv");
    const auto fit = regressArms(ratingsOfReference(), priors);
    ASSERT_TRUE(fit);
    const PosteriorT arm = fit->difference(1, 0);
    const auto said = [&](const char* quantity) { return table.value({label, QString::fromLatin1(quantity)}); };
    EXPECT_NEAR(arm.mean, said("arm_mean"), 1e-12);
    EXPECT_NEAR(arm.scale, said("arm_scale"), 1e-12);
    EXPECT_NEAR(arm.freedom, said("df"), 1e-12);
    EXPECT_NEAR(arm.quantile(0.1), said("lo80"), 1e-11);
    EXPECT_NEAR(arm.quantile(0.975), said("hi95"), 1e-11);
    EXPECT_NEAR(arm.chanceAbove(0), said("P_arm_gt_0"), 1e-12);
    EXPECT_NEAR(arm.chanceBetween(-0.48, 0.48), said("P_abs_lt_0.48"), 1e-12);
}

// tests/data/reference/trial_regression.csv: NumPy and SciPy.
TEST(ArmRegression, AgreesWithNumPyWithATrend)
{
    expectAsInReference(priorsOfReference(), QStringLiteral("trend"));
}

TEST(ArmRegression, AgreesWithNumPyWithAColumnForGettingUsed)
{
    RegressionPriors priors = priorsOfReference();
    priors.gettingUsed = true;
    expectAsInReference(priors, QStringLiteral("trend+acclim"));
}

TEST(ArmRegression, AgreesWithNumPyWithCarryOverToo)
{
    RegressionPriors priors = priorsOfReference();
    priors.gettingUsed = true;
    priors.carryOver = true;
    expectAsInReference(priors, QStringLiteral("trend+acclim+carry"));
}

// R's lm(y ~ arm + session): b 1.000, SE 0.187220, trend 0.216783 a session, 9 degrees of freedom. Worked by hand beside R for
// this made-up example (order ABBAABBABAAB).
TEST(ArmRegression, IsLeastSquaresWhereNothingIsKnownBeforehand)
{
    ArmValues values;
    values.arm = {0, 1, 1, 0, 0, 1, 1, 0, 1, 0, 0, 1};
    values.value = {40.0, 41.5, 41.0, 40.5, 41.0, 42.0, 42.5, 41.0, 43.0, 42.0, 42.5, 43.0};
    RegressionPriors priors;
    priors.differenceSd = priors.trendSd = priors.levelSd = 1e5;
    priors.levelMean = 41;
    priors.spreadWorth = 1e-9;
    const auto fit = regressArms(values, priors);
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->difference(1, 0).mean, 1.0, 1e-6);
    EXPECT_NEAR(fit->difference(1, 0).scale * std::sqrt(12.0 / 9.0), 0.187220, 1e-6);
    EXPECT_NEAR(fit->trend(), 11 * 0.216783, 1e-4);
}

TEST(ArmRegression, SaysTheSameWhicheverArmIsCalledTheFirst)
{
    ArmValues values{3, {0, 1, 2, 2, 0, 1, 1, 2, 0, 0, 2}, {5, 6, 8, 7, 5, 6, 7, 8, 4, 6, 7}, {}};
    ArmValues turned = values;
    for (std::size_t& arm : turned.arm) arm = (arm + 1) % 3;
    const auto fit = regressArms(values, {});
    const auto other = regressArms(turned, {});
    ASSERT_TRUE(fit && other);
    EXPECT_NEAR(fit->difference(2, 0).mean, other->difference(0, 1).mean, 1e-5);
    EXPECT_NEAR(fit->difference(2, 0).scale, other->difference(0, 1).scale, 1e-5);
    EXPECT_NEAR(fit->chanceBest()[2], other->chanceBest()[0], 0.01);
}

TEST(ArmRegression, AddingTheSameToEveryValueChangesOnlyTheLevel)
{
    ArmValues values{2, {0, 1, 1, 0, 0, 1}, {5, 6, 8, 7, 5, 7}, {}};
    const auto fit = regressArms(values, {});
    for (double& value : values.value) value += 3;
    const auto moved = regressArms(values, {});
    ASSERT_TRUE(fit && moved);
    EXPECT_NEAR(moved->difference(1, 0).mean, fit->difference(1, 0).mean, 1e-5);
    EXPECT_NEAR(moved->level(0).mean, fit->level(0).mean + 3, 1e-4);
}

TEST(ArmRegression, SaysTheSameOfTheSameValuesInAnotherUnit)
{
    ArmValues values{2, {0, 1, 1, 0, 0, 1, 1, 0}, {5, 6, 8, 7, 5, 7, 6, 6}, {}};
    const auto points = regressArms(values, {});
    constexpr double kUnit = 0.025;
    for (double& value : values.value) value *= kUnit;
    const auto other = regressArms(values, RegressionPriors::forSpread(1.2 * kUnit, 6 * kUnit));
    ASSERT_TRUE(points && other);
    EXPECT_NEAR(other->difference(1, 0).mean, points->difference(1, 0).mean * kUnit, 1e-9);
    EXPECT_NEAR(other->difference(1, 0).scale, points->difference(1, 0).scale * kUnit, 1e-9);
    EXPECT_NEAR(other->trend(), points->trend() * kUnit, 1e-9);
    EXPECT_NEAR(other->chanceBest()[1], points->chanceBest()[1], 1e-9);
    EXPECT_NEAR(other->priorDifferenceSd(), points->priorDifferenceSd() * kUnit, 1e-9);
}

TEST(ArmRegression, ASteadyRiseIsCreditedToNoArm)
{
    ArmValues values;
    for (int i = 0; i < 12; ++i) {
        values.arm.push_back(i % 2 == 0 ? 0 : 1);  // the second arm always comes later
        values.value.push_back(4 + 0.3 * i);
    }
    RegressionPriors flat;
    flat.trendSd = 100;
    const auto fit = regressArms(values, flat);
    RegressionPriors none = flat;
    none.trendSd = 0;
    const auto blind = regressArms(values, none);
    ASSERT_TRUE(fit && blind);
    EXPECT_NEAR(fit->difference(1, 0).mean, 0, 0.02);
    EXPECT_NEAR(fit->trend(), 11 * 0.3, 0.1);
    EXPECT_GT(blind->difference(1, 0).mean, 0.2);
}

TEST(ArmRegression, AnArmThatWasNeverDoneKeepsItsPrior)
{
    const auto fit = regressArms({2, {0, 0, 0}, {5, 6, 7}, {}}, {});
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->difference(1, 0).mean, 0, 1e-6);
    EXPECT_NEAR(fit->chanceBest()[1], 0.5, 1e-6);
    EXPECT_GT(fit->difference(1, 0).scale, 0.8);
}

TEST(ArmRegression, EqualRatingsGiveFiniteNumbersAndNoDifference)
{
    const auto fit = regressArms({2, {0, 1, 1, 0}, {6, 6, 6, 6}, {}}, {});
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->difference(1, 0).mean, 0, 1e-6);
    EXPECT_GT(fit->spread(), 0);
    EXPECT_TRUE(std::isfinite(fit->difference(1, 0).quantile(0.05)));
}

TEST(ArmRegression, ChancesOfThreeArmsAgreeWithThoseOfTwoWhereOneIsHopeless)
{
    ArmValues values;
    values.arms = 3;
    for (int i = 0; i < 24; ++i) {
        const auto arm = static_cast<std::size_t>(i % 3);
        values.arm.push_back(arm);
        values.value.push_back((arm == 0 ? 0.5 : arm == 1 ? 6 : 6.6) + 0.5 * (i % 4));
    }
    const auto fit = regressArms(values, {});
    ASSERT_TRUE(fit);
    const auto chances = fit->chanceBest();
    EXPECT_NEAR(chances[0] + chances[1] + chances[2], 1, 1e-9);
    EXPECT_LT(chances[0], 1e-3);
    EXPECT_NEAR(chances[2], fit->difference(2, 1).chanceAbove(0), 0.005);
    const std::vector<std::size_t> two{1, 2};
    EXPECT_NEAR(fit->chanceBest(two)[1], fit->difference(2, 1).chanceAbove(0), 1e-12);
}

TEST(ArmRegression, RefusesWhatIsNoNumber)
{
    EXPECT_FALSE(regressArms({2, {}, {}, {}}, {}));
    EXPECT_FALSE(regressArms({2, {0, 2}, {1, 2}, {}}, {}));
    EXPECT_FALSE(regressArms({2, {0, 1}, {1, std::numeric_limits<double>::quiet_NaN()}, {}}, {}));
    EXPECT_FALSE(regressArms({2, {0, 1}, {1}, {}}, {}));
}

}  // namespace
}  // namespace steelyard
