// Theil-Sen, Sen's interval, Mann-Kendall and the robust scale against base R (R Core Team, packages base and stats), which
// gets there by other ways: outer() for the slopes, cor.test(method = "kendall") for the test, mad() for the scale. Sen's
// interval is found without any formula for its ranks, as the slopes that Kendall's exact test doesn't reject (the definition
// of a confidence interval; Sen 1968, JASA 63:1379-1389, section 4; Hollander, Wolfe & Chicken 2014, Nonparametric
// Statistical Methods, section 9.3, from memory).
#include "core/numerics/robust_trend.h"
#include "tests/support/r_script.h"

#include <random>

namespace steelyard {
namespace {

using testing_support::runR;

struct RandomSeries {
    std::vector<double> x;
    std::vector<double> y;
    [[nodiscard]] std::vector<double> joined() const
    {
        std::vector<double> all = x;
        all.insert(all.end(), y.begin(), y.end());
        return all;
    }
};

RandomSeries seriesWithTies(std::mt19937& random, int count)
{
    RandomSeries series;
    for (int i = 0; i < count; ++i) {
        series.x.push_back(static_cast<double>(random() % 40) / 2);
        series.y.push_back(series.x.back() * 0.5 + static_cast<double>(random() % 20));
    }
    return series;
}

// Days apart by 1 to 7, values from the generator's full range: no two are equal.
RandomSeries seriesWithoutTies(std::mt19937& random, int count, double slope)
{
    RandomSeries series;
    double x = 0;
    for (int i = 0; i < count; ++i) {
        x += static_cast<double>(1 + random() % 7);
        series.x.push_back(x);
        series.y.push_back(slope * x + static_cast<double>(random()) / 4294967296.0 * 10);
    }
    return series;
}

TEST(RobustTrendAgainstR, SlopeAndTestAgreeOnRandomSeriesWithTies)
{
    const char* const script = R"(
v <- scan(file("stdin"), quiet = TRUE); n <- length(v) / 2; x <- v[1:n]; y <- v[(n + 1):(2 * n)]
up <- upper.tri(diag(n)); dx <- outer(x, x, "-")[up]; dy <- outer(y, y, "-")[up]
z <- suppressWarnings(unname(cor.test(x, y, method = "kendall", exact = FALSE, continuity = TRUE)$statistic))
cat(format(c(median((dy / dx)[dx != 0]), sum(sign(dx) * sign(dy)), z), digits = 15)))";
    std::mt19937 random(7);
    for (int round = 0; round < 8; ++round) {
        const RandomSeries series = seriesWithTies(random, 12 + 4 * round);
        const auto answer = runR(script, series.joined());
        ASSERT_EQ(answer.size(), 3u);
        const auto test = mannKendall(series.x, series.y);
        EXPECT_NEAR(theilSen(series.x, series.y)->slope, answer[0], 1e-9) << round;
        EXPECT_NEAR(static_cast<double>(test->s), answer[1], 1e-9) << round;
        EXPECT_NEAR(test->z, answer[2], 1e-9) << round;
    }
}

// Between two neighbouring pair slopes the test's answer doesn't change, so it is asked once in each gap. R prints the
// interval for a level a little lower and a little higher than the one wanted: our ranks come from the normal approximation,
// whose error at these lengths is under 0.005.
TEST(RobustTrendAgainstR, SensIntervalIsWhatKendallsExactTestDoesNotReject)
{
    const char* const script = R"(
v <- scan(file("stdin"), quiet = TRUE); level <- v[1]; v <- v[-1]; n <- length(v) / 2; x <- v[1:n]; y <- v[(n + 1):(2 * n)]
up <- upper.tri(diag(n)); b <- sort((outer(y, y, "-") / outer(x, x, "-"))[up]); N <- length(b)
p <- sapply((b[-1] + b[-N]) / 2, function(s) cor.test(x, y - s * x, method = "kendall", exact = TRUE)$p.value)
ends <- function(reject) { kept <- which(p > reject); c(b[min(kept)], b[max(kept) + 1]) }
cat(format(c(ends(1 - level + .005), ends(1 - level), ends(1 - level - .005)), digits = 17)))";
    std::mt19937 random(11);
    int same = 0;
    int asked = 0;
    for (const double level : {0.80, 0.90, 0.95})
        for (const int count : {10, 15, 24}) {
            const RandomSeries series = seriesWithoutTies(random, count, 0.05 * (count - 12));
            std::vector<double> input{level};
            const auto values = series.joined();
            input.insert(input.end(), values.begin(), values.end());
            const auto answer = runR(script, input);
            ASSERT_EQ(answer.size(), 6u);
            const auto interval = senInterval(series.x, series.y, level);
            ASSERT_TRUE(interval);
            constexpr double kRounding = 1e-9;
            EXPECT_LE(interval->low, answer[0] + kRounding) << level << ' ' << count;
            EXPECT_GE(interval->low, answer[4] - kRounding) << level << ' ' << count;
            EXPECT_GE(interval->high, answer[1] - kRounding) << level << ' ' << count;
            EXPECT_LE(interval->high, answer[5] + kRounding) << level << ' ' << count;
            ++asked;
            same += std::abs(interval->low - answer[2]) < kRounding && std::abs(interval->high - answer[3]) < kRounding;
        }
    EXPECT_GE(same, asked - 2) << "of " << asked;
}

TEST(RobustTrendAgainstR, ExactProbabilityOfKendallsTestAgreesForShortSeries)
{
    const char* const script = R"(
v <- scan(file("stdin"), quiet = TRUE); n <- length(v) / 2
cat(format(cor.test(v[1:n], v[(n + 1):(2 * n)], method = "kendall", exact = TRUE)$p.value, digits = 17)))";
    std::mt19937 random(3);
    for (int count = 4; count <= static_cast<int>(kMostPointsExact); ++count) {
        const RandomSeries series = seriesWithoutTies(random, count, 0.3);
        const auto answer = runR(script, series.joined());
        ASSERT_EQ(answer.size(), 1u);
        const auto test = mannKendall(series.x, series.y);
        ASSERT_TRUE(test && test->exact) << count;
        EXPECT_NEAR(test->pTwoSided, answer[0], 1e-12) << count;
    }
}

TEST(RobustTrendAgainstR, RobustScaleIsMad)
{
    const char* const script = R"(cat(format(mad(scan(file("stdin"), quiet = TRUE)), digits = 17)))";
    std::mt19937 random(5);
    for (const int count : {2, 5, 8, 31}) {
        const RandomSeries series = seriesWithTies(random, count);
        const auto answer = runR(script, series.y);
        ASSERT_EQ(answer.size(), 1u);
        EXPECT_NEAR(robustScale(series.y).value(), answer[0], 1e-12) << count;
    }
}

}  // namespace
}  // namespace steelyard
