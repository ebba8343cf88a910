// Nonlinear least squares against certified values of the National Institute of Standards and Technology (Statistical
// Reference Datasets, nonlinear regression: Misra1a, Rat42, Thurber; data and values as reprinted in test suites of other
// programs), from both of their starts each, and the lifter's curve against R's nls.
#include "core/numerics/least_squares.h"
#include "core/numerics/rep_curve.h"
#include "tests/support/r_script.h"
#include "tests/support/reference_table.h"

#include <array>
#include <cmath>
#include <random>

namespace steelyard {
namespace {

using testing_support::readReference;

// They certify eleven digits.
constexpr double kCertified = 1e-9;

struct Certified {
    std::vector<double> parameters;
    std::vector<double> standardErrors;
    double residualSumOfSquares = 0;
    double residualSd = 0;
};

struct StandardCase {
    const char* name;
    std::vector<double> x;
    std::vector<double> y;
    // The value at x; fills the derivatives by the parameters.
    double (*model)(std::span<const double> p, double x, std::span<double> derivatives);
    std::array<std::vector<double>, 2> starts;
    Certified certified;
};

double misra(std::span<const double> p, double x, std::span<double> derivatives)
{
    const double power = std::exp(-p[1] * x);
    derivatives[0] = 1 - power;
    derivatives[1] = p[0] * x * power;
    return p[0] * (1 - power);
}

double sigmoid(std::span<const double> p, double x, std::span<double> derivatives)
{
    const double power = std::exp(p[1] - p[2] * x);
    const double share = 1 / (1 + power);
    derivatives[0] = share;
    derivatives[1] = -p[0] * share * share * power;
    derivatives[2] = p[0] * share * share * power * x;
    return p[0] * share;
}

double cubicByCubic(std::span<const double> p, double x, std::span<double> derivatives)
{
    const double above = p[0] + x * (p[1] + x * (p[2] + x * p[3]));
    const double below = 1 + x * (p[4] + x * (p[5] + x * p[6]));
    for (std::size_t k = 0; k < 4; ++k) derivatives[k] = std::pow(x, static_cast<double>(k)) / below;
    for (std::size_t k = 4; k < 7; ++k)
        derivatives[k] = -above * std::pow(x, static_cast<double>(k) - 3) / (below * below);
    return above / below;
}

StandardCase misra1a()
{
    return {"Misra1a",
            {77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0},
            {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78},
            misra,
            {{{500, 0.0001}, {250, 0.0005}}},
            {{2.3894212918E+02, 5.5015643181E-04},
             {2.7070075241E+00, 7.2668688436E-06},
             1.2455138894E-01,
             1.0187876330E-01}};
}

StandardCase rat42()
{
    return {"Rat42",
            {9, 14, 21, 28, 42, 57, 63, 70, 79},
            {8.930, 10.800, 18.590, 22.330, 39.350, 56.110, 61.730, 64.620, 67.080},
            sigmoid,
            {{{100, 1, 0.1}, {75, 2.5, 0.07}}},
            {{7.2462237576E+01, 2.6180768402E+00, 6.7359200066E-02},
             {1.7340283401E+00, 8.8295217536E-02, 3.4465663377E-03},
             8.0565229338E+00,
             1.1587725499E+00}};
}

StandardCase thurber()
{
    return {"Thurber",
            {-3.067, -2.981, -2.921, -2.912, -2.840, -2.797, -2.702, -2.699, -2.633, -2.481, -2.363, -2.322, -1.501,
             -1.460, -1.274, -1.212, -1.100, -1.046, -0.915, -0.714, -0.566, -0.545, -0.400, -0.309, -0.109, -0.103,
             0.010,  0.119,  0.377,  0.790,  0.963,  1.006,  1.115,  1.572,  1.841,  2.047,  2.200},
            {80.574,   84.248,   87.264,   87.195,   89.076,   89.608,   89.868,   90.101,   92.405,   95.854,
             100.696,  101.060,  401.672,  390.724,  567.534,  635.316,  733.054,  759.087,  894.206,  990.785,
             1090.109, 1080.914, 1122.643, 1178.351, 1260.531, 1273.514, 1288.339, 1327.543, 1353.863, 1414.509,
             1425.208, 1421.384, 1442.962, 1464.350, 1468.705, 1447.894, 1457.628},
            cubicByCubic,
            {{{1000, 1000, 400, 40, 0.7, 0.3, 0.03}, {1300, 1500, 500, 75, 1, 0.4, 0.05}}},
            {{1.2881396800E+03, 1.4910792535E+03, 5.8323836877E+02, 7.5416644291E+01, 9.6629502864E-01,
              3.9797285797E-01, 4.9727297349E-02},
             {4.6647963344E+00, 3.9571156086E+01, 2.8698696102E+01, 5.5675370270E+00, 3.1333340687E-02,
              1.4984928198E-02, 6.5842344623E-03},
             5.6427082397E+03,
             1.3714600784E+01}};
}

std::optional<LeastSquaresFit> fitCase(const StandardCase& standard, const std::vector<double>& start)
{
    const std::size_t width = start.size();
    const auto evaluate = [&](std::span<const double> p, std::span<double> residuals, std::span<double> derivatives) {
        for (std::size_t i = 0; i < standard.x.size(); ++i)
            residuals[i] = standard.model(p, standard.x[i], derivatives.subspan(width * i, width)) - standard.y[i];
    };
    return leastSquares(evaluate, standard.x.size(), start);
}

TEST(LeastSquaresAgainstCertifiedValues, AgreeToNineDigitsFromBothStarts)
{
    for (const StandardCase& standard : {misra1a(), rat42(), thurber()})
        for (const auto& start : standard.starts) {
            SCOPED_TRACE(standard.name);
            const auto fit = fitCase(standard, start);
            ASSERT_TRUE(fit) << start.front();
            for (std::size_t k = 0; k < start.size(); ++k) {
                EXPECT_NEAR(fit->parameters[k] / standard.certified.parameters[k], 1, kCertified) << k;
                EXPECT_NEAR(fit->standardErrors[k] / standard.certified.standardErrors[k], 1, kCertified) << k;
            }
            EXPECT_NEAR(fit->residualSumOfSquares / standard.certified.residualSumOfSquares, 1, kCertified);
            EXPECT_NEAR(fit->residualSd / standard.certified.residualSd, 1, kCertified);
            EXPECT_LT(fit->steps, 100);
        }
}

std::vector<RepCurvePoint> recordedSets()
{
    const auto table = readReference("rep_curve_sets.csv");
    std::vector<RepCurvePoint> points;
    for (std::size_t row = 0; row < table.rows.size(); ++row)
        points.push_back({table.number(row, "load"), table.number(row, "reps")});
    return points;
}

double polished(const char* model, const char* quantity)
{
    return readReference("rep_curve_polished.csv").value({QString::fromLatin1(model), QString::fromLatin1(quantity)});
}

TEST(RepCurveAgainstR, CurveWithHeldScaleAgreesWithNlsTakenToMachinePrecision)
{
    const auto fit = fitRepCurve(recordedSets()).value();
    EXPECT_NEAR(fit.curve.endurance, polished("two_par_c30", "lambda"), 1e-11);
    EXPECT_NEAR(fit.curve.logCapacity, polished("two_par_c30", "logC"), 1e-11);
    EXPECT_NEAR(fit.residualSumOfSquares, polished("two_par_c30", "rss"), 1e-11);
}

// nls itself stops at about nine digits.
TEST(RepCurveAgainstR, StandardErrorsAgreeWithNls)
{
    const auto nls = readReference("rep_curve_nls.csv");
    const auto fit = fitRepCurve(recordedSets()).value();
    EXPECT_NEAR(fit.residualSd, nls.value({QStringLiteral("nls_sigma")}), 1e-9);
    EXPECT_NEAR(fit.enduranceError, nls.value({QStringLiteral("nls_se_lambda")}), 1e-9);
    EXPECT_NEAR(fit.logCapacityError, nls.value({QStringLiteral("nls_se_logC")}), 1e-9);
}

TEST(RepCurveAgainstR, CurveWithFreeScaleAgreesWithNlsTakenToMachinePrecision)
{
    const auto fit = fitRepCurveAndScale(recordedSets()).value();
    EXPECT_NEAR(fit.curve.scale, polished("three_par", "c"), 1e-7);
    EXPECT_NEAR(fit.curve.endurance, polished("three_par", "lambda"), 1e-9);
    EXPECT_NEAR(fit.curve.logCapacity, polished("three_par", "logC"), 1e-10);
    EXPECT_NEAR(fit.residualSumOfSquares, polished("three_par", "rss"), 1e-11);
}

// nls starts from Epley's curve and stops by its own criterion, at 1e-8 of the residuals' length.
TEST(RepCurveAgainstR, CurvesOfScatteredSetsAgreeWithNls)
{
    const char* const script = R"(
v <- scan(file("stdin"), quiet = TRUE); n <- length(v) / 2; load <- v[1:n]; reps <- v[(n + 1):(2 * n)]
fit <- nls(reps ~ 30 * (exp(lam * (C - log(load))) - 1), start = list(lam = 1, C = log(120)),
           control = nls.control(tol = 1e-8, maxiter = 500, minFactor = 1e-12))
cat(format(c(coef(fit), summary(fit)$coefficients[, 2], deviance(fit)), digits = 17)))";
    std::mt19937 random(41);
    std::normal_distribution<double> normal;
    for (const double endurance : {0.6, 1.0, 1.4}) {
        const RepCurve truth{kEpleyScale, endurance, std::log(130.0)};
        std::vector<RepCurvePoint> points;
        std::vector<double> input;
        for (double load = 60; load <= 115; load += 5)
            points.push_back({load, std::max(0.0, truth.repsAt(load) + 1.2 * normal(random))});
        for (const RepCurvePoint& point : points) input.push_back(point.loadKg);
        for (const RepCurvePoint& point : points) input.push_back(point.repsToFailure);
        const auto answer = testing_support::runR(script, input);
        ASSERT_EQ(answer.size(), 5u);
        const auto fit = fitRepCurve(points).value();
        EXPECT_NEAR(fit.curve.endurance, answer[0], 1e-7) << endurance;
        EXPECT_NEAR(fit.curve.logCapacity, answer[1], 1e-7) << endurance;
        EXPECT_NEAR(fit.enduranceError, answer[2], 1e-7) << endurance;
        EXPECT_NEAR(fit.logCapacityError, answer[3], 1e-7) << endurance;
        EXPECT_NEAR(fit.residualSumOfSquares, answer[4], 1e-7) << endurance;
    }
}

}  // namespace
}  // namespace steelyard
