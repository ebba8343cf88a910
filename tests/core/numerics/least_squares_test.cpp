#include "core/numerics/least_squares.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace steelyard {
namespace {

constexpr std::array kX{1.0, 2.0, 3.0, 4.0, 5.0};
constexpr std::array kY{2.1, 3.9, 6.2, 7.8, 10.1};

void line(std::span<const double> p, std::span<double> residuals, std::span<double> derivatives)
{
    for (std::size_t i = 0; i < kX.size(); ++i) {
        residuals[i] = p[0] + p[1] * kX[i] - kY[i];
        derivatives[2 * i] = 1;
        derivatives[2 * i + 1] = kX[i];
    }
}

// By hand: slope 19.9 / 10, intercept 6.02 - 3 * 1.99, residual sum of squares 0.107.
TEST(LeastSquares, OfALineIsTheRegression)
{
    const auto fit = leastSquares(line, kX.size(), {100, -50}).value();
    EXPECT_NEAR(fit.parameters[0], 0.05, 1e-10);
    EXPECT_NEAR(fit.parameters[1], 1.99, 1e-10);
    EXPECT_NEAR(fit.residualSumOfSquares, 0.107, 1e-10);
    const double sd = std::sqrt(0.107 / 3);
    EXPECT_NEAR(fit.residualSd, sd, 1e-10);
    EXPECT_NEAR(fit.standardErrors[1], sd / std::sqrt(10.0), 1e-10);
    EXPECT_NEAR(fit.standardErrors[0], sd * std::sqrt(1.0 / 5 + 9.0 / 10), 1e-10);
}

TEST(LeastSquares, IsDoneWhereItStartsIfThatIsTheSolution)
{
    const auto fit = leastSquares(line, kX.size(), {0.05, 1.99}).value();
    EXPECT_EQ(fit.steps, 0);
}

TEST(LeastSquares, FitsValuesWithoutAnyNoise)
{
    const auto decay = [](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < kX.size(); ++i) {
            const double power = std::exp(-p[1] * kX[i]);
            residuals[i] = p[0] * power - 3 * std::exp(-0.7 * kX[i]);
            derivatives[2 * i] = power;
            derivatives[2 * i + 1] = -p[0] * kX[i] * power;
        }
    };
    const auto fit = leastSquares(decay, kX.size(), {1, 0.1}).value();
    EXPECT_NEAR(fit.parameters[0], 3, 1e-10);
    EXPECT_NEAR(fit.parameters[1], 0.7, 1e-10);
    EXPECT_LT(fit.residualSd, 1e-12);
}

TEST(LeastSquares, RefusesTooFewObservationsAndStartsThatAreNoPlace)
{
    EXPECT_FALSE(leastSquares(line, 2, {0, 0}));
    EXPECT_FALSE(leastSquares(line, kX.size(), {}));
    EXPECT_FALSE(leastSquares(line, kX.size(), {std::nan(""), 0}));
    EXPECT_FALSE(leastSquares(line, kX.size(), {std::numeric_limits<double>::infinity(), 0}));
}

TEST(LeastSquares, RefusesParametersThatCanNotBeToldApart)
{
    const auto sum = [](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < kX.size(); ++i) {
            residuals[i] = (p[0] + p[1]) * kX[i] - kY[i];
            derivatives[2 * i] = kX[i];
            derivatives[2 * i + 1] = kX[i];
        }
    };
    EXPECT_FALSE(leastSquares(sum, kX.size(), {1, 0}));
    const auto idle = [](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < kX.size(); ++i) {
            residuals[i] = p[0] - kY[i];
            derivatives[2 * i] = 1;
            derivatives[2 * i + 1] = 0;
        }
    };
    EXPECT_FALSE(leastSquares(idle, kX.size(), {1, 1}));
}

// exp(-p) falls for ever: there is no least sum of squares to arrive at.
TEST(LeastSquares, RefusesAValleyWithoutABottom)
{
    const auto endless = [](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < residuals.size(); ++i) {
            residuals[i] = std::exp(-p[0]);
            derivatives[i] = -std::exp(-p[0]);
        }
    };
    const auto fit = leastSquares(endless, 3, {0});
    EXPECT_FALSE(fit) << fit->parameters[0];
}

TEST(LeastSquares, TurnsBackFromWhereTheModelDoesNotExist)
{
    // The logarithm of p exists above zero only; an undamped first step from 10 would go to 10 - 10 * log 10 < 0.
    const auto logarithm = [](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < residuals.size(); ++i) {
            residuals[i] = std::log(p[0]) + (i % 2 == 0 ? 0.5 : -0.5);
            derivatives[i] = 1 / p[0];
        }
    };
    const auto fit = leastSquares(logarithm, 4, {10}).value();
    EXPECT_NEAR(fit.parameters[0], 1, 1e-9);
}

TEST(LeastSquares, DoesNotTakeWrongDerivativesForASolution)
{
    const auto wrong = [](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        line(p, residuals, derivatives);
        for (double& derivative : derivatives) derivative = -derivative;
    };
    EXPECT_FALSE(leastSquares(wrong, kX.size(), {100, -50}));
}

}  // namespace
}  // namespace steelyard
