#include "core/trials/randomisation_test.h"

#include "tests/support/reference_table.h"

#include <limits>

namespace steelyard {
namespace {

// Pairs as blocks of two: the first arm has 0, the second the difference.
RandomisationQuestion ofPairs(const std::vector<double>& differences)
{
    RandomisationQuestion question;
    question.trend = false;
    int block = 0;
    for (const double difference : differences) {
        question.sessions.push_back({++block, 0, 0.0});
        question.sessions.push_back({block, 1, difference});
    }
    return question;
}

RandomisationQuestion ofReference()
{
    const auto table = testing_support::readReference("trial_ratings.csv");
    RandomisationQuestion question;
    for (std::size_t row = 0; row < table.rows.size(); ++row)
        question.sessions.push_back({static_cast<int>(row / 2) + 1, static_cast<std::size_t>(table.number(row, "arm")),
                                     table.number(row, "rating")});
    return question;
}

// Student 1908, Biometrika 6:1-25 (the sleep of ten patients; R's datasets::sleep): 4 of the 1024 sign patterns.
TEST(RandomisationTest, OfStudentsSleepCountsFourOfAThousandAndTwentyFour)
{
    const auto answer = randomisationTest(ofPairs({1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4}));
    ASSERT_TRUE(answer);
    EXPECT_TRUE(answer->exact);
    EXPECT_EQ(answer->orders, 1024);
    EXPECT_EQ(answer->asExtreme, 4);
    EXPECT_NEAR(answer->statistic, 1.58, 1e-12);
    EXPECT_NEAR(answer->p, 0.00390625, 1e-12);
}

// Fisher 1935, The Design of Experiments, chapter 3 (Darwin's maize, eighths of an inch): 1726 of 32768, two-sided.
TEST(RandomisationTest, OfDarwinsMaizeCountsFishers1726AndDrawsComeNear)
{
    RandomisationQuestion question = ofPairs({49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48});
    const auto drawn = randomisationTest(question);
    ASSERT_TRUE(drawn);
    EXPECT_FALSE(drawn->exact);
    EXPECT_EQ(drawn->orders, kOrdersDrawn);
    EXPECT_NEAR(drawn->p, 0.052673, 0.005);
    question.mostCounted = 32768;
    const auto counted = randomisationTest(question);
    ASSERT_TRUE(counted);
    EXPECT_TRUE(counted->exact);
    EXPECT_EQ(counted->asExtreme, 1726);
    EXPECT_EQ(counted->orders, 32768);
}

// tests/data/reference/trial_randomisation.csv: NumPy, SciPy's permutation_test, R's coin.
TEST(RandomisationTest, AgreesWithNumPyWithAndWithoutATrend)
{
    const auto table = testing_support::readReference("trial_randomisation.csv");
    const auto said = [&](const char* test, const char* quantity) {
        return table.value({QString::fromLatin1(test), QString::fromLatin1(quantity)});
    };
    RandomisationQuestion question = ofReference();
    const auto adjusted = randomisationTest(question);
    question.trend = false;
    const auto plain = randomisationTest(question);
    ASSERT_TRUE(adjusted && plain);
    EXPECT_NEAR(plain->statistic, said("mean_difference", "observed"), 1e-12);
    EXPECT_EQ(plain->asExtreme, said("mean_difference", "count_abs_ge"));
    EXPECT_NEAR(plain->p, said("scipy_permutation_test_paired", "p_two_sided"), 1e-12);
    EXPECT_NEAR(adjusted->statistic, said("ols_arm_adjusted_for_session", "observed"), 1e-12);
    EXPECT_EQ(adjusted->asExtreme, said("ols_arm_adjusted_for_session", "count_abs_ge"));
    EXPECT_NEAR(adjusted->p, said("ols_arm_adjusted_for_session", "p_two_sided"), 1e-12);
}

// Six pairs, all the same way: 2 of 64, the least that six can give. R's lm gives a difference of 1.000 with the trend.
TEST(RandomisationTest, OfSixPairsAllOneWayGivesTheLeastPossible)
{
    RandomisationQuestion question;
    const std::vector<std::size_t> arms{0, 1, 1, 0, 0, 1, 1, 0, 1, 0, 0, 1};
    const std::vector<double> values{40.0, 41.5, 41.0, 40.5, 41.0, 42.0, 42.5, 41.0, 43.0, 42.0, 42.5, 43.0};
    for (std::size_t i = 0; i < arms.size(); ++i)
        question.sessions.push_back({static_cast<int>(i / 2) + 1, arms[i], values[i]});
    question.trend = false;
    EXPECT_NEAR(randomisationTest(question)->p, 0.03125, 1e-12);
    question.trend = true;
    EXPECT_NEAR(randomisationTest(question)->statistic, 1.0, 1e-9);
}

TEST(RandomisationTest, OfThreeArmsCountsEveryOrderOfEveryBlock)
{
    RandomisationQuestion question;
    question.arms = 3;
    for (int block = 1; block <= 3; ++block)
        for (std::size_t arm = 0; arm < 3; ++arm)
            question.sessions.push_back({block, (arm + static_cast<std::size_t>(block)) % 3,
                                         static_cast<double>((arm + static_cast<std::size_t>(block)) % 3)});
    question.trend = false;
    const auto answer = randomisationTest(question);
    ASSERT_TRUE(answer);
    EXPECT_TRUE(answer->exact);
    EXPECT_EQ(answer->orders, 216);
    EXPECT_EQ(answer->asExtreme, 6);  // the names exchanged in all blocks alike
    EXPECT_EQ(answer->statistic, 6);
}

TEST(RandomisationTest, KeepsMissedSessionsInTheDrawAndOutOfTheStatistic)
{
    RandomisationQuestion question = ofPairs({1, 1, 1, 1, 1});
    question.sessions[0].value.reset();
    const auto answer = randomisationTest(question);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->orders, 32);
    EXPECT_GT(answer->p, 2.0 / 32 - 1e-12);
    EXPECT_LT(answer->p, 1);
}

TEST(RandomisationTest, RanksOnlyTakeTheOrderOfValues)
{
    RandomisationQuestion question = ofReference();
    question.ranks = true;
    const auto ranks = randomisationTest(question);
    for (DrawnSession& session : question.sessions) session.value = std::exp(*session.value);
    const auto stretched = randomisationTest(question);
    ASSERT_TRUE(ranks && stretched);
    EXPECT_EQ(ranks->asExtreme, stretched->asExtreme);
    question.ranks = false;
    EXPECT_NE(randomisationTest(question)->statistic, stretched->statistic);
}

TEST(RandomisationTest, OfEqualValuesFindsNothing)
{
    RandomisationQuestion question = ofPairs({0, 0, 0, 0});
    question.trend = true;
    const auto answer = randomisationTest(question);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->p, 1);
    EXPECT_EQ(answer->statistic, 0);
}

TEST(RandomisationTest, RefusesOneArmAndBlocksWithAnArmTwice)
{
    RandomisationQuestion question;
    question.sessions = {{1, 0, 1.0}, {2, 0, 2.0}};
    EXPECT_FALSE(randomisationTest(question));
    question.sessions = {{1, 0, 1.0}, {1, 0, 2.0}, {1, 1, 2.0}};
    EXPECT_FALSE(randomisationTest(question));
    question.sessions = {{1, 0, 1.0}, {1, 1, std::numeric_limits<double>::infinity()}};
    EXPECT_FALSE(randomisationTest(question));
}

}  // namespace
}  // namespace steelyard
