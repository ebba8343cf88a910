// The local level and local linear trend against R (package stats: KalmanRun, KalmanLike, StructTS), recorded for the Nile
// series (annual flow at Aswan 1871-1970, R's data set Nile) and live on series with gaps. The Nile's maximum likelihood
// variances are a published example: 1469.1 and 15099 (Durbin & Koopman 2012, Time Series Analysis by State Space Methods,
// section 2.10, from memory; 15098.5 to one digit more).
#include "core/numerics/local_level.h"
#include "tests/support/r_script.h"
#include "tests/support/reference_table.h"

#include <cmath>
#include <random>

namespace steelyard {
namespace {

using testing_support::readReference;
using testing_support::runR;
using Values = std::vector<std::optional<double>>;

const LocalLevel kNileLevel{.levelVariance = 1469.1, .noiseVariance = 15099};
const LocalTrend kNileTrend{.levelVariance = 1000, .slopeVariance = 25, .noiseVariance = 15000};

Values nile()
{
    const auto table = readReference("nile_local_level.csv");
    Values y;
    for (std::size_t row = 0; row < table.rows.size(); ++row) y.emplace_back(table.number(row, "y"));
    return y;
}

// Relative, for values far above one.
void expectAgrees(double ours, double theirs, const char* what, std::size_t row)
{
    EXPECT_LE(std::abs(ours - theirs), 1e-9 * std::max(1.0, std::abs(theirs))) << what << " in row " << row;
}

TEST(LocalLevelAgainstR, FilteredNileAgreesYearByYear)
{
    const auto table = readReference("nile_local_level.csv");
    const Values y = nile();
    ASSERT_EQ(y.size(), 100u);
    const auto states = filtered(kNileLevel, y).value();
    for (std::size_t row = 0; row < y.size(); ++row) {
        EXPECT_NEAR(states[row].mean, table.number(row, "filt_level"), 1e-9) << row;
        EXPECT_NEAR(states[row].variance, table.number(row, "filt_var"), 1e-9) << row;
    }
}

TEST(LocalLevelAgainstR, LikelihoodOfTheNileAgrees)
{
    const auto recorded =
        readReference("nile_local_level_summary.csv").value({QStringLiteral("full_gaussian_loglik_P0_1e7")});
    EXPECT_NEAR(logLikelihood(kNileLevel, nile()).value(), recorded, 1e-9);
}

TEST(LocalTrendAgainstR, FilteredNileAndItsLikelihoodAgreeYearByYear)
{
    const auto table = readReference("nile_local_trend.csv");
    const Values y = nile();
    const auto states = filtered(kNileTrend, y).value();
    ASSERT_EQ(states.size(), table.rows.size());
    for (std::size_t row = 0; row < states.size(); ++row) {
        EXPECT_NEAR(states[row].level, table.number(row, "level"), 1e-9) << row;
        EXPECT_NEAR(states[row].slope, table.number(row, "slope"), 1e-9) << row;
        expectAgrees(states[row].levelVariance, table.number(row, "P11"), "P11", row);
        expectAgrees(states[row].covariance, table.number(row, "P12"), "P12", row);
        expectAgrees(states[row].slopeVariance, table.number(row, "P22"), "P22", row);
        const auto soFar = logLikelihood(kNileTrend, TimeSeries(y).first(row + 1));
        EXPECT_NEAR(soFar.value(), table.number(row, "cum_loglik"), 1e-9) << row;
    }
}

// StructTS starts from a variance of a million times the series' own instead of no knowledge, and stops its search earlier.
TEST(FitLocalLevelAgainstR, VariancesOfTheNileAreThePublishedOnesAndStructTss)
{
    const auto summary = readReference("nile_local_level_summary.csv");
    const auto fit = fitLocalLevel(nile()).value();
    EXPECT_NEAR(fit.levelVariance / 1469.1, 1, 1e-3);
    EXPECT_NEAR(fit.noiseVariance / 15098.5, 1, 1e-3);
    EXPECT_NEAR(fit.levelVariance / summary.value({QStringLiteral("StructTS_ML_level_var")}), 1, 1e-4);
    EXPECT_NEAR(fit.noiseVariance / summary.value({QStringLiteral("StructTS_ML_epsilon_var")}), 1, 1e-4);
}

// A walk seen through noise, every eighth value missing but neither the first nor the last; NA travels as -1e300.
struct RandomWalk {
    Values values;
    std::vector<double> sent;
};

RandomWalk randomWalk(std::mt19937& random, int count, double walk)
{
    constexpr double kMissing = -1e300;
    std::normal_distribution<double> normal;
    RandomWalk series;
    double level = 20;
    for (int t = 0; t < count; ++t) {
        level += walk * normal(random);
        const double value = level + normal(random);
        const bool missing = t > 0 && t + 1 < count && random() % 8 == 0;
        series.values.push_back(missing ? std::nullopt : std::optional(value));
        series.sent.push_back(missing ? kMissing : value);
    }
    return series;
}

// KalmanLike gives the concentrated likelihood: log variances and squares are taken back out of it.
TEST(LocalLevelAgainstR, LikelihoodAndFilterAgreeOnSeriesWithGaps)
{
    const char* const script = R"(
v <- scan(file("stdin"), quiet = TRUE); q <- v[1]; h <- v[2]; y <- v[-(1:2)]; y[y < -1e299] <- NA; n <- sum(!is.na(y))
m <- list(T = matrix(1), Z = 1, h = h, V = matrix(q), a = 0, P = matrix(1e4), Pn = matrix(1e4))
k <- KalmanLike(y, m, nit = 0L); logs <- n * (2 * k$Lik - log(k$s2))
cat(format(c(-(n * log(2 * pi) + logs + n * k$s2) / 2, KalmanRun(y, m, nit = 0L)$states), digits = 17)))";
    std::mt19937 random(17);
    for (const double walk : {0.0, 0.2, 1.0, 5.0}) {
        const RandomWalk series = randomWalk(random, 60, walk);
        const LocalLevel model{
            .levelVariance = walk * walk + 0.01, .noiseVariance = 1.3, .startMean = 0, .startVariance = 1e4};
        std::vector<double> input{model.levelVariance, model.noiseVariance};
        input.insert(input.end(), series.sent.begin(), series.sent.end());
        const auto answer = runR(script, input);
        ASSERT_EQ(answer.size(), series.values.size() + 1);
        EXPECT_NEAR(logLikelihood(model, series.values).value(), answer[0], 1e-9) << walk;
        const auto states = filtered(model, series.values).value();
        for (std::size_t t = 0; t < states.size(); ++t) EXPECT_NEAR(states[t].mean, answer[t + 1], 1e-9) << walk << t;
    }
}

// R's own filter under R's own search: optimize() over the ratio of the variances.
TEST(FitLocalLevelAgainstR, LikeliestVariancesAgreeWithOptimizeOverKalmanLike)
{
    const char* const script = R"(
y <- scan(file("stdin"), quiet = TRUE); y[y < -1e299] <- NA; n <- sum(!is.na(y)) - 1
like <- function(r) KalmanLike(y[-1], list(T = matrix(1), Z = 1, h = 1, V = matrix(exp(r)), a = y[1], P = matrix(1),
                               Pn = matrix(1 + exp(r))), nit = 0L)
best <- optimize(function(r) like(r)$Lik, c(-6, 6), tol = 1e-9); s <- like(best$minimum)$s2
cat(format(c(s * exp(best$minimum), s, -n / 2 * (log(2 * pi) + 1 + 2 * best$objective)), digits = 17)))";
    std::mt19937 random(29);
    for (const double walk : {0.4, 0.8, 1.6}) {
        const RandomWalk series = randomWalk(random, 150, walk);
        const auto answer = runR(script, series.sent);
        ASSERT_EQ(answer.size(), 3u);
        const auto fit = fitLocalLevel(series.values).value();
        EXPECT_NEAR(fit.levelVariance / answer[0], 1, 1e-5) << walk;
        EXPECT_NEAR(fit.noiseVariance / answer[1], 1, 1e-5) << walk;
        EXPECT_NEAR(fit.logLikelihood, answer[2], 1e-9) << walk;
    }
}

}  // namespace
}  // namespace steelyard
