#include "core/numerics/rep_max.h"

#include <gtest/gtest.h>

#include <limits>

namespace steelyard {
namespace {

using enum RepMaxEquation;

struct WorkedRow {
    double reps;
    std::array<double, 7> maxima;  // in the order of RepMaxEquation, from 100 kg
};

// The seven published formulas worked by hand to two decimals; a tolerance of 0.005 is the rounding of the table.
constexpr std::array kWorked{
    WorkedRow{2, {106.67, 102.86, 104.21, 107.18, 111.44, 105.00, 105.15}},
    WorkedRow{3, {110.00, 105.89, 107.20, 111.61, 113.99, 107.50, 108.98}},
    WorkedRow{5, {116.67, 112.51, 113.71, 117.46, 119.01, 112.50, 116.58}},
    WorkedRow{8, {126.67, 124.16, 125.11, 123.11, 126.29, 120.00, 127.67}},
    WorkedRow{10, {133.33, 133.37, 134.07, 125.89, 130.93, 125.00, 134.75}},
    WorkedRow{12, {140.00, 144.05, 144.41, 128.21, 135.40, 130.00, 141.50}},
};

TEST(RepMax, ReproducesTheWorkedValuesOfAllSevenEquations)
{
    for (const WorkedRow& row : kWorked)
        for (std::size_t i = 0; i < row.maxima.size(); ++i) {
            const auto result = oneRepMax(kRepMaxEquations[i].equation, 100, row.reps);
            ASSERT_TRUE(result) << kRepMaxEquations[i].name << " at " << row.reps;
            EXPECT_NEAR(*result, row.maxima[i], 0.00501) << kRepMaxEquations[i].name << " at " << row.reps;
        }
}

TEST(RepMax, ReproducesTheFinerCheckValues)
{
    EXPECT_NEAR(*oneRepMax(Epley, 100, 5), 116.6667, 1e-4);
    EXPECT_NEAR(*oneRepMax(Brzycki, 100, 10), 133.3689, 1e-4);
    // 100 kg x 5 with 2 in reserve (effort 8): seven to failure.
    EXPECT_NEAR(*oneRepMax(Epley, 100, 5 + 2), 123.3333, 1e-4);
}

TEST(RepMax, OneRepetitionIsTheLoadItselfForEveryEquation)
{
    for (const RepMaxInfo& row : kRepMaxEquations) EXPECT_EQ(oneRepMax(row.equation, 87.5, 1), 87.5) << row.name;
}

TEST(RepMax, TheTableOfEquationsIsInTheOrderOfTheEnumeration)
{
    for (const RepMaxInfo& row : kRepMaxEquations) EXPECT_EQ(info(row.equation).name, row.name);
}

TEST(RepMax, LinearDenominatorsRefuseMoreThanTwelve)
{
    for (const auto equation : {Brzycki, Lander}) {
        EXPECT_TRUE(oneRepMax(equation, 100, 12));
        EXPECT_FALSE(oneRepMax(equation, 100, 12.5));
        EXPECT_FALSE(oneRepMax(equation, 100, 37));
    }
}

TEST(RepMax, TheOthersReachTwentyAndRefuseMore)
{
    for (const auto equation : {Epley, Lombardi, Mayhew, OConnor, Wathan}) {
        EXPECT_TRUE(oneRepMax(equation, 100, 20));
        EXPECT_FALSE(oneRepMax(equation, 100, 20.5));
    }
    EXPECT_NEAR(*oneRepMax(Wathan, 100, 15), 150.91, 0.005);
}

TEST(RepMax, RefusesWhatIsNoSet)
{
    EXPECT_FALSE(oneRepMax(Epley, 100, 0));
    EXPECT_FALSE(oneRepMax(Epley, 100, 0.5));
    EXPECT_FALSE(oneRepMax(Epley, 0, 5));
    EXPECT_FALSE(oneRepMax(Epley, -20, 5));
    EXPECT_FALSE(oneRepMax(Epley, std::numeric_limits<double>::quiet_NaN(), 5));
    EXPECT_FALSE(oneRepMax(Epley, 100, std::numeric_limits<double>::quiet_NaN()));
    EXPECT_FALSE(oneRepMax(Epley, std::numeric_limits<double>::infinity(), 5));
}

TEST(RepMax, GivesRepetitionsAtAFractionOfTheMaximum)
{
    EXPECT_NEAR(*repsAtFraction(Epley, 0.80), 7.50, 1e-9);
    EXPECT_NEAR(*repsAtFraction(Brzycki, 0.80), 8.19, 0.005);
    EXPECT_NEAR(*repsAtFraction(Epley, 0.70), 12.86, 0.005);
    EXPECT_NEAR(*repsAtFraction(Brzycki, 0.70), 11.79, 0.005);
}

TEST(RepMax, InverseLeadsBackToTheSameRepetitions)
{
    for (const RepMaxInfo& row : kRepMaxEquations)
        for (double reps = 2; reps <= row.mostReps; reps += 0.5) {
            const double fraction = 100 / *oneRepMax(row.equation, 100, reps);
            const auto back = repsAtFraction(row.equation, fraction * (1 + 1e-12));
            ASSERT_TRUE(back) << row.name << " at " << reps;
            EXPECT_NEAR(*back, reps, 1e-8) << row.name;
            EXPECT_NEAR(*loadForReps(row.equation, 100, reps), 100 * fraction, 1e-9) << row.name;
        }
}

TEST(RepMax, InverseRefusesFractionsBeyondTheRange)
{
    EXPECT_FALSE(repsAtFraction(Brzycki, 0.5));
    EXPECT_FALSE(repsAtFraction(Mayhew, 0.5));  // under the floor of its exponential form
    EXPECT_FALSE(repsAtFraction(Epley, 0));
    EXPECT_FALSE(repsAtFraction(Epley, 1.01));
    for (const RepMaxInfo& row : kRepMaxEquations) EXPECT_NEAR(*repsAtFraction(row.equation, 1), 1, 0.5) << row.name;
}

TEST(RepMax, OnlySetsNearFailureEnterAnEstimate)
{
    EXPECT_TRUE(usableForEstimate(Epley, 8, 4.0));
    EXPECT_FALSE(usableForEstimate(Epley, 8, 4.5));
    EXPECT_FALSE(usableForEstimate(Epley, 8, std::nullopt));
    EXPECT_FALSE(usableForEstimate(Epley, 0, 0.0));
    EXPECT_TRUE(usableForEstimate(Brzycki, 10, 2.0));
    EXPECT_FALSE(usableForEstimate(Brzycki, 10, 3.0));
}

TEST(RepMax, HandbookTableHasTheColumnsOfItsEdition)
{
    // NSCA Essentials, load chapter: 1 to 10 repetitions as re-read.
    constexpr std::array kPercents{100, 95, 93, 90, 87, 85, 83, 80, 77, 75};
    for (int reps = 1; reps <= 10; ++reps)
        EXPECT_EQ(handbookPercent(reps), kPercents[static_cast<std::size_t>(reps - 1)]) << reps;
    EXPECT_EQ(handbookPercent(12), 67);
    EXPECT_FALSE(handbookPercent(13));
    for (const PercentRow& row : kHandbookPercents) EXPECT_EQ(row.fromMemory, row.reps > 10) << row.reps;
}

}  // namespace
}  // namespace steelyard
